/** On set, beside the camera: the harbour demo shot as if it were that evening, with a clock that is wound by hand. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { csvParse } from 'd3-dsv';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { planFile } from '../outputs/plans.ts';
import { violations } from './axe.ts';
import { pickFile, plain, text } from './parts.ts';
import { startWithProfile } from './profile.ts';
import { startBrowser, THEMES, visit } from './visit.ts';

const origin = inject('origin');
let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const PHONE = { width: 390, height: 844 };
/** Half a year after the evening of the plan: 8 August 2026, 386 frames at 14 s from 20:32:35. */
const TODAY = new Date('2027-02-01T09:00:00Z');
/** A little before the first frame on the evening itself. */
const EVENING = new Date('2026-08-08T18:30:00Z');

const main = (page: Page) => page.getByRole('main');
const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name });
const region = (page: Page, name: string) => page.getByRole('region', { name, exact: true });
const timer = async (page: Page) => text(page.getByRole('timer'));
const said = async (page: Page, name: string) => text(region(page, name));

/** Winds the clock on; the last seconds slowly, so that the page can draw them. */
async function wind(page: Page, seconds: number): Promise<void> {
  const ms = Math.round(seconds * 1000);
  const slowMs = Math.min(ms, 2000);
  if (ms > slowMs) await page.clock.runFor(ms - slowMs);
  for (let done = 0; done < slowMs; done += 100) await page.clock.runFor(Math.min(100, slowMs - done));
}

/** First frame of the plan, by the sunset of its day. */
const START_MS = Date.parse('2026-08-08T20:32:35+02:00');

/** Winds the clock to so many seconds after the planned first frame. */
const windTo = async (page: Page, seconds: number): Promise<void> =>
  wind(page, (START_MS - (await page.evaluate(() => Date.now()))) / 1000 + seconds);

const undo = (page: Page) => main(page).getByRole('button', { name: /^Undo/ });

async function onSet(now: Date, options: Parameters<typeof visit>[2] = {}) {
  const visited = await visit(browser, origin, {
    viewport: PHONE,
    touch: true,
    theme: 'dim',
    query: '?demo=harbour-at-dusk#onset',
    before: (page) => page.clock.install({ time: now }),
    ...options,
  });
  await button(visited.page, /^Start: frame 1 fires now/).waitFor();
  // From here on time stands still unless it is wound.
  await visited.page.clock.pauseAt(new Date(now.getTime() + 60_000));
  return visited;
}

/** On the evening, started on time: frame 1 at 20:32:35. */
async function started(options: Parameters<typeof visit>[2] = {}) {
  const visited = await onSet(EVENING, options);
  const { page } = visited;
  await windTo(page, 0.2);
  await button(page, /^It fired on time/).click();
  await region(page, 'Progress').waitFor();
  return visited;
}

const option = (page: Page, title: string) => page.locator('.option', { hasText: title });

test('run as if now: countdown, the states of a cycle in turn, a swap acknowledged, the end', async () => {
  const { page, problems, context } = await onSet(TODAY);
  expect(await said(page, 'Worth knowing')).toMatch(
    /The plan is for Sat 8 Aug 2026; today is Mon 1 Feb 2027/,
  );
  // Half a year later nothing of that evening is to be done.
  expect(await region(page, 'What comes next').count()).toBe(0);
  expect(await button(page, /^It fired/).count()).toBe(0);
  await button(page, /^Run it as if now/).click();
  await expect.poll(() => timer(page)).toMatch(/^(2:00|1:5\d)$/);
  expect(await said(page, 'Worth knowing')).toMatch(/As if it were Sat 8 Aug 2026, 20:30/);
  // The countdown goes by seconds, and leaves none out.
  const shown: number[] = [];
  for (let tenths = 0; tenths < 50; tenths += 1) {
    const seconds = (await timer(page)).split(':').reduce((sum, part) => sum * 60 + Number(part), 0);
    if (shown.at(-1) !== seconds) shown.push(seconds);
    await wind(page, 0.1);
  }
  expect(shown.length).toBeGreaterThan(4);
  expect(shown).toEqual(shown.map((_, n) => (shown[0] ?? 0) - n));
  await button(page, /^Start: frame 1 fires now/).click();

  // Frame 1: 1/125 s, then a short move; the camera writes for 1.8 s; spare until a second before the next.
  const states: string[] = [];
  for (let tenths = 0; tenths < 140; tenths += 1) {
    const [state = ''] = /^[^.]+/.exec(await text(page.locator('.on-count .on-state'))) ?? [];
    if (states.at(-1) !== state) states.push(state);
    await wind(page, 0.1);
  }
  expect(states.join(' > ')).toMatch(
    /^Exposing > Moving > (Settling > )?Writing > Spare time > Next frame at once/,
  );
  await wind(page, 0.3);
  expect(await said(page, 'Progress')).toMatch(/Frame 2 \/ 386/);

  // Two minutes before the planned start it is brighter: the pack lasts a frame longer than to frame 311.
  const [, swap = '0'] = /swap to pack 2before frame (\d+)/.exec(await said(page, 'What comes next')) ?? [];
  expect(Math.abs(Number(swap) - 311)).toBeLessThan(4);
  await wind(page, (Number(swap) - 5) * 14);
  await expect.poll(() => said(page, 'Progress')).toMatch(new RegExp(`Frame ${Number(swap) - 3} `));
  expect(await button(page, /^Done: Camera pack/).count()).toBe(0);
  await wind(page, 14);
  expect(await said(page, 'What comes next')).toMatch(/Soon: Camera pack: swap to pack 2, before frame/);
  await button(page, /^Done: Camera pack/).click();
  expect(await said(page, 'What comes next')).not.toMatch(/Camera pack/);
  expect(await said(page, 'Log')).toMatch(/Camera pack: swap to pack 2: done/);

  await wind(page, 80 * 14);
  await region(page, 'After the last frame').waitFor();
  expect(await said(page, 'After the last frame')).toMatch(
    /386 frames shot.*Stop the trigger.*2 copies of 20.1 GB/,
  );
  expect(problems).toEqual([]);
  await context.close();
}, 120_000);

test('a swap that nobody acknowledges is not done', async () => {
  const { page, context } = await started();
  await wind(page, 311 * 14);
  expect(await said(page, 'What comes next')).toMatch(/Not done: Camera pack: swap to pack 2/);
  await button(page, /^Done: Camera pack/).click();
  expect(await said(page, 'What comes next')).not.toMatch(/Camera pack/);
  await context.close();
});

describe('when something slips', () => {
  test('started late: each thing that can be kept says what it costs, and can be taken back', async () => {
    const { page, problems, context } = await onSet(EVENING);
    await windTo(page, 300);
    expect(await said(page, 'First frame')).toMatch(/First frame was due/);
    expect(await said(page, 'What comes next')).not.toMatch(/Not done/);
    await button(page, /^Start: frame 1 fires now/).click();
    expect(await said(page, 'Progress')).toMatch(/End 22:07:2\d, 5 min( \d s)? late/);

    await button(page, 'Started late').click();
    const dialog = page.getByRole('dialog', { name: 'When did frame 1 fire?' });
    expect(await text(option(page, 'Keep clip and interval'))).toMatch(
      /Frames386.*Clip15.44 s.*End22:07:2\d \(\+5 min.*14 s, as it is/,
    );
    expect(await text(option(page, 'Keep end and interval'))).toMatch(
      /Frames36[34] \(-2[23]\).*Clip14.5\d s \(-0.\d+ s\).*as it is/,
    );
    expect(await text(option(page, 'Keep end and clip'))).toMatch(
      /Frames386.*Clip15.44 s.*set to 13 s \(was 14 s\)/,
    );

    await option(page, 'Keep end and interval').getByRole('radio').check();
    await button(page, 'Go on like this').click();
    await dialog.waitFor({ state: 'hidden' });
    expect(await said(page, 'Progress')).toMatch(/Frame 1 \/ 36[34].*End 22:02:\d\d/);
    await undo(page).click();
    expect(await said(page, 'Progress')).toMatch(/Frame 1 \/ 386.*End 22:07:2\d/);

    await button(page, 'Started late').click();
    await option(page, 'Keep end and clip').getByRole('radio').check();
    await button(page, 'Go on like this').click();
    expect(await said(page, 'Progress')).toMatch(/Frame 1 \/ 386.*End 2[12]:\d\d:\d\d, .*early/);
    // Frame 3 is the first at 13 s.
    await wind(page, 28.5);
    expect(await said(page, 'Progress')).toMatch(/Frame 3 /);
    expect(await timer(page)).toMatch(/^1[23] ?s$/);
    expect(problems).toEqual([]);
    await context.close();
  });

  test('a clock typed by hand; one that cannot be read changes nothing', async () => {
    const { page, context } = await started();
    await wind(page, 120);
    await button(page, 'Started late').click();
    await page.getByLabel('At', { exact: true }).fill('half past');
    await page.getByText('Not a clock time').waitFor();
    expect(await button(page, 'Go on like this').isDisabled()).toBe(true);
    await page.getByLabel('At', { exact: true }).fill('20:33:35');
    await page.getByText('Frame 1 at 20:33:35: 1 min late.').waitFor();
    await button(page, 'Go on like this').click();
    expect(await said(page, 'Progress')).toMatch(/End 22:03:25, 1 min late/);
    await context.close();
  });

  test('paused and resumed: the end is kept, or moves', async () => {
    const { page, context } = await started();
    await wind(page, 199 * 14 + 5);
    await button(page, 'Pause').click();
    expect(await said(page, 'Progress')).toMatch(/Frame 200 \/ 386/);
    await wind(page, 240);
    expect(await timer(page)).toMatch(/^(3:59|4:00)$/);
    expect(await said(page, 'Progress')).toMatch(/Frame 200 \/ 386.*End was 22:02:25, open while paused/);
    // One is brought to how to go on.
    expect(await region(page, 'Paused').evaluate((own) => own === document.activeElement)).toBe(true);
    // What is noted meanwhile does not end it; how to make up for it is asked when it is over.
    expect(await button(page, 'Started late').count()).toBe(0);
    await button(page, 'Lost frames').click();
    expect(await page.locator('dialog .option').count()).toBe(1);
    await button(page, 'Go on like this').click();
    expect(await said(page, 'Paused')).toMatch(/Paused since/);
    await undo(page).click();
    // Civil dusk does not wait; the swap does.
    expect(await said(page, 'What comes next')).not.toMatch(/dusk/);
    expect(await said(page, 'What comes next')).toMatch(/Camera pack: swap to pack 2/);
    expect(await text(option(page, 'Keep end and interval'))).toMatch(/Frames36\d \(-1\d\)/);
    await option(page, 'Keep end and interval').getByRole('radio').check();
    await button(page, 'Resume: frame 201 fires now').click();
    expect(await said(page, 'Progress')).toMatch(/Frame 201 \/ 36\d/);
    await undo(page).click();
    await button(page, 'Resume: frame 201 fires now').waitFor();
    await button(page, 'Resume: frame 201 fires now').click();
    expect(await said(page, 'Progress')).toMatch(/Frame 201 \/ 386.*3 min 5\d s late/);
    await context.close();
  });

  test('lost frames are noted, or made up for; stopped early, it is over with that frame', async () => {
    const { page, context } = await started();
    await wind(page, 99 * 14 + 3);
    await button(page, 'Lost frames').click();
    await page.getByLabel('Or', { exact: true }).fill('999');
    await page.getByText('Allowed: 1 to 100, the frames shot so far.').waitFor();
    expect(await button(page, 'Go on like this').isDisabled()).toBe(true);
    await button(page, '3').click();
    expect(await page.getByLabel('Or', { exact: true }).inputValue()).toBe('');
    expect(await text(option(page, 'Only note it'))).toMatch(/Frames386.*Clip15.32 s \(-0.12 s\)/);
    expect(await text(option(page, 'Make up for it at the end'))).toMatch(/Frames389 \(\+3\).*Clip15.44 s/);
    await option(page, 'Make up for it at the end').getByRole('radio').check();
    await button(page, 'Go on like this').click();
    expect(await said(page, 'Progress')).toMatch(/Frame 100 \/ 389/);
    await undo(page).click();
    expect(await said(page, 'Progress')).toMatch(/Frame 100 \/ 386/);

    await button(page, 'Stop early').click();
    await page.getByLabel('Frame', { exact: true }).fill('3');
    await page.getByText('Allowed: 100, the one under way, to 386.').waitFor();
    expect(await button(page, /^Stop after frame/).isDisabled()).toBe(true);
    await page.getByLabel('Frame', { exact: true }).fill('120');
    const dialog = page.getByRole('dialog');
    expect(await text(dialog)).toMatch(
      /After frame 120: 266 frames of the plan will not be shot.*Frames120 \(-266\).*Clip4.8 s/,
    );
    await button(page, 'Stop after frame 120').click();
    expect(await said(page, 'Progress')).toMatch(/Frame 100 \/ 120/);
    await wind(page, 21 * 14);
    await region(page, 'After the last frame').waitFor();
    await undo(page).click();
    expect(await said(page, 'Progress')).toMatch(/Frame 121 \/ 386/);
    await context.close();
  });
});

describe('nothing is lost', () => {
  test('without a network: a note, the log saved and read back, the run cleared and had back', async () => {
    const { page, problems, context, fetchedAll } = await started();
    // The first sign of somebody has more of the page fetched.
    await fetchedAll();
    await context.setOffline(true);
    await wind(page, 50);
    await page.getByLabel('Note', { exact: true }).fill('=gust, "from the left"');
    await button(page, 'Write down').click();
    await button(page, 'Stop early').click();
    await button(page, /^Stop after frame 4/).click();
    await wind(page, 30);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      button(page, 'Save the log').click(),
    ]);
    expect(download.suggestedFilename()).toBe('harbour-at-dusk-log.csv');
    const rows = csvParse(readFileSync(await download.path(), 'utf8'));
    expect(
      rows.map(({ at, kind, frame, what }) => [at?.slice(0, 16), kind, frame, plain(what ?? '')]),
    ).toEqual([
      ['2026-08-08T20:32', 'started', '1', 'Frame 1 fired at 20:32:35, on time'],
      ['2026-08-08T20:33', 'note', '4', '\'=gust, "from the left"'],
      ['2026-08-08T20:33', 'stopped', '4', 'Stopped after frame 4'],
    ]);
    await button(page, 'Clear this run').click();
    await button(page, /^Start: frame 1 fires now/).waitFor();
    await button(page, 'Bring the cleared run back').click();
    await region(page, 'After the last frame').waitFor();
    expect(await said(page, 'Log')).toMatch(/gust/);
    expect(problems).toEqual([]);
    await context.close();
  });

  test('with the network cut after the first load, before the view was ever opened', async () => {
    // By the real clock: a worker that answers without a network knows no other.
    const { page, context } = await visit(browser, origin, {
      viewport: PHONE,
      touch: true,
      theme: 'dim',
      offline: true,
    });
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await expect
      .poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null), { timeout: 20_000 })
      .toBe(true);
    await context.setOffline(true);
    await page.reload();
    await page.goto(`${origin}/#onset`);
    await button(page, /^Run it as if now/).click();
    await button(page, /^Start: frame 1 fires now/).click();
    await region(page, 'Progress').waitFor();
    await page.waitForTimeout(500);
    await page.reload();
    await region(page, 'Progress').waitFor();
    expect(await said(page, 'Log')).toMatch(/Frame 1 fired/);
    await context.close();
  });

  test('after every process of the browser was killed the view is where the clock now is', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'escapement-onset-'));
    const open = async () => {
      const killable = await startWithProfile(folder);
      const page = await killable.browser.contexts()[0]?.newPage();
      if (!page) throw new Error('the browser has no window');
      await page.goto(`${origin}/#onset`);
      return { page, killable };
    };
    // Here the time is that of the machine: the run is one as if now.
    const first = await open();
    await button(first.page, /^Run it as if now/).click();
    await button(first.page, /^Start: frame 1 fires now/).click();
    await region(first.page, 'Progress').waitFor();
    const at = Date.now();
    await first.page.waitForTimeout(500);
    await first.killable.kill();

    const second = await open();
    await region(second.page, 'Progress').waitFor();
    const [, frame = '0'] = /Frame (\d+)/.exec(await said(second.page, 'Progress')) ?? [];
    expect(Math.abs(Number(frame) - (1 + (Date.now() - at) / 14_000))).toBeLessThan(1.1);
    expect(await said(second.page, 'Log')).toMatch(/Frame 1 fired/);
    expect(await second.page.evaluate(() => localStorage.getItem('escapement-run'))).not.toBeNull();
    await undo(second.page).click();
    await button(second.page, /^Start: frame 1 fires now/).waitFor();
    expect(await second.page.evaluate(() => localStorage.getItem('escapement-run'))).toBeNull();
    await second.killable.kill();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }, 120_000);

  test('a reload comes back to the frame of the clock, and another plan on the desk does not hide the run', async () => {
    const { page, context } = await started();
    await wind(page, 100);
    // What opens the page waits by the same clock.
    await page.clock.resume();
    await page.reload();
    await region(page, 'Progress').waitFor();
    expect(await said(page, 'Progress')).toMatch(/Frame [89] \/ 386/);
    await pickFile(page, 'other.json', JSON.stringify(planFile({ title: 'Another plan' })));
    await page.getByText('A run of “Harbour at dusk” is under way').waitFor();
    expect(await said(page, 'Progress')).toMatch(/\/ 386/);
    await context.close();
  });
});

test('a clock that jumps is said, with the frame to check', async () => {
  const { page, context } = await started();
  await wind(page, 127 * 14 + 2);
  await page.clock.setSystemTime(new Date(START_MS + (0.2 + 127 * 14 + 2 + 40) * 1000));
  await wind(page, 2);
  expect(await text(page.getByRole('alert'))).toMatch(
    /This phone’s clock jumped 40 s forward. Check frame 13[01]./,
  );
  await button(page, 'Checked').click();
  expect(await page.getByRole('alert').count()).toBe(0);
  await context.close();
});

test('after sunset the dim theme is offered, not forced', async () => {
  const { page, context } = await started({ theme: 'light' });
  await wind(page, 60);
  expect(await button(page, 'Use the dim theme').count()).toBe(0);
  await wind(page, 20 * 60);
  expect(await page.evaluate(() => document.documentElement.getAttribute('data-theme'))).toBe('light');
  await button(page, 'Use the dim theme').click();
  expect(await page.evaluate(() => document.documentElement.getAttribute('data-theme'))).toBe('dim');
  await button(page, /^Theme: dim/).click();
  expect(await page.evaluate(() => document.documentElement.getAttribute('data-theme'))).toBe('light');
  await context.close();
});

describe('everybody can use it', () => {
  const barriers = async (page: Page, theme: (typeof THEMES)[number]) => {
    // axe waits by the same clock.
    await page.clock.resume();
    return violations(page, { theme });
  };

  test.each(THEMES)(
    'axe finds nothing before, while and after, in the %s theme',
    async (theme) => {
      const { page, context } = await onSet(EVENING, { theme });
      expect(await barriers(page, theme)).toEqual([]);
      await wind(page, 160);
      await button(page, /^Start: frame 1 fires now/).click();
      await wind(page, 309 * 14);
      expect(await barriers(page, theme)).toEqual([]);
      await button(page, 'Started late').click();
      expect(await barriers(page, theme)).toEqual([]);
      await page.keyboard.press('Escape');
      await button(page, 'Pause').click();
      expect(await barriers(page, theme)).toEqual([]);
      await context.close();
    },
    120_000,
  );

  test.each([PHONE, { width: 360, height: 740 }])(
    'at $width px nothing scrolls sideways, and targets are 56 px',
    async (viewport) => {
      const { page, context } = await started({ viewport });
      await wind(page, 309 * 14);
      const excess = () =>
        page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      const wide = await main(page)
        .locator('*')
        .evaluateAll((all) =>
          all
            .filter((element) => element.getBoundingClientRect().right > innerWidth + 0.5)
            .map(({ outerHTML }) => outerHTML.slice(0, 120)),
        );
      expect(wide).toEqual([]);
      expect(await excess()).toBe(0);
      const small = await main(page)
        .locator('a, button, summary, input')
        .evaluateAll((all) =>
          all.flatMap((element) => {
            const { width, height } = element.getBoundingClientRect();
            return width < 56 || height < 56 ? [`${element.textContent} ${width} x ${height}`] : [];
          }),
        );
      expect(small).toEqual([]);
      await context.close();
    },
  );

  test('the tabs are gone on a phone, and Plan leads back; on a desk key 4 leads here, Space is Done', async () => {
    const { page, context } = await onSet(EVENING);
    expect(await page.getByRole('navigation', { name: 'Views' }).isVisible()).toBe(false);
    await page.getByRole('link', { name: 'Plan' }).click();
    await region(page, 'Pacing').waitFor();
    expect(await page.getByRole('navigation', { name: 'Views' }).isVisible()).toBe(true);
    await context.close();

    const desk = await started({ viewport: { width: 1440, height: 900 }, touch: false });
    await desk.page.keyboard.press('1');
    await region(desk.page, 'Pacing').waitFor();
    await desk.page.keyboard.press('4');
    await region(desk.page, 'Progress').waitFor();
    await wind(desk.page, 310 * 14);
    await desk.page.locator('body').click({ position: { x: 5, y: 500 } });
    await desk.page.keyboard.press('Space');
    expect(await said(desk.page, 'Log')).toMatch(/swap to pack 2: done/);
    await desk.context.close();
  });
});

test('stop-motion: the next exposure with one large button', async () => {
  const { page, problems, context } = await visit(browser, origin, {
    viewport: PHONE,
    touch: true,
    query: '?demo=clay-snail#onset',
  });
  const done = button(page, /^Done: exposure \d+$/);
  await done.waitFor();
  const [, first = '0'] = /(\d+)$/.exec(await text(done)) ?? [];
  await done.click();
  await button(page, `Done: exposure ${Number(first) + 1}`).waitFor();
  await button(page, `Exposure ${first} is not done`).click();
  await button(page, `Done: exposure ${first}`).waitFor();
  expect(problems).toEqual([]);
  await context.close();
});
