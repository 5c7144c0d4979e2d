import { describe, expect, test } from 'vitest';
import { keyOf } from '../../../src/engine/findings/types.ts';
import { remediesOf, remediesWith } from '../../../src/engine/fixes/remedies.ts';
import { Trials } from '../../../src/engine/fixes/trial.ts';
import type { Remedy, WaysOut } from '../../../src/engine/fixes/types.ts';
import { withChanges } from '../../../src/engine/plan/changes.ts';
import { setAt } from '../../../src/engine/plan/paths.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { Room } from '../../../src/engine/room.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { cardOf, loadOf, plainPlan, sourceOf } from '../../reference/plans.ts';
import { all, edits, FEW, longer, only, packs, settle, type Ways, wayOf } from './own-ways.ts';

const remedies = (plan: Plan, ways: Ways = FEW): Remedy[] => [...remediesOf(plan, schedule(plan), { ways })];

/** The remedy of a finding, which the plan must have. */
function remedy(plan: Plan, key: string, ways: Ways = FEW): Remedy {
  const found = remedies(plan, ways).find((one) => one.key === key);
  if (!found) throw new Error(`no finding ${key}`);
  return found;
}

const keysWith = (plan: Plan, fix: Remedy['fixes'][number] | undefined): string[] =>
  schedule(withChanges(plan, fix?.changes ?? [])).findings.map(({ id }) => id);

// 0.5 s of exposure and 9 s of write in each 5 s: 9.5 s are needed, 10 s is the next setting in steps of 1 s.
const slow = plainPlan(100, 5, { trigger: { stepS: 1, minS: 1 }, camera: { writeS: 9 } });

describe('a fix', () => {
  test('is the smallest change that suffices', () => {
    const { fixes, whyNone } = remedy(slow, 'camera-not-ready');
    expect(whyNone).toBeNull();
    expect(fixes.map(({ kind, label }) => [kind, label])).toEqual([['interval', 'Interval to 10 s']]);
    expect(fixes[0]?.changes).toEqual([{ path: 'pacing.intervalS', from: 5, to: 10 }]);
    expect(keysWith(slow, fixes[0])).toEqual([]);
    // 99 intervals of 5 s more.
    expect(fixes[0]?.cost).toMatchObject({ frames: 0, clipS: 0, startS: 0, endS: 495 });
    expect(fixes[0]?.cost.text).toBe('ends 0:08:15 later');
  });

  test('says which findings go along', () => {
    const both = { ...slow, cycle: { guardS: 0.3 }, camera: { ...slow.camera, bufferBytes: 43_000_000 } };
    const keys = schedule(both).findings.map(({ id }) => id);
    expect(keys).toContain('camera-not-ready');
    const [fix] = remedy(both, 'camera-not-ready').fixes;
    for (const key of fix?.alsoFixes ?? []) expect(keys).toContain(key);
    expect(fix?.alsoFixes).toEqual(
      keys.filter((key) => key !== 'camera-not-ready' && !keysWith(both, fix).includes(key)),
    );
  });

  test('is offered once, however many ways lead to it', () => {
    const ways = only({ 'camera-not-ready': all(longer, longer) });
    expect(remedy(slow, 'camera-not-ready', ways).fixes).toHaveLength(1);
  });

  test('costs least where it is offered first, and three are enough', () => {
    const write =
      (s: number): WaysOut =>
      (_finding, plan) => [
        {
          ...wayOf(`write ${s}`, 1, 1, () => setAt(plan, 'camera.writeS', s)),
          needs: () => (s > 2 ? 'care' : null),
        },
      ];
    const ways = only({ 'camera-not-ready': all(longer, write(3), write(2), write(1), write(4)) });
    const { fixes } = remedy(slow, 'camera-not-ready', ways);
    const ranks = fixes.map(({ cost }) => cost.rank);
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(fixes.map(({ kind }) => kind)).toEqual(['write 2', 'write 1', 'interval']);
    expect(fixes[0]?.cost.text).toBe('nothing');
  });

  test('is still looked for where those at hand turn out dearer than they seemed', () => {
    // Frames of 120 MB instead of 42 MB, which no pacing shows; and something to see to.
    const heavy = (s: number) => edits(`heavy ${s}`, ['camera.writeS', s], ['camera.frameBytes', 120e6]);
    const care: WaysOut = (_finding, plan) => [
      { ...wayOf('care', 1, 1, () => setAt(plan, 'camera.writeS', 1)), needs: () => 'care' },
    ];
    const ways = only({ 'camera-not-ready': all(heavy(1), heavy(2), heavy(3), care) });
    const { fixes } = remedy(slow, 'camera-not-ready', ways);
    expect(fixes.map(({ kind }) => kind)).toEqual(['care', 'heavy 1', 'heavy 2']);
  });

  test('is not offered if no plan file could hold it', () => {
    const ways = only({ 'camera-not-ready': edits('beyond', ['camera.writeS', -1]) });
    expect(remedy(slow, 'camera-not-ready', ways).fixes).toEqual([]);
  });

  test('is not offered if it brings another as bad', () => {
    // Without the write it would fit; but the handles leave nothing for the clip.
    const plan = { ...slow, pacing: { ...slow.pacing, workedOut: 'clip' as const, eventS: 495 } };
    const ways = only({
      'camera-not-ready': edits('harm', ['camera.writeS', 0], ['clip.handlesFrames', 60]),
    });
    const { fixes, whyNone } = remedy(plan, 'camera-not-ready', ways);
    expect(fixes).toEqual([]);
    expect(whyNone).toMatch(/^Tried in vain: harm \(The handles take all 100 frames.*\)\.$/);
  });

  test('is not offered if it makes another worse', () => {
    // f/8, 0.5 s, ISO 100 suit EV 7. EV 8.2 is a warning, EV 12 more than can be saved afterwards.
    const plan = plainPlan(10, 1, { cycle: { guardS: 0.7 }, light: { kind: 'studio', studioEv: 8.2 } });
    expect(schedule(plan).findings.map(({ id, severity }) => [id, severity])).toEqual([
      ['guard-used', 'warning'],
      ['light-out-of-range', 'warning'],
    ]);
    const with12 = only({ 'guard-used': edits('harm', ['cycle.guardS', 0.1], ['light.studioEv', 12]) });
    const with9 = only({ 'guard-used': edits('no harm', ['cycle.guardS', 0.1], ['light.studioEv', 9]) });
    expect(remedy(plan, 'guard-used', with12).fixes).toEqual([]);
    expect(remedy(plan, 'guard-used', with9).fixes.map(({ kind }) => kind)).toEqual(['no harm']);
  });

  test('may bring something that is less bad', () => {
    // At 10 s there is room, but less than is asked to be left free.
    const plan = { ...slow, cycle: { guardS: 2 } };
    const [fix] = remedy(plan, 'camera-not-ready').fixes;
    expect(fix?.label).toBe('Interval to 10 s');
    expect(keysWith(plan, fix)).toEqual(['guard-used']);
  });
});

describe('if there is none', () => {
  test('what was tried is named, and how far', () => {
    const { fixes, whyNone } = remedy(slow, 'camera-not-ready', only({ 'camera-not-ready': settle }));
    expect(fixes).toEqual([]);
    expect(whyNone).toBe('Tried, and not enough: settle.');
  });

  test('and nothing to try, that is said', () => {
    expect(remedy(slow, 'camera-not-ready', only({})).whyNone).toBe(
      'Nothing in the plan that could be changed would help.',
    );
  });
});

/**
 * The write wants an interval of 10 s. The pack lasts for 100 frames of 9.5 s, which the camera takes anyhow (2 W x
 * 950 s = 0.528 Wh), and not for 100 of 10 s (0.556 Wh).
 */
const pulled: Plan = {
  ...slow,
  power: {
    temperatureC: 25,
    sources: [sourceOf({ name: 'Pack', energyWh: 0.54, reserveShare: 0, swapS: 0 })],
    loads: [loadOf({ name: 'Heater', source: 'Pack', idleW: 0, exposingW: 0, writingW: 0, alwaysOnW: 2 })],
  },
};

describe('two findings that pull against each other', () => {
  test('get a pair of changes that satisfies both', () => {
    const { fixes, whyNone } = remedy(pulled, 'camera-not-ready');
    expect(whyNone).toBeNull();
    expect(fixes).toHaveLength(1);
    const [pair] = fixes;
    expect(pair?.kind).toBe('interval+packs');
    expect(pair?.label).toBe('Interval to 10 s, and packs');
    expect(pair?.changes.map(({ path, to }) => [path, to])).toEqual([
      ['pacing.intervalS', 10],
      ['power.sources.0.count', 2],
    ]);
    expect(pair?.cost.text).toContain('packs more to bring');
    expect(pair?.cost.text).toContain('ends 0:08:15 later');
    expect(keysWith(pulled, pair)).toEqual([]);
  });

  test('get the second change from where its subject reckons that it suffices', () => {
    // 2 W for 99 intervals and the 9.5 s of the last frame are 0.55528 Wh: the 306th step of 0.00005 Wh.
    const bigger =
      (first: number): WaysOut =>
      (_finding, plan) => [
        wayOf('bigger', 2000, first, (n) =>
          setAt(plan, 'power.sources.0.energyWh', Math.round((0.54 + n / 20_000) * 1e6) / 1e6),
        ),
      ];
    const wh = [300, 305, 350].map((first) => {
      const ways = only({ 'camera-not-ready': longer, 'source-short': bigger(first) });
      return remedy(pulled, 'camera-not-ready', ways).fixes[0]?.changes.at(-1)?.to;
    });
    expect(wh).toEqual([0.5553, 0.5553, 0.5553]);
  });

  test('get none if none does, and why', () => {
    const ways = only({ 'camera-not-ready': longer });
    expect(remedy(pulled, 'camera-not-ready', ways)).toMatchObject({
      fixes: [],
      whyNone: expect.stringMatching(/^Tried in vain: Interval to 10 s \(Pack: 2 needed, 1 brought\)\.$/),
    });
  });

  test('get the cheapest of the pairs', () => {
    const better = edits('bigger pack', ['power.sources.0.energyWh', 50]);
    const ways = only({ 'camera-not-ready': longer, 'source-short': all(packs, better) });
    expect(remedy(pulled, 'camera-not-ready', ways).fixes[0]?.kind).toBe('interval+bigger pack');
  });

  test('get the cheapest, also where they seemed alike', () => {
    const heavy = (bytes: number) =>
      edits(`${bytes}`, ['power.sources.0.energyWh', 50], ['camera.frameBytes', bytes]);
    const ways = only({ 'camera-not-ready': longer, 'source-short': all(heavy(80e6), heavy(120e6)) });
    expect(remedy(pulled, 'camera-not-ready', ways).fixes[0]?.kind).toBe('interval+80000000');
  });
});

describe('trying', () => {
  test('is in the order of the findings, one remedy each', () => {
    const plan = {
      ...pulled,
      storage: { ...pulled.storage, cards: [cardOf({ name: 'Card', cardBytes: 1_000_000_000 })] },
    };
    const made = schedule(plan);
    expect(made.findings.length).toBeGreaterThan(1);
    expect([...remediesOf(plan, made, { ways: FEW })].map(({ key }) => key)).toEqual(
      made.findings.map(keyOf),
    );
  });

  test('leaves the schedule’s columns and the plan as they were', () => {
    const room = new Room();
    schedule(pulled, { room });
    const made = schedule(pulled, { room });
    const before = structuredClone(made.columns);
    const file = JSON.stringify(pulled);
    expect([...remediesOf(pulled, made, { ways: FEW })].length).toBeGreaterThan(0);
    expect(made.columns).toEqual(before);
    expect(JSON.stringify(pulled)).toBe(file);
  });

  test('a change that was tried is not tried again', () => {
    const trials = new Trials(slow, schedule(slow));
    const once = trials.outcome(setAt(slow, 'pacing.intervalS', 9));
    expect(trials.outcome(setAt(slow, 'pacing.intervalS', 9))).toBe(once);
    expect(trials.count).toBe(1);
  });

  test('begins with what costs least, and ends where nothing cheaper can come', () => {
    const write =
      (s: number, need: string | null): WaysOut =>
      (_finding, plan) => [
        { ...wayOf(`write ${s}`, 1, 1, () => setAt(plan, 'camera.writeS', s)), needs: () => need },
      ];
    const dear = [0.1, 0.2, 0.3, 0.4].map((s) => write(s, 'care'));
    const free = [1, 2, 3].map((s) => write(s, null));
    const ways = only({ 'camera-not-ready': all(...dear, ...free) });
    const trials = new Trials(slow, schedule(slow));
    const [first] = [...remediesWith(trials, ways)];
    expect(first?.fixes.map(({ kind }) => kind)).toEqual(['write 1', 'write 2', 'write 3']);
    expect(trials.count).toBe(3);
  });

  test('knows the present as the plan’s schedule does', () => {
    // A start that is past is a note in both: it is nothing new that a fix brings.
    const nowMs = Date.UTC(2040, 0, 1);
    const note = only({ 'start-past': edits('guard', ['cycle.guardS', 1]), 'camera-not-ready': longer });
    const made = schedule(slow, { nowMs });
    const found = [...remediesOf(slow, made, { nowMs, ways: note })];
    expect(found.map(({ key, fixes }) => [key, fixes.length])).toEqual([
      ['camera-not-ready', 1],
      ['start-past', 0],
    ]);
  });
});
