/** A plan that means harm is text on every view, and the page keeps to itself. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { serialisePlan } from '../../src/engine/plan/serialise.ts';
import { HOSTILE, hostileLapse, hostileStop } from '../outputs/hostile.ts';
import { planOf } from '../outputs/plans.ts';
import { fromBar, openAll, pickFile } from './parts.ts';
import { startBrowser, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const TEXTS = HOSTILE.map(([, text]) => text);
const MARKUP = '<img src=x onerror="hit()">';
const LONG = 'W'.repeat(40);

/** Every hostile text at once: one each for an axis, a pack, a load and a card. */
function lapse(): Plan {
  const plan = hostileLapse(MARKUP);
  const [axis] = plan.rig.axes;
  const [source] = plan.power.sources;
  const [load] = plan.power.loads;
  const [card] = plan.storage.cards;
  const some = TEXTS.slice(0, 10);
  return planOf({
    ...plan,
    title: TEXTS.slice(0, 4).join(' ').slice(0, 120),
    notes: TEXTS.join('\n'),
    rig: { ...plan.rig, axes: some.map((name) => ({ ...axis, name, source: name })) },
    move: {
      ...plan.move,
      tracks: some.map((name) => ({ ...plan.move.tracks[0], axis: name })),
    },
    power: {
      ...plan.power,
      sources: some.map((name) => ({ ...source, name })),
      loads: TEXTS.slice(10).map((name) => ({ ...load, name, source: some[0] })),
    },
    storage: { ...plan.storage, cards: TEXTS.slice(10).map((name) => ({ ...card, name })) },
  });
}

/** A shot, an action, a cue and a tick of every text. */
function stop(): Plan {
  const plan = hostileStop(MARKUP);
  const [shot] = plan.sheet.shots;
  const [tick] = plan.sheet.ticks;
  const named = (text: string) => ({
    ...shot,
    name: text,
    actions: [{ ...shot?.actions[0], text, details: [{ exposure: 1, text }] }],
    cues: [{ ...shot?.cues[0], text }],
  });
  return planOf({
    ...plan,
    sheet: {
      ...plan.sheet,
      shots: TEXTS.map(named),
      ticks: TEXTS.map((note, n) => ({ ...tick, shot: n + 1, note })),
    },
  });
}

/** Notes whatever would make markup or program of a plan's text. */
function watchSinks(): void {
  const hits: string[] = [];
  Object.assign(window, { hits, hit: () => hits.push('a plan ran') });
  const note = (what: string, text: unknown) => {
    if (/hit\(|onerror|<\/?(script|img|svg|text)/i.test(String(text))) hits.push(`${what}: ${text}`);
  };
  for (const name of ['innerHTML', 'outerHTML'] as const) {
    const { set } = Object.getOwnPropertyDescriptor(Element.prototype, name) ?? {};
    Object.defineProperty(Element.prototype, name, {
      set(text: string) {
        note(name, text);
        set?.call(this, text);
      },
    });
  }
  const around = (of: object, name: string) => {
    const was = Reflect.get(of, name);
    Reflect.set(of, name, function (this: unknown, ...words: unknown[]) {
      note(name, words.join(' '));
      return was.apply(this, words);
    });
  };
  around(Element.prototype, 'insertAdjacentHTML');
  around(Document.prototype, 'write');
  around(Range.prototype, 'createContextualFragment');
  around(DOMParser.prototype, 'parseFromString');
  around(window, 'open');
  window.print = () => {};
  window.alert = () => hits.push('alert');
}

/** What of the page was not made by the page. */
const foreign = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const ADDRESSES = /^(href|src|action|formaction|xlink:href|srcdoc|poster|data|ping)$/;
    const found = [...(window as unknown as { hits: string[] }).hits];
    for (const element of document.querySelectorAll('*')) {
      const tag = element.tagName.toLowerCase();
      const mine = tag === 'script' && (element as HTMLScriptElement).src.startsWith(`${location.origin}/`);
      if (/^(img|iframe|object|embed|base|marquee|script|style|b-)$/.test(tag) && !mine)
        found.push(element.outerHTML.slice(0, 120));
      for (const { name, value } of element.attributes) {
        if (/^on/i.test(name) || (ADDRESSES.test(name) && /^\s*(javascript|data|vbscript):/i.test(value)))
          found.push(`${tag} ${name}=${value.slice(0, 80)}`);
      }
    }
    return found;
  });

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

async function openPlan(page: Page, plan: Plan): Promise<void> {
  await pickFile(page, 'hostile.json', serialisePlan(plan));
  // A field of one line shows no line ends.
  const shown = plan.title.replace(/[\r\n]/g, '').slice(0, 20);
  await expect.poll(() => page.getByLabel('Title of the plan').inputValue()).toContain(shown);
}

/** All views, all dialogs, tables of charts, paper. */
async function tour(page: Page, look: (where: string) => Promise<void>): Promise<void> {
  await page.waitForLoadState('networkidle');
  await openAll(page);
  await look('plan');
  const drawn = page.getByRole('button', { name: /^Show as table/ }).filter({ visible: true });
  while (await drawn.count()) await drawn.first().click();
  await look('tables');
  for (const keep of (await page.getByRole('button', { name: /^Keep in the kit/ }).all()).slice(0, 4)) {
    await keep.click();
    await page.getByRole('dialog', { name: 'Kit' }).waitFor();
    await page.keyboard.press('Escape');
  }
  for (const name of ['Kit', 'Share', 'New', 'Keys', 'Plans', 'Take along', 'Compare with a copy']) {
    await fromBar(page, name);
    await page.getByRole('dialog').waitFor();
    if (name === 'Share') await page.getByLabel('Link to this plan').waitFor();
    await look(name);
    await page.keyboard.press('Escape');
  }
  for (const view of await page.locator('.views a').all()) {
    await view.click();
    await page.waitForLoadState('networkidle');
    await page.waitForTimeout(500);
    await openAll(page);
    await look((await view.textContent()) ?? '');
    if (await button(page, 'Print').count()) {
      await button(page, 'Print').click();
      await page.locator('.print-sheet').first().waitFor({ state: 'attached' });
      await look('paper');
    }
  }
}

test.each([
  ['a time-lapse', lapse],
  ['stop-motion', stop],
] as const)(
  '%s whose every text means harm is text on every view',
  async (_, make) => {
    const plan = make();
    const { page, problems, context } = await visit(browser, origin, {
      before: (opened) => opened.addInitScript(watchSinks),
    });
    await openPlan(page, plan);
    const seen: string[] = [];
    const looked: string[] = [];
    await tour(page, async (where) => {
      looked.push(where);
      expect(await foreign(page), where).toEqual([]);
      seen.push((await page.locator('body').textContent()) ?? '');
    });
    expect(looked).toEqual(expect.arrayContaining(['plan', 'Kit', 'Share', 'Days', 'Sheet']));
    // It was there to be seen: names on the page as they stand in the plan.
    expect(seen.join('\n')).toContain(MARKUP);
    expect(await page.evaluate(() => Object.keys(Object.prototype))).toEqual([]);
    expect(problems).toEqual([]);
    await context.close();
  },
  180_000,
);

describe.each([1440, 390])('at %i px', (width) => {
  test.each([
    ['a time-lapse', hostileLapse],
    ['stop-motion', hostileStop],
  ] as const)(
    '%s with words that cannot be broken does not scroll sideways',
    async (_, make) => {
      const { page, problems, context } = await visit(browser, origin, {
        viewport: { width, height: 900 },
        touch: width < 500,
      });
      await openPlan(page, { ...make(LONG), title: 'W'.repeat(120) });
      for (const view of ['plan', 'days', 'sheet']) {
        await page.evaluate((hash) => {
          location.hash = hash;
        }, view);
        await page.waitForLoadState('networkidle');
        await page.waitForTimeout(500);
        await openAll(page);
        const excess = await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        );
        expect(excess, view).toBe(0);
      }
      expect(problems).toEqual([]);
      await context.close();
    },
    120_000,
  );
});

describe('the page as it is served', () => {
  const directives = (policy: string) =>
    new Map(policy.split(';').map((part) => [part.trim().split(' ')[0], part.trim()]));

  test('says what it may do, in its head and in the answer', async () => {
    const answer = await fetch(`${origin}/`);
    const html = (await answer.text()).replaceAll('&#39;', "'");
    const served = directives(answer.headers.get('content-security-policy') ?? '');
    const inHead = directives(/http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(html)?.[1] ?? '');
    // CSP Level 3: frame-ancestors counts in an answer only.
    expect(served.get('frame-ancestors')).toBe("frame-ancestors 'none'");
    served.delete('frame-ancestors');
    expect(inHead).toEqual(served);
    expect(inHead.get('default-src')).toBe("default-src 'none'");
    expect(inHead.get('base-uri')).toBe("base-uri 'none'");
    expect(inHead.get('form-action')).toBe("form-action 'none'");
    for (const [name, directive] of inHead) {
      const sources = directive.split(' ').slice(1);
      const allowed = name === 'img-src' ? ["'self'", 'data:'] : ["'self'", "'none'"];
      expect(
        sources.filter((source) => !allowed.includes(source)),
        name,
      ).toEqual([]);
    }
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
    expect(answer.headers.get('referrer-policy')).toBe('no-referrer');
    expect(html).toContain('<meta name="referrer" content="no-referrer" />');
    expect(html).not.toMatch(/<script(?![^>]*\bsrc=)|\son\w+=|<style|\sstyle=/);
  });

  test('runs no program of others, asks nobody else, and cannot be framed', async () => {
    const { page, problems, context } = await visit(browser, origin);
    await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'window.ran = true';
      document.body.append(script);
      document.body.setAttribute('onclick', 'window.ran = true');
      document.body.click();
    });
    expect(await page.evaluate(() => Reflect.get(window, 'ran'))).toBeUndefined();
    const asked = await page.evaluate(() => fetch('https://example.org/').then(String, String));
    expect(asked).toMatch(/TypeError/);
    expect(problems.filter((problem) => problem.startsWith('request:'))).toEqual([]);
    expect(problems.join()).toMatch(/script-src/);

    const other = await context.newPage();
    await other.setContent(`<iframe src="${origin}/"></iframe>`);
    await other.waitForTimeout(1000);
    const [frame] = other.frames().slice(1);
    expect(await frame?.locator('#root').count()).toBe(0);
    await context.close();
  });
});
