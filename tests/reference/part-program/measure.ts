/** Part programs read back, by the rules of NISTIR 6556 and by an independent interpreter. */
import GCodeInterpreter from 'gcode-interpreter';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { sheetOf } from '../../../src/engine/sheet/sheet.ts';
import { partProgram } from '../../../src/outputs/part-program/program.ts';
import { planOf } from '../../outputs/plans.ts';
import { type NumberCase, numberRow, type Row } from '../rows.ts';
import { type Act, LETTERS, type Letter, type Place, readProgram } from './reader.ts';

const slide = { name: 'Slide', kind: 'slide', unit: 'mm', travelMax: 900, maxSpeed: 24, maxAccel: 60 };
const focus = {
  name: 'Focus',
  kind: 'focus',
  unit: 'mm',
  travelMax: 5,
  unitsPerTurn: 0.5,
  maxSpeed: 0.3,
  maxAccel: 1,
};
const turning = (name: string, kind: string, maxSpeed: number) => ({
  name,
  kind,
  unit: 'deg',
  unitsPerTurn: 360,
  gearRatio: 90,
  travelMin: -180,
  travelMax: 180,
  maxSpeed,
  maxAccel: 20,
});
const pan = turning('Pan', 'pan', 6);
const tilt = turning('Tilt', 'tilt', 2.5);
const track = (axis: string, from: number, to: number, kind = 'smooth') => ({
  axis,
  keyframes: [
    { share: 0, position: from, ease: { kind } },
    { share: 0.4, position: to * 0.7 + from * 0.3, ease: { kind } },
    { share: 1, position: to },
  ],
});

const made = (axes: object[], tracks: object[], rest: object = {}, move: object = {}) =>
  planOf({
    title: 'Moss (slow); Über',
    pacing: { workedOut: 'clip', eventS: 2400, intervalS: 12 },
    rig: { axes },
    move: { mode: 'moveShootMove', tracks, ...move },
    ...rest,
  });

const all = [track('Slide', 20, 777), track('Pan', -31, 17), track('Tilt', 3, -5.5, 'smoother')];
const from = (arrive: string, backlash: number, axis: object) => ({ ...axis, arrive, backlash });

/** Plans with what each tries. */
const PLANS: Readonly<Record<string, Plan>> = {
  'lengths with angles': made([slide, pan, tilt], all),
  'angles alone': made([pan, tilt], all.slice(1)),
  inches: made([slide, focus, pan], [...all.slice(0, 2), track('Focus', 0.4, 3.3)], {
    partProgram: { inches: true, feedShare: 0.35 },
  }),
  'axes in turn, of a fixed time': made([slide, pan], all.slice(0, 2), {}, { order: 'inTurn', moveS: 1.5 }),
  'from one side': made(
    [from('upwards', 0.08, slide), from('downwards', 0.05, pan), { ...tilt, word: 'C' }],
    [{ ...track('Slide', 20, 777), thereAndBack: true }, ...all.slice(1)],
  ),
  'continuous motion': made([slide, pan], all.slice(0, 2), {}, { mode: 'continuous' }),
  'stop-motion': made([slide, turning('Table', 'turntable', 3)], [], {
    technique: 'stopMotion',
    sheet: {
      passes: [{ name: 'Key' }, { name: 'Back' }],
      shots: [
        {
          name: 'One',
          actions: [{ text: 'walks', lengthIn: 'frames', frames: 40 }],
          tracks: [track('Slide', 5, 60)],
        },
        {
          name: 'Two',
          actions: [{ text: 'turns', lengthIn: 'frames', frames: 24 }],
          tracks: [track('Table', 0, 75)],
        },
      ],
    },
  }),
};

/** What a plan has written, and where its axes are to be. */
function written(plan: Plan) {
  const worked = schedule(plan);
  const sheet = plan.technique === 'stopMotion' ? sheetOf(plan) : null;
  const chunks = [...partProgram(plan, worked, sheet)];
  const axes = sheet ? sheet.columns.axes : worked.columns.axes;
  return { plan, worked, sheet, axes, chunks, letters: lettersOf(plan) };
}

type Written = ReturnType<typeof written>;

/** By hand: explicit letters stay, others follow in their order. None of the plans here takes one twice. */
function lettersOf({ rig }: Plan): Letter[] {
  const [lengths, angles] = [[...LETTERS.slice(0, 3)], [...LETTERS.slice(3)]];
  return rig.axes.map(({ unit, word }) =>
    word === 'auto' ? ((unit === 'mm' ? lengths : angles).shift() as Letter) : word,
  );
}

/** Frames at which the camera fires (M8): one each, or as many as an exposure has passes. */
function* firings({ plan, axes, sheet, worked, letters }: Written, places: readonly Place[], by: string) {
  const passes = sheet ? plan.sheet.passes.length : 1;
  const frames = sheet ? sheet.exposures : worked.totals.frames;
  if (places.length !== frames * passes)
    throw new Error(`${by}: ${places.length} firings of ${frames * passes}`);
  for (const [n, place] of places.entries()) {
    for (const [i, { steps, stepsPerUnit }] of axes.entries()) {
      const k = Math.floor(n / passes);
      const at = `${by}, frame ${k + 1}, ${letters[i]}`;
      yield { at, got: place[letters[i] as Letter] * stepsPerUnit, want: steps[k] as number };
    }
  }
}

/** Ends of moves in continuous motion: a frame that does not move dwells, and ends nowhere else. */
function continuousPlaces(acts: readonly Act[]): Place[] {
  const start = acts.findIndex((act) => act.kind === 'M' && act.code === 0);
  const places = [(acts[start] as Extract<Act, { kind: 'M' }>).at];
  for (const act of acts.slice(start + 1)) {
    if (act.kind === 'move') places.push(act.to);
    if (act.kind === 'dwell') places.push(places.at(-1) as Place);
  }
  return places;
}

function* byTheStandard(): Generator<NumberCase> {
  for (const [name, plan] of Object.entries(PLANS)) {
    const wrote = written(plan);
    const acts = [...readProgram(wrote.chunks)];
    const fired = acts.flatMap((act) => (act.kind === 'M' && act.code === 8 ? [act.at] : []));
    const places = plan.move.mode === 'continuous' ? continuousPlaces(acts) : fired;
    yield* firings(wrote, places, name);
  }
}

/** Places at each firing, or after each command of continuous motion, as the package reads the text. */
function placesBy(plan: Plan, text: string): Place[] {
  const at: Place = { X: 0, Y: 0, Z: 0, A: 0, B: 0, C: 0 };
  const places: Place[] = [];
  const continuous = plan.move.mode === 'continuous';
  let unitMm = Number.NaN;
  let started = false;
  const take = () => places.push({ ...at });
  const interpreter = new GCodeInterpreter({
    defaultHandler: (command: string, words: Record<string, number>) => {
      if (command === 'G20') unitMm = 25.4;
      if (command === 'G21') unitMm = 1;
      if (command === 'G1')
        for (const [letter, value] of Object.entries(words))
          if ((LETTERS as readonly string[]).includes(letter))
            at[letter as Letter] = 'XYZ'.includes(letter) ? value * unitMm : value;
      if (command === 'M0') started = true;
      if (continuous ? started && /^(G1|G4|M0)$/.test(command) : command === 'M8') take();
    },
  });
  interpreter.loadFromStringSync(text);
  return places;
}

function* byThePackage(): Generator<NumberCase> {
  for (const [name, plan] of Object.entries(PLANS)) {
    const wrote = written(plan);
    yield* firings(wrote, placesBy(plan, wrote.chunks.join('')), name);
  }
}

/** Speed of each axis over what it may go, at worst 1: all moves but those in inverse time. */
function* speeds(): Generator<NumberCase> {
  for (const [name, plan] of Object.entries(PLANS)) {
    if (plan.move.mode === 'continuous') continue;
    const { chunks, letters } = written(plan);
    let slowest = Number.POSITIVE_INFINITY;
    for (const act of readProgram(chunks)) {
      // The first position may be where the axis is already.
      if (act.kind !== 'move' || act.seconds === 0) continue;
      const shares = plan.rig.axes.map(({ maxSpeed }, i) => {
        const letter = letters[i] as Letter;
        const speed = Math.abs(act.to[letter] - act.from[letter]) / act.seconds;
        return speed / (maxSpeed * plan.partProgram.feedShare);
      });
      const worst = Math.max(...shares);
      slowest = Math.min(slowest, worst);
      yield { at: `${name}, ${JSON.stringify(act.to)}`, got: Math.max(1, worst), want: 1 };
    }
    // Fast enough, too: some axis is at its limit in every move, unless moves have a fixed time.
    if (plan.move.moveS === null) yield { at: `${name}, slowest`, got: Math.min(1, slowest + 2e-5), want: 1 };
  }
}

function* continuousTimes(): Generator<NumberCase> {
  const { chunks, worked } = written(PLANS['continuous motion'] as Plan);
  const acts = [...readProgram(chunks)];
  const start = acts.findIndex((act) => act.kind === 'M');
  const times = acts.slice(start).flatMap((act) => ('seconds' in act ? [act.seconds] : []));
  if (times.length !== worked.totals.frames - 1) throw new Error(`${times.length} moves`);
  for (const [k, got] of times.entries())
    yield { at: `frame ${k + 1}`, got, want: worked.columns.intervalS[k] as number };
}

const NIST = 'rules of NISTIR 6556, read by a reader of our own';
const PACKAGE = 'gcode-interpreter 3.0.0 with gcode-parser 2.2.0';
const quantity = 'position of each axis at each frame';
const regime = 'lengths, angles, inches, in turn, from one side, continuous, stop-motion';

/** Rows on the part program. */
export const measurePartProgram = (): Row[] => [
  numberRow({ quantity, reference: NIST, regime, bound: 0.5, unit: 'microsteps' }, byTheStandard()),
  numberRow({ quantity, reference: PACKAGE, regime, bound: 0.5, unit: 'microsteps' }, byThePackage()),
  numberRow(
    {
      quantity: 'speed of the axis that has to go slowest, over its limit',
      reference: `${NIST}, section 2.1.2.5`,
      regime: 'lengths, angles, inches, in turn, from one side, stop-motion',
      bound: 1e-9,
      unit: 'share',
    },
    speeds(),
  ),
  numberRow(
    {
      quantity: 'time of each move in inverse time',
      reference: `${NIST}, section 3.5.19`,
      regime: 'continuous motion',
      bound: 1e-7,
      unit: 's',
    },
    continuousTimes(),
  ),
];
