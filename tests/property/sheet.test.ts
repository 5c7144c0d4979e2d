import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { test, vi } from 'vitest';
import { crossFaults } from '../../src/engine/plan/check.ts';
import { parsePlan, readPlan, serialisePlan } from '../../src/engine/plan/parse.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import * as edits from '../../src/engine/sheet/edits.ts';
import { sheetOf } from '../../src/engine/sheet/sheet.ts';
import { exposureText, indexAt, placeOf, tickAt } from '../../src/engine/sheet/texts.ts';
import { judgeAll } from '../engine/working/judge.ts';
import { close, must, same } from './close.ts';
import { deepFreeze } from './plans.ts';
import { PATIENCE_MS, settings } from './settings.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const oneOf = <T>(...values: T[]) => fc.constantFrom(...values);
const sometimes = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null, freq: 2 });
const between = (min: number, max: number) => fc.integer({ min, max });

const PASSES = ['Key', 'Rim', 'Fog'];
const AXES = ['Slide', '__proto__'];

const action = fc
  .record({
    frames: between(1, 60),
    lengthIn: oneOf('frames', 'frames', 'seconds'),
    pattern: fc.array(between(1, 5), { minLength: 1, maxLength: 4 }),
    text: oneOf('', 'Wakes', 'Looks back', '=1+1', '__proto__'),
    passes: sometimes(fc.subarray(PASSES, { minLength: 1 })),
    minutesPerExposure: sometimes(between(0, 40)),
    details: fc.array(
      fc.record({
        exposure: between(1, 20),
        text: sometimes(oneOf('own', '')),
        passes: sometimes(fc.subarray(PASSES, { minLength: 1 })),
      }),
      { maxLength: 3 },
    ),
  })
  .map(({ frames, pattern, ...rest }) => ({
    ...rest,
    frames,
    // At 24 frames a second: the middle of the frame, so that it does not matter how halves are rounded.
    lengthS: Math.round((1000 * (frames + 0.2)) / 24) / 1000,
    holds: pattern.map((hold) => Math.min(hold, frames)),
  }));

/** Cues one after another with gaps between them, as far as they fit. */
const cues = fc.array(
  fc.record({
    kind: oneOf('sound', 'word', 'light', 'other'),
    gap: between(0, 6),
    frames: between(1, 5),
    text: oneOf('knock', '', 'x'),
  }),
  { maxLength: 12 },
);

const keyframes = fc.uniqueArray(between(1, 50), { minLength: 1, maxLength: 4 }).chain((frames) =>
  fc.tuple(
    ...frames
      .sort((a, b) => a - b)
      .map((frame) =>
        fc.record({
          at: oneOf('frame', 'share'),
          frame: fc.constant(frame),
          share: fc.constant(frame / 50),
          position: between(0, 900),
          ease: oneOf({ kind: 'linear' }, { kind: 'smooth' }, { kind: 'hold' }),
        }),
      ),
  ),
);

const track = (axis: string) => fc.record({ axis: fc.constant(axis), thereAndBack: fc.boolean(), keyframes });

const tracks = fc
  .subarray(AXES)
  .chain((axes) => fc.tuple(...axes.map((axis) => track(axis))) as fc.Arbitrary<object[]>);

const shot = fc
  .record({
    name: oneOf('One', 'Two', 'One'),
    actions: fc.array(action, { maxLength: 4 }),
    cues,
    tracks,
    setUpMin: sometimes(between(0, 700)),
  })
  .map(({ cues: drawn, ...rest }) => {
    const frames = rest.actions.reduce((sum, one) => sum + one.frames, 0);
    let at = 1;
    const placed = drawn.flatMap(({ gap, ...cue }) => {
      const frame = at + gap;
      at = frame + cue.frames;
      return at - 1 <= frames ? [{ ...cue, frame }] : [];
    });
    return { ...rest, cues: placed };
  });

const hours = fc.record({
  workFrom: between(0, 10 * 60),
  lengths: fc.array(between(30, 240), { minLength: 1, maxLength: 3 }),
  rests: fc.array(between(1, 60), { minLength: 2, maxLength: 2 }),
  daysOff: fc.subarray(['monday', 'wednesday', 'saturday', 'sunday']),
  closedDates: fc.subarray(['2026-03-03', '2026-03-05', '2026-03-06']),
});

const clock = (minute: number): string =>
  `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

/** Stretches of work with rests between them. */
function dayOf({
  workFrom,
  lengths,
  rests,
  ...days
}: typeof hours extends fc.Arbitrary<infer T> ? T : never) {
  let at = workFrom;
  const breaks: { from: string; to: string }[] = [];
  lengths.forEach((length, i) => {
    at += length;
    if (i + 1 === lengths.length) return;
    const rest = rests[i] as number;
    breaks.push({ from: clock(at), to: clock(at + rest) });
    at += rest;
  });
  return { ...days, workFrom: clock(workFrom), workTo: clock(at), breaks };
}

const ticks = fc.array(
  fc.record({
    shot: between(1, 4),
    exposure: between(1, 30),
    minute: between(-3000, 3000),
    retakes: between(0, 2),
  }),
  { maxLength: 12 },
);

const START_MS = Date.UTC(2026, 2, 2, 8, 0);

function planOf(sheet: object, fields: object = {}): Plan {
  const read = readPlan({
    format: 'escapement-plan',
    version: 1,
    technique: 'stopMotion',
    clip: { frameRate: '24' },
    start: { date: '2026-03-02', time: '08:00' },
    camera: { shutterLagS: 0, writeS: 0 },
    exposure: { shutterS: 0.00001 },
    rig: { axes: AXES.map((name) => ({ name, backlash: 0.2, arrive: 'upwards' })) },
    move: { mode: 'moveShootMove' },
    ...fields,
    sheet: { passes: PASSES.map((name, p) => ({ name, changeMin: p })), ...sheet },
  });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.plan;
}

const productions: fc.Arbitrary<Plan> = fc
  .record({
    shots: fc.array(shot, { minLength: 1, maxLength: 3 }),
    hours,
    ticks,
    setUpMin: between(0, 120),
    testFrames: between(0, 3),
    minutesPerExposure: between(0, 50),
    dropFrame: fc.boolean(),
  })
  .map(({ hours: drawn, ticks: list, ...rest }) =>
    planOf({
      ...rest,
      ...dayOf(drawn),
      ticks: list.map(({ minute, ...tick }) => ({ ...tick, atMs: START_MS + minute * 60_000 })),
    }),
  );

const property = (check: (plan: Plan) => void, share = 1) =>
  fc.assert(fc.property(productions, check), settings(share));

test('exposures cover every frame of every action once, in order, none longer than its hold', () => {
  property((plan) => {
    const sheet = sheetOf(plan);
    let i = 0;
    plan.sheet.shots.forEach((one, s) => {
      let frame = 1;
      one.actions.forEach(({ lengthIn, frames, lengthS, holds }) => {
        const long = lengthIn === 'frames' ? frames : Math.round(lengthS * 24);
        let left = long;
        for (let h = 0; left > 0; h += 1, i += 1) {
          const hold = holds[h % holds.length] as number;
          same(sheet.columns.shot[i], s, `shot of ${i}`);
          same(sheet.columns.firstFrame[i], frame, `first frame of ${i}`);
          same(sheet.columns.frames[i], Math.min(hold, left), `frames of ${i}`);
          frame += Math.min(hold, left);
          left -= Math.min(hold, left);
        }
      });
      same(sheet.shots[s]?.frames, frame - 1, `frames of shot ${s}`);
    });
    same(sheet.exposures, i, 'exposures');
    same(
      sheet.frames,
      sheet.shots.reduce((sum, one) => sum + one.frames, 0),
      'frames',
    );
    for (let k = 0; k < i; k += 1) same(indexAt(sheet, placeOf(sheet, k)), k, 'place and back');
  });
});

/** Whether a minute, counted from the epoch, is one of work; local clock is UTC. */
function worksAt({ sheet }: Plan): (minute: number) => boolean {
  const off = new Set<string>(sheet.daysOff);
  const closed = new Set(sheet.closedDates);
  const names = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'];
  const known = new Map<number, boolean>();
  return (minute) => {
    const day = Math.floor(minute / 1440);
    if (!known.has(day)) {
      const date = new Date(day * 86_400_000);
      known.set(
        day,
        !off.has(names[date.getUTCDay()] as string) && !closed.has(date.toISOString().slice(0, 10)),
      );
    }
    const at = clock(minute - day * 1440);
    const rests = sheet.breaks.some(({ from, to }) => at >= from && at < to);
    return (known.get(day) as boolean) && at >= sheet.workFrom && at < sheet.workTo && !rests;
  };
}

/** Minutes of work one after another, by looking at every one. */
function slowClock(plan: Plan): { begins: number[]; end: number } {
  const sheet = sheetOf(plan);
  const works = worksAt(plan);
  const { shot: shotOf, minutes, doneMs } = sheet.columns;
  const change = (i: number) =>
    plan.sheet.passes.reduce(
      (sum, pass, p) => sum + ((sheet.columns.passes[i] as number) & (1 << p) ? pass.changeMin : 0),
      0,
    );
  const done = Array.from(doneMs).filter((ms) => !Number.isNaN(ms));
  let at = (done.length > 0 ? Math.max(...done) : START_MS) / 60_000;
  let longest = 0;
  for (let m = 0, run = 0; m < 1440 * 14; m += 1) {
    run = works(START_MS / 60_000 - 480 + m) ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  const begins: number[] = [];
  let before = -1;
  for (let i = 0; i < sheet.exposures; i += 1) {
    const s = shotOf[i] as number;
    const placed = sheet.shots[s];
    if (!placed) throw new Error('no shot');
    const own = doneMs.subarray(placed.firstExposure - 1, placed.firstExposure - 1 + placed.exposures);
    if (!Number.isNaN(doneMs[i])) {
      begins.push((doneMs[i] as number) / 60_000);
      continue;
    }
    if (s !== before && own.every(Number.isNaN)) {
      const first = placed.firstExposure - 1;
      for (let left = placed.setUpMin + plan.sheet.testFrames * change(first); left > 0; at += 1)
        if (works(at)) left -= 1;
    }
    before = s;
    const takes = minutes[i] as number;
    const fits = (from: number) => {
      for (let m = 0; m < Math.max(1, takes); m += 1) if (!works(from + m)) return false;
      return true;
    };
    if (takes > longest)
      while (!works(at) || new Array(at % 1440).fill(0).some((_, m) => works(at - 1 - m))) at += 1;
    else while (!fits(at)) at += 1;
    begins.push(at);
    at += takes;
  }
  return { begins, end: at };
}

test('the clock agrees with one that looks at every minute', () => {
  property((plan) => {
    // Without axes every duration is a whole number of minutes, but for the camera’s blink.
    const still = {
      ...plan,
      rig: { ...plan.rig, axes: [] },
      sheet: { ...plan.sheet, shots: plan.sheet.shots.map((one) => ({ ...one, tracks: [] })) },
    };
    const sheet = sheetOf(still);
    const { begins, end } = slowClock(still);
    begins.forEach((minute, i) => {
      const got = (sheet.columns.startMs[i] as number) / 60_000;
      must(Math.abs(got - minute) < 0.01, `exposure ${i + 1} begins ${got - minute} min late`);
    });
    if (sheet.totals.left > 0)
      must(
        Math.abs(sheet.totals.finishMs / 60_000 - end) < 0.01,
        `ends ${sheet.totals.finishMs / 60_000 - end} min late`,
      );
  }, 0.4);
});

test('days follow one another, hold every exposure, and add up', () => {
  property((plan) => {
    const { days, totals, columns, exposures } = sheetOf(plan);
    days.forEach((day, d) => {
      must(day.toMs >= day.fromMs, `${day.date} ends before it begins`);
      must(d === 0 || day.date > (days[d - 1]?.date ?? ''), `${day.date} is out of order`);
      must(day.workMin * 60_000 <= day.toMs - day.fromMs + 1e-3, `${day.date}: more work than time`);
    });
    const held = new Set<number>();
    for (const { firstExposure, lastExposure } of days)
      if (firstExposure !== null && lastExposure !== null)
        for (let i = firstExposure; i <= lastExposure; i += 1) held.add(i);
    must(held.size === exposures, `${held.size} of ${exposures} exposures on a day`);
    same(totals.done + totals.left, exposures, 'done and left');
    same(totals.done, columns.doneMs.filter((ms) => !Number.isNaN(ms)).length, 'done');
    must(totals.pace.factor > 0, 'pace');
    close(
      totals.energyWh,
      days.flatMap(({ energyWh }) => energyWh).reduce((sum, { wh }) => sum + wh, 0),
      'energy',
    );
  });
});

test('the same plan gives the same sheet, and stays as it was', () => {
  property((plan) => {
    const before = structuredClone(plan);
    const first = sheetOf(deepFreeze(plan));
    must(isDeepStrictEqual(plan, before), 'the plan was changed');
    must(isDeepStrictEqual(sheetOf(before), first), 'another sheet came out');
  });
});

/** An edit with its figures drawn from a few numbers, some of them beyond what there is. */
type Edit = (plan: Plan, n: readonly number[]) => Plan;

const place = (n: readonly number[]) => ({
  shot: 1 + ((n[0] as number) % 3),
  exposure: (n[1] as number) % 30,
});
const range = (n: readonly number[]) => ({
  first: (n[1] as number) % 40,
  last: ((n[1] as number) % 40) + ((n[2] as number) % 9),
});
const small = (n: readonly number[], k: number) => (n[k] as number) % 6;

function paste(plan: Plan, n: readonly number[], text: string): Plan {
  const result = edits.pasteRows(plan, place(n), text);
  if (result.ok) return result.plan;
  for (const fault of result.faults)
    must(fault.path !== '' && fault.found !== '' && fault.allowed !== '', JSON.stringify(fault));
  return plan;
}

/** Edits that leave what happens at an exposure, and its tick, together. */
const STRUCTURE: readonly Edit[] = [
  (plan, n) => edits.setHold(plan, place(n), small(n, 2)),
  (plan, n) => edits.retime(plan, range(n), small(n, 3)),
  (plan, n) => edits.insertAfter(plan, place(n), 1 + small(n, 2)),
  (plan, n) => edits.removeExposures(plan, range(n)),
  (plan, n) => edits.duplicate(plan, range(n)),
  (plan, n) => edits.addShot(plan, small(n, 1)),
  (plan, n) => edits.removeShot(plan, small(n, 1)),
  (plan, n) => edits.moveShot(plan, small(n, 1), small(n, 2)),
  (plan, n) => edits.addAction(plan, small(n, 1), small(n, 2)),
  (plan, n) => edits.removeAction(plan, small(n, 1), small(n, 2)),
  (plan, n) => edits.splitAction(plan, place(n)),
  (plan, n) => edits.mergeWithNext(plan, small(n, 1), small(n, 2)),
  (plan, n) =>
    edits.setAction(plan, small(n, 1), small(n, 2), {
      lengthIn: 'frames',
      frames: (n[3] as number) % 70,
      holds: [1 + small(n, 4)],
    }),
  (plan, n) => edits.setCue(plan, place(n), { kind: 'sound', text: 'bang', frames: 1 + small(n, 2) }),
  (plan, n) => edits.setCue(plan, place(n), { kind: 'word', text: '' }),
  (plan, n) => edits.setAxisPosition(plan, place(n), AXES[small(n, 3)] ?? 'None', n[2] as number),
  (plan, n) => edits.tick(plan, range(n), START_MS + (n[3] as number)),
  (plan, n) => edits.untick(plan, range(n)),
  (plan, n) => edits.setRetakes(plan, place(n), small(n, 2)),
];

const EDITS: readonly Edit[] = [
  ...STRUCTURE,
  (plan, n) => edits.setText(plan, place(n), ['', 'turns', 'Wakes', 'x'.repeat(201)][small(n, 2)] ?? 'own'),
  (plan, n) =>
    edits.setPasses(plan, place(n), [null, ['Fog'], ['Key', 'Rim'], [], ['Haze']][small(n, 2)] ?? null),
  (plan, n) => edits.setNote(plan, place(n), 'bumped'),
  (plan, n) => edits.nameShot(plan, small(n, 1), ['A', '', 'x'.repeat(41)][small(n, 2)] ?? 'B'),
  (plan, n) => paste(plan, n, `turns\t${small(n, 2)}\tFog, Key\tsound: bang\nlooks`),
  (plan, n) => paste(plan, n, `frames\tSlide.mm\taction\n${1 + small(n, 2)}\t${n[3]}\tgoes\n\t\t\n2\t7,5\t`),
];

const steps = fc.array(
  fc.tuple(fc.nat(), between(0, 999), between(0, 999), between(0, 999), between(0, 999), between(0, 999)),
  {
    minLength: 1,
    maxLength: 12,
  },
);

/** The plan after an edit; as it was if the edit was refused, with what was found and what is allowed. */
function edited(plan: Plan, edit: Edit, numbers: readonly number[]): Plan {
  try {
    return edit(deepFreeze(plan), numbers);
  } catch (error) {
    if (!(error instanceof edits.Refused)) throw error;
    const { path, found, allowed } = error.fault;
    must(path !== '' && found !== '' && allowed !== '', `refused without a word: ${error.message}`);
    return plan;
  }
}

test('edits in any order leave a plan without faults, and the one before as it was', () => {
  let changed = 0;
  fc.assert(
    fc.property(productions, steps, (plan, list) => {
      let now = plan;
      for (const [which, ...numbers] of list) {
        const before = structuredClone(now);
        const then = edited(now, EDITS[which % EDITS.length] as Edit, numbers);
        must(isDeepStrictEqual(now, before), 'the plan before was changed');
        if (then !== now) changed += 1;
        now = then;
      }
      const faults = crossFaults(now);
      must(faults.length === 0, JSON.stringify(faults));
      const text = serialisePlan(now);
      must(text === `${JSON.stringify(now, null, 2)}\n`, 'the text of the plan is not that of its parts');
      const read = parsePlan(text);
      must(
        read.ok && isDeepStrictEqual(read.plan.sheet, now.sheet),
        `not read back: ${JSON.stringify(read)}`.slice(0, 500),
      );
      sheetOf(now);
    }),
    settings(1),
  );
  must(changed > 100, `only ${changed} edits did anything`);
});

const withSheet = (plan: Plan, change: Partial<Plan['sheet']>): Plan => ({
  ...plan,
  sheet: { ...plan.sheet, ...change },
});

/** Changes of what the sheet goes by beside its rows. */
const SETTINGS: readonly Edit[] = [
  (plan, n) => withSheet(plan, { minutesPerExposure: small(n, 1) }),
  (plan, n) => withSheet(plan, { setUpMin: small(n, 1) * 50 }),
  (plan, n) => withSheet(plan, { testFrames: small(n, 1) }),
  (plan, n) => withSheet(plan, { startTimecode: `0${small(n, 1)}:00:00:00` }),
  (plan, n) => withSheet(plan, { daysOff: small(n, 1) < 3 ? [] : ['tuesday'] }),
  (plan, n) => withSheet(plan, { closedDates: small(n, 1) < 3 ? [] : ['2026-03-02', '2026-03-04'] }),
  (plan) => withSheet(plan, { workTo: '23:59' }),
  (plan) => withSheet(plan, { breaks: [] }),
  (plan, n) =>
    withSheet(plan, { passes: plan.sheet.passes.map((pass, p) => ({ ...pass, changeMin: small(n, p) })) }),
  (plan, n) => ({ ...plan, title: `Take ${n[1]}` }),
  (plan, n) => ({ ...plan, start: { ...plan.start, time: `0${small(n, 1)}:30` } }),
  (plan, n) => ({
    ...plan,
    place: { ...plan.place, zone: ['Europe/Dublin', 'Asia/Tokyo'][small(n, 1) % 2] ?? '' },
  }),
  (plan, n) => ({
    ...plan,
    move: { ...plan.move, settleS: small(n, 1), mode: small(n, 2) < 2 ? 'still' : 'moveShootMove' },
  }),
  (plan, n) => ({
    ...plan,
    rig: {
      ...plan.rig,
      axes: plan.rig.axes.slice(small(n, 1) % 3).map((axis) => ({ ...axis, maxSpeed: 1 + small(n, 2) })),
    },
  }),
  (plan, n) => ({
    ...plan,
    clip: { ...plan.clip, frameRate: ['24', '25', '30000/1001'][small(n, 1) % 3] ?? '24' },
  }),
];

test('a sheet that takes from the one before an edit is what it is without', () => {
  const every = [...EDITS, ...EDITS, ...SETTINGS];
  let lent = 0;
  fc.assert(
    fc.property(productions, steps, (plan, list) => {
      let [now, sheet] = [plan, sheetOf(plan)];
      for (const [which, ...numbers] of list) {
        const then = edited(now, every[which % every.length] as Edit, numbers);
        const made = sheetOf(then, { before: sheet });
        must(
          isDeepStrictEqual(made, sheetOf(then)),
          `another sheet came out after edit ${which % every.length}`,
        );
        if (then !== now && made.columns.axes.length > 0 && made.columns.axes === sheet.columns.axes)
          lent += 1;
        [now, sheet] = [then, made];
      }
    }),
    settings(1),
  );
  must(lent > 100, `only ${lent} edits left the rig as it was`);
});

test('a tick stays with what happens at its exposure, whatever is done around it', () => {
  const numbered = fc.array(fc.array(between(2, 9), { minLength: 1, maxLength: 3 }), {
    minLength: 1,
    maxLength: 3,
  });
  let kept = 0;
  fc.assert(
    fc.property(numbered, steps, (shots, list) => {
      const ticked: object[] = [];
      const made = shots.map((counts, s) => {
        let exposure = 0;
        const actions = counts.map((count, a) => ({
          text: `action ${s} ${a}`,
          frames: count * 2,
          holds: [2],
          details: Array.from({ length: count }, (_, k) => {
            exposure += 1;
            const text = `${s} ${a} ${k}`;
            ticked.push({ shot: s + 1, exposure, atMs: START_MS, note: text });
            return { exposure: k + 1, text };
          }),
        }));
        return { name: `S${s}`, actions };
      });
      let now = planOf({ shots: made, ticks: ticked });
      for (const [which, ...numbers] of list)
        now = edited(now, STRUCTURE[which % STRUCTURE.length] as Edit, numbers);
      const sheet = sheetOf(now);
      for (let i = 0; i < sheet.exposures; i += 1) {
        const note = tickAt(now, sheet, i)?.note;
        if (note === undefined || note === '') continue;
        same(exposureText(now, sheet, i), note, `what happens at exposure ${i + 1}`);
        kept += 1;
      }
    }),
    settings(1),
  );
  must(kept > 100, `only ${kept} ticks were left`);
});

test('every figure has a working whose formula gives it', () => {
  property((plan) => {
    judgeAll(plan, schedule(plan), [1]);
  }, 0.2);
});
