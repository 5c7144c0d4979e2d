/** Random valid plans: every mode, many at the edge of what fits. */
import fc from 'fast-check';
import { START_EVENTS } from '../../src/engine/plan/constants.ts';
import { defaultPlan, newAxis, newKeyframe } from '../../src/engine/plan/parse.ts';
import {
  AXIS_KINDS,
  type Axis,
  type Card,
  type Ease,
  type Keyframe,
  type Load,
  type Plan,
  RAMP_SETTINGS,
  type Source,
  type Track,
} from '../../src/engine/plan/schema.ts';
import { SHUTTER_TABLE } from '../reference/exposure/tables.ts';
import { shotsOf } from './slow/exposure.ts';
import { slowPace } from './slow/pacing.ts';

/** A plan, and whether its shutter time is a mark of a dial. */
export interface Case {
  plan: Plan;
  marked: boolean;
}

export const MOST_FRAMES = 3000;

/** Numbers with a few decimals, as a person types them. */
const decimals = (from: number, to: number, places: number) =>
  fc
    .integer({ min: Math.round(from * 10 ** places), max: Math.round(to * 10 ** places) })
    .map((n) => n / 10 ** places);

const oneOf = <T>(...values: T[]) => fc.constantFrom(...values);
const sometimes = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null, freq: 2 });

/** Texts that break careless code. */
const text = fc.oneof(
  fc.string({ maxLength: 30, unit: 'binary' }),
  oneOf('', '__proto__', 'a, "b"\r\nc', '=1+1', '\ud800', '\u202e\u0000', '🎞️ Loaf', '%PDF', '</script>'),
);

const NAMES = [
  'Pan',
  'Boom arm',
  '__proto__',
  'constructor',
  'toString',
  '0',
  'length',
  'Bräter',
  ' ',
  'x.y[1]',
  '"q"',
  '\udfff',
];

/** Different names. */
const names = (least: number, most: number) =>
  fc.uniqueArray(oneOf(...NAMES), { minLength: least, maxLength: most });

const marks = SHUTTER_TABLE.map(([mark]) => {
  const [over, under = '1'] = mark.split('/');
  return Number(over) / Number(under);
});
const unmarked = [0.0123, 0.07, 7, 17, 45, 60, 90];
const halves = [3, 1.5, 0.7, 1 / 45, 1 / 90];

const shutter = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({ shutterS: oneOf(...marks.filter((s) => s < 4)), marked: fc.constant(true) }),
  },
  { weight: 2, arbitrary: fc.record({ shutterS: oneOf(...marks, ...halves), marked: fc.constant(true) }) },
  { weight: 1, arbitrary: fc.record({ shutterS: oneOf(...unmarked), marked: fc.constant(false) }) },
);

const unit = (places = 2) => decimals(0, 1, places);

const ease: fc.Arbitrary<Ease> = fc.oneof(
  oneOf<Ease>({ kind: 'linear' }, { kind: 'smooth' }, { kind: 'smoother' }, { kind: 'hold' }),
  fc.record({
    kind: fc.constant('cubicBezier' as const),
    x1: unit(),
    y1: decimals(-2, 3, 2),
    x2: unit(),
    y2: decimals(-2, 3, 2),
  }),
  fc.tuple(unit(), unit()).map(([head, rest]) => ({
    kind: 'ramped' as const,
    headShare: head,
    tailShare: Math.floor(rest * (1 - head) * 100) / 100,
  })),
);

/** Kinds in units that they can move in; now and then in others. */
const kindAndUnit = fc.tuple(oneOf(...AXIS_KINDS), fc.boolean(), fc.integer({ min: 0, max: 11 })).map(
  ([kind, flip, odd]): Pick<Axis, 'kind' | 'unit'> => ({
    kind,
    unit: (kind === 'boom' || kind === 'focus' ? flip : (kind === 'slide') !== (odd === 0)) ? 'mm' : 'deg',
  }),
);

const axis = (name: string, sources: readonly string[]): fc.Arbitrary<Axis> =>
  fc
    .record({
      name: fc.constant(name),
      kindAndUnit,
      fullStepsPerTurn: oneOf(48, 200, 400),
      microsteps: oneOf(1, 8, 16, 64),
      gearRatio: oneOf(1, 5.18, 20),
      unitsPerTurn: oneOf(8, 40, 360),
      travel: fc.tuple(decimals(-300, 200, 1), decimals(0.1, 600, 1)),
      maxSpeed: oneOf(0.05, 1, 5, 20, 80),
      maxAccel: oneOf(0.01, 2, 40, 400),
      maxJerk: oneOf(0.1, 5, 400, 10_000),
      backlash: oneOf(0, 0, 0.1, 1.5),
      // From 0.01 to 3 N m, each so many times the one before.
      torqueNm: sometimes(fc.integer({ min: 0, max: 22 }).map((n) => Math.round(10 * 1.3 ** n) / 1000)),
      driveEfficiencyShare: oneOf(0.8, 0.3, 1),
      arrive: oneOf<Axis['arrive']>('eitherWay', 'eitherWay', 'upwards', 'downwards'),
      overrun: sometimes(oneOf(0, 0.4, 20)),
      holdW: decimals(0, 3, 1),
      moveW: decimals(0, 12, 1),
      source: oneOf(null, ...sources),
    })
    .map(({ travel: [travelMin, length], kindAndUnit: unit, ...rest }) => ({
      ...newAxis(),
      ...rest,
      ...unit,
      travelMin,
      travelMax: Math.round((travelMin + length) * 10) / 10,
    }));

/** Places of a keyframe, also beyond the run. */
const place = fc.record({
  at: oneOf<Keyframe['at']>('share', 'share', 'frame', 'time'),
  share: fc.integer({ min: 0, max: 60 }).map((n) => n / 60),
  frame: fc.oneof(fc.integer({ min: 1, max: 16 }), fc.integer({ min: 1, max: 1200 })),
  timeS: fc.oneof(decimals(0, 60, 1), fc.integer({ min: 0, max: 9000 })),
});

const FIELDS = { share: 'share', frame: 'frame', time: 'timeS' } as const;

/** Those placed in the same way follow each other; of others nobody knows. */
function inOrder(keyframes: readonly Keyframe[]): Keyframe[] {
  const kept: Keyframe[] = [];
  for (const keyframe of keyframes) {
    const before = kept.at(-1);
    const field = FIELDS[keyframe.at];
    if (before?.at !== keyframe.at || keyframe[field] > before[field]) kept.push(keyframe);
  }
  return kept;
}

const track = ({ name, travelMin, travelMax }: Axis): fc.Arbitrary<Track> => {
  const reach = travelMax - travelMin;
  // Mostly within the travel, some beyond it.
  const position = fc.oneof(
    { weight: 9, arbitrary: unit(3) },
    { weight: 1, arbitrary: decimals(-0.3, 1.3, 3) },
  );
  const keyframe = (where: Pick<Keyframe, 'at' | 'share' | 'frame' | 'timeS'>) =>
    fc
      .record({ position: position.map((p) => travelMin + p * reach), ease })
      .map((what) => newKeyframe({ ...where, ...what }));
  const plain = fc
    .uniqueArray(fc.integer({ min: 0, max: 60 }), { minLength: 1, maxLength: 5 })
    .map((shares) => shares.sort((a, b) => a - b))
    .map((shares) => shares.map((n) => ({ at: 'share' as const, share: n / 60, frame: 1, timeS: 0 })));
  const mixed = fc.array(place, { minLength: 1, maxLength: 6 });
  /** Rising places of one kind, so that most of them count. */
  const rising = fc
    .tuple(oneOf<'frame' | 'time'>('frame', 'time'), mixed)
    .map(([at, places]) =>
      places.map((given) => ({ ...given, at })).sort((a, b) => a[FIELDS[at]] - b[FIELDS[at]]),
    );
  return fc.record({
    axis: fc.constant(name),
    thereAndBack: fc.boolean(),
    keyframes: fc
      .oneof({ weight: 2, arbitrary: plain }, mixed, rising)
      .chain((places) => fc.tuple(...places.map(keyframe)))
      .map(inOrder),
  });
};

const curve: fc.Arbitrary<Source['capacityCurve']> = fc.oneof(
  fc.constant<Source['capacityCurve']>([
    { temperatureC: -20, share: 0.5 },
    { temperatureC: 0, share: 0.8 },
    { temperatureC: 25, share: 1 },
  ]),
  fc.array(fc.record({ temperatureC: fc.integer({ min: -30, max: 50 }), share: decimals(0, 1.2, 2) }), {
    minLength: 1,
    maxLength: 5,
  }),
);

const source = (name: string): fc.Arbitrary<Source> =>
  fc.record({
    name: fc.constant(name),
    kind: oneOf<Source['kind']>('battery', 'battery', 'battery', 'mains'),
    energyWh: sometimes(fc.oneof(decimals(0.01, 1, 2), decimals(1, 200, 1))),
    voltageV: oneOf(3.7, 7.2, 12, 14.4),
    capacityMah: oneOf(10, 680, 2000, 14_000),
    count: oneOf(1, 1, 2, 3, 40),
    reserveShare: oneOf(0, 0.07, 0.15, 0.2, 0.8),
    swapS: oneOf(0, 2, 45, 600),
    capacityCurve: curve,
  });

const load = (name: string, sources: readonly string[]): fc.Arbitrary<Load> => {
  const watts = fc.oneof(fc.constant(0), decimals(0, 20, 1));
  return fc.record({
    name: fc.constant(name),
    source: oneOf(null, ...sources, ...sources),
    efficiencyShare: oneOf(1, 1, 0.85, 0.5),
    idleW: watts,
    exposingW: watts,
    writingW: watts,
    holdingW: watts,
    movingW: watts,
    alwaysOnW: watts,
  });
};

const card = (name: string): fc.Arbitrary<Card> =>
  fc.record({
    name: fc.constant(name),
    cardBytes: fc
      .oneof(decimals(0.05, 4, 2), oneOf(16, 64, 128))
      .map((gigabytes) => Math.round(gigabytes * 1e9)),
    reserveShare: oneOf(0, 0.05, 0.07, 0.8),
    writeBytesPerS: oneOf(1e6, 10e6, 30e6, 90e6, 400e6),
  });

/** Each member of a list drawn by its name. */
const each = <T, U>(list: readonly T[], draw: (item: T) => fc.Arbitrary<U>): fc.Arbitrary<U[]> =>
  fc.tuple(...list.map(draw)) as fc.Arbitrary<U[]>;

const RATES = ['1', '12', '24', '25', '30', '24000/1001', '30000/1001', '60000/1001', '15/2'];

/** Clip and pacing around a number of exposures and an interval, so that runs stay short. */
const clipAndPacing = fc
  .record({
    exposures: fc.oneof(
      fc.integer({ min: 1, max: 12 }),
      fc.integer({ min: 2, max: 300 }),
      fc.integer({ min: 200, max: 1500 }),
    ),
    intervalS: fc.oneof(decimals(0.3, 12, 1), fc.integer({ min: 1, max: 60 }), decimals(0.05, 200, 2)),
    frameRate: oneOf(...RATES),
    holdFrames: oneOf(1, 1, 1, 2, 3),
    handlesFrames: oneOf(0, 0, 0, 5, 24),
    workedOut: oneOf<Plan['pacing']['workedOut']>('event', 'interval', 'clip'),
    jitterS: fc.oneof(fc.constant(0), decimals(0, 20, 1)),
  })
  .map(({ exposures, intervalS, frameRate, holdFrames, handlesFrames, workedOut, jitterS }) => {
    const [over = 1, under = 1] = frameRate.split('/').map(Number);
    const clipS = ((exposures * holdFrames - 2 * handlesFrames) * under) / over;
    const eventS = Math.max(0.01, Math.round((intervalS * (exposures - 1) + jitterS) * 100) / 100);
    return {
      clip: { frameRate, holdFrames, handlesFrames, widthPx: 3840, heightPx: 2160 },
      pacing: { workedOut, intervalS, eventS, clipLengthS: Math.max(0.01, Math.round(clipS * 1000) / 1000) },
    };
  });

const two = (value: number) => String(value).padStart(2, '0');

/** Clock times of a day, with or without seconds. */
const times = (fromHour: number, toHour: number) =>
  fc
    .tuple(
      fc.integer({ min: fromHour, max: toHour }),
      fc.integer({ min: 0, max: 59 }),
      sometimes(fc.integer({ min: 0, max: 59 })),
    )
    .map(
      ([hour, minute, second]) => `${two(hour)}:${two(minute)}${second === null ? '' : `:${two(second)}`}`,
    );

/** Zone, date and the hours around a change of its clocks. */
const CHANGES: readonly (readonly [string, string, number, number])[] = [
  ['Europe/London', '2026-03-29', 0, 2],
  ['Europe/London', '2026-10-25', 0, 2],
  ['Australia/Lord_Howe', '2026-04-05', 1, 2],
  ['Australia/Lord_Howe', '2026-10-04', 1, 2],
  ['Antarctica/Troll', '2026-03-29', 0, 3],
  ['Antarctica/Troll', '2026-10-25', 0, 3],
  ['Pacific/Apia', '2011-12-30', 0, 23],
  ['Pacific/Apia', '2011-12-29', 22, 23],
  ['America/Nuuk', '2026-03-28', 22, 23],
  ['Africa/Cairo', '2026-10-29', 22, 23],
];

const when = fc.oneof(
  fc.record({
    zone: oneOf(
      'Etc/UTC',
      'Europe/Lisbon',
      'Asia/Kathmandu',
      'America/St_Johns',
      'Pacific/Kiritimati',
      'Pacific/Chatham',
    ),
    date: oneOf('2026-06-21', '2000-02-29', '1970-01-01', '2999-12-31', '2026-12-31'),
    time: times(0, 23),
  }),
  oneOf(...CHANGES).chain(([zone, date, from, to]) =>
    fc.record({ zone: fc.constant(zone), date: fc.constant(date), time: times(from, to) }),
  ),
);

const camera = fc.record({
  name: fc.constant('Camera'),
  shutterLagS: oneOf(0, 0.05, 0.1, 0.3),
  writeS: fc.oneof(oneOf(0, 0.8), decimals(0, 6, 1)),
  exactStops: fc.boolean(),
  shutterCorrection: oneOf(1, 1, 1.03, 0.97),
  noiseReduction: fc.boolean(),
  // Half way between sixths of a stop: no exposure of a bracket is near.
  noiseReductionFromS: oneOf(0, 2 ** (1 / 12), 2 ** (31 / 12), 3600),
  imageWidthPx: oneOf(6000, 4000),
  imageHeightPx: oneOf(4000, 3000),
  bitsPerPixel: oneOf(12, 14, 16),
  compression: oneOf(1, 0.6, 0.05),
  frameBytes: sometimes(oneOf(1e6, 25e6, 42e6, 42_000_001)),
  bufferBytes: oneOf(0, 10e6, 100e6, 500e6, 5e9),
});

const trigger = fc.record({
  name: fc.constant('Trigger'),
  stepS: oneOf(1, 1, 0.5, 0.1, 0.25, 2, 0.001),
  minS: oneOf(0.001, 0.5, 1, 2),
  maxS: oneOf(20, 3600, 86_400),
  counts: oneOf<Plan['trigger']['counts']>('startToStart', 'startToStart', 'endToStart'),
});

const metres = fc.oneof(decimals(-2000, 2000, 0), oneOf(0, 1000));
const degrees = fc.oneof(decimals(-180, 180, 0), oneOf(0, 90));

/** Where the rig's parts are, what it looks at, how it rings, and what it weighs. */
const rigged = fc.record({
  rig: fc.record({
    pivotHeightMm: oneOf(0, 800, 1200),
    lensBearingDeg: degrees,
    lensTiltDeg: oneOf(0, 0, -20, 35),
    arm: fc.record({
      lengthMm: oneOf(10, 400, 1000, 1500),
      planeTiltDeg: oneOf(0, 0, 30, 72.5, 90),
      zeroDeg: oneOf(0, 0, -30, 45, 170),
      keepsLevel: fc.boolean(),
    }),
    slide: fc.record({ bearingDeg: degrees, inclineDeg: oneOf(0, 0, 30, -90) }),
    turntable: fc.record({ rightMm: metres, forwardMm: metres }),
  }),
  subject: fc.record({
    used: oneOf(true, true, true, false),
    rightMm: metres,
    forwardMm: fc.oneof(decimals(300, 5000, 0), metres),
    heightMm: oneOf(0, 900, 1200, 3000),
    onTurntable: fc.boolean(),
    aimed: fc.boolean(),
    backgroundM: oneOf(0.1, 3, 100, 5000),
    blurMaxPx: oneOf(0.1, 3, 40),
    crossingMinS: oneOf(0.1, 2, 7),
  }),
  move: fc.record({
    profile: oneOf<Plan['move']['profile']>('trapezoidal', 'jerkLimited'),
    settleBy: oneOf<Plan['move']['settleBy']>('time', 'ringing', 'ringing'),
    quiet: fc.boolean(),
    moveS: oneOf(null, null, null, 0.4, 2),
  }),
  ringing: fc.record({
    frequencyHz: oneOf(0.3, 2, 5, 37),
    dampingRatio: oneOf(0.0005, 0.02, 0.3, 0.9),
    tolerancePx: oneOf(0.01, 0.5, 5),
    flexMm: oneOf(10, 400, 1000),
    measuredSettleS: oneOf(null, null, null, 0, 0.4, 5),
  }),
  balance: fc.record({
    used: oneOf(true, true, false),
    workedOut: oneOf<Plan['balance']['workedOut']>('place', 'mass', 'residual'),
    payloadKg: oneOf(0, 0.8, 1.5, 4),
    armKg: oneOf(0, 1, 3.5),
    armCentreMm: oneOf(-600, 0, 200, 700),
    counterweightKg: oneOf(0, 2, 5, 12),
    counterweightMm: oneOf(0, 300, 400, 900),
    counterweightMaxMm: oneOf(200, 500, 1200),
    ratedKg: sometimes(oneOf(1, 2, 6)),
    ratedMm: oneOf(500, 1000),
    baseKg: oneOf(0, 1.5, 8),
    ballastKg: oneOf(0, 10),
    supportKg: oneOf(0, 4),
    supportRatedKg: sometimes(oneOf(4, 10, 25)),
    feetRadiusMm: oneOf(60, 300, 500),
    legs: oneOf(3, 4, 8),
  }),
});
type Rigged = typeof rigged extends fc.Arbitrary<infer T> ? T : never;

/** A plan on a rig: its own move, axes and tracks stay. */
const onRig = (given: Rigged | null, plan: Plan): Plan => {
  if (given === null) return plan;
  const { rig, move, ...rest } = given;
  return {
    ...plan,
    ...rest,
    rig: { ...plan.rig, ...rig },
    move: { ...plan.move, ...move },
  };
};

const lists = fc
  .record({ axes: names(0, 4), sources: names(0, 3), loads: names(0, 4), cards: names(1, 4) })
  .chain(({ axes, sources, loads, cards }) =>
    fc.record({
      axes: each(axes, (name) => axis(name, sources)),
      sources: each(sources, source),
      loads: each(loads, (name) => load(name, sources)),
      cards: each(cards, card),
    }),
  )
  .chain((drawn) =>
    fc.record({
      drawn: fc.constant(drawn),
      tracks: each(drawn.axes, track).chain((tracks) =>
        fc.subarray(tracks, { minLength: Math.ceil(tracks.length / 2) }),
      ),
    }),
  );

const anyCase: fc.Arbitrary<Case> = fc
  .record({
    title: text,
    notes: text,
    technique: oneOf<Plan['technique']>('timeLapse', 'stopMotion'),
    paced: clipAndPacing,
    when,
    whenRepeated: oneOf<'first' | 'second'>('first', 'second'),
    utcOffsetMin: fc.option(oneOf(-570, 0, 330, 840), { nil: null, freq: 8 }),
    camera,
    trigger,
    shutter,
    timedBy: oneOf<Plan['exposure']['timedBy']>('camera', 'trigger'),
    bracket: fc.record({ bracketCount: oneOf(1, 1, 1, 2, 3, 5), bracketStops: oneOf(0.5, 1, 2) }),
    guardS: oneOf(0, 0.2, 0.5, 2),
    lists,
    rigged: fc.option(rigged, { nil: null, freq: 2 }),
    move: fc.record({
      mode: oneOf<Plan['move']['mode']>('still', 'moveShootMove', 'moveShootMove', 'continuous'),
      order: oneOf<Plan['move']['order']>('together', 'inTurn'),
      moveS: fc.option(decimals(0.1, 5, 1), { nil: null, freq: 3 }),
      settleS: oneOf(0, 0.5, 1),
    }),
    temperatureC: fc.integer({ min: -30, max: 50 }),
    cardChangeS: oneOf(0, 3, 30),
    copies: oneOf(1, 2, 3),
  })
  .map((d) => ({
    marked: d.shutter.marked,
    // Cloned, since drawn objects may be without a prototype.
    plan: structuredClone<Plan>(
      onRig(d.rigged, {
        ...defaultPlan(),
        format: 'escapement-plan',
        version: 1,
        title: d.title,
        notes: d.notes,
        technique: d.technique,
        ...d.paced,
        start: { ...defaultPlan().start, date: d.when.date, time: d.when.time, whenRepeated: d.whenRepeated },
        place: {
          name: '',
          zone: d.when.zone,
          utcOffsetMin: d.utcOffsetMin,
          latitudeDeg: null,
          longitudeDeg: null,
          horizon: [],
        },
        camera: { ...defaultPlan().camera, ...d.camera },
        trigger: d.trigger,
        exposure: {
          ...defaultPlan().exposure,
          shutterS: d.shutter.shutterS,
          apertureF: 8,
          iso: 100,
          timedBy: d.timedBy,
          ...d.bracket,
        },
        cycle: { guardS: d.guardS },
        rig: { ...defaultPlan().rig, axes: d.lists.drawn.axes },
        move: { ...defaultPlan().move, ...d.move, tracks: d.lists.tracks },
        power: { temperatureC: d.temperatureC, sources: d.lists.drawn.sources, loads: d.lists.drawn.loads },
        storage: { cards: d.lists.drawn.cards, cardChangeS: d.cardChangeS, copies: d.copies },
      }),
    ),
  }));

/** Random valid plans of at most {@link MOST_FRAMES} frames; longer ones are drawn again. */
export const plans: fc.Arbitrary<Case> = anyCase.filter(
  ({ plan, marked }) => slowPace(plan, shotsOf(plan, marked)).frames <= MOST_FRAMES,
);

/** Kinds of axis of a rig that has all that matters, in any order. */
const rigAxes = fc.shuffledSubarray(
  ['boom', 'boom', 'slide', 'pan', 'pan', 'tilt', 'roll', 'turntable'] as const,
  { minLength: 1, maxLength: 6 },
);

/** Each with a name and figures of its own; travels that a head or an arm has. */
const rigLists = rigAxes
  .chain((kinds) =>
    fc.tuple(
      ...kinds.map((kind, i) =>
        fc.tuple(axis(`${kind} ${i}`, []), oneOf(20, 90, 185, 400)).map(([drawn, half]): Axis => {
          // A few in a unit in which they cannot: then they take no part.
          const odd = drawn.gearRatio === 1 && drawn.microsteps === 1;
          const inMm = kind === 'boom' ? drawn.unit === 'mm' : (kind === 'slide') !== odd;
          const unit = inMm ? 'mm' : 'deg';
          const travel = unit === 'mm' ? {} : { travelMin: -half, travelMax: half };
          return { ...drawn, kind, unit, source: null, ...travel };
        }),
      ),
    ),
  )
  .chain((axes) =>
    fc.record({
      axes: fc.constant(axes),
      tracks: each(axes, track).chain((tracks) => fc.subarray(tracks, { minLength: tracks.length - 1 })),
    }),
  );

/** Random valid plans of few frames on rigs of every kind, most of them with a subject that moves in the picture. */
export const rigPlans: fc.Arbitrary<Case> = fc
  .record({
    base: plans,
    lists: rigLists,
    rigged,
    exposures: fc.oneof(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 20, max: 120 })),
    intervalS: oneOf(0.5, 2, 10, 60),
    mode: oneOf<Plan['move']['mode']>('moveShootMove', 'moveShootMove', 'continuous', 'continuous', 'still'),
  })
  .map(({ base: { plan, marked }, lists: { axes, tracks }, rigged: given, exposures, intervalS, mode }) => ({
    marked,
    plan: structuredClone<Plan>(
      onRig(given, {
        ...plan,
        clip: { ...plan.clip, frameRate: '1', holdFrames: 1, handlesFrames: 0 },
        pacing: { workedOut: 'event', intervalS, eventS: 1, clipLengthS: exposures },
        trigger: { ...plan.trigger, stepS: 0.001, minS: 0.001, maxS: 3600, counts: 'startToStart' },
        rig: { ...plan.rig, axes },
        move: { ...plan.move, mode, tracks },
      }),
    ),
  }));

const skies = fc.record({
  kind: fc.constantFrom('none' as const, 'studio' as const, 'sky' as const),
  latitudeDeg: fc.oneof(decimals(-90, 90, 2), oneOf(-90, -66.5, 0, 66.5, 90)),
  longitudeDeg: fc.oneof(decimals(-180, 180, 2), oneOf(-180, 0, 180)),
  tiedTo: fc.constantFrom('clock' as const, 'sky' as const),
  event: fc.constantFrom(...START_EVENTS),
  offsetMin: fc.integer({ min: -1440, max: 1440 }),
  studioEv: decimals(-10, 24, 1),
  cloudStops: oneOf(0, 2, 8),
  metered: fc.boolean(),
  used: fc.boolean(),
  window: fc.boolean(),
  pane: fc.boolean(),
  view: fc.boolean(),
  stars: fc.boolean(),
  mainsHz: fc.constantFrom('none' as const, '50' as const, '60' as const),
  filterStops: oneOf(0, 3, 10),
  shutterAngleMaxDeg: fc.option(oneOf(0.1, 90, 180, 360), { nil: null }),
  hysteresisStops: oneOf(0, 0.1, 1),
  steps: fc.array(
    fc.record({
      setting: fc.constantFrom(...RAMP_SETTINGS),
      to: fc.oneof(oneOf(0.001, 0.5, 1, 2.8, 8, 30, 400, 6400), decimals(0.01, 60, 2)),
      step: fc.constantFrom('third' as const, 'half' as const, 'full' as const),
      by: fc.constantFrom('camera' as const, 'hand' as const),
    }),
    { maxLength: 4 },
  ),
});

/** Random valid plans under some sky, with light and ramp of every kind. */
export const litPlans: fc.Arbitrary<Plan> = fc.tuple(plans, skies).map(([{ plan }, sky]) => ({
  ...plan,
  place: { ...plan.place, latitudeDeg: sky.latitudeDeg, longitudeDeg: sky.longitudeDeg },
  start: { ...plan.start, tiedTo: sky.tiedTo, event: sky.event, offsetMin: sky.offsetMin },
  light: {
    ...plan.light,
    kind: sky.kind,
    studioEv: sky.studioEv,
    cloudStops: sky.cloudStops,
    metered: sky.metered,
  },
  window: {
    ...plan.window,
    used: sky.window,
    sunAltitudeMinDeg: -12,
    sunAltitudeMaxDeg: 20,
    moon: 'downOrDim',
  },
  pane: { ...plan.pane, used: sky.pane },
  lamps: { ...plan.lamps, mainsHz: sky.mainsHz },
  view: { ...plan.view, used: sky.view, stars: sky.stars },
  exposure: {
    ...plan.exposure,
    filterStops: sky.filterStops,
    shutterAngleMaxDeg: sky.shutterAngleMaxDeg,
    ramp: {
      ...plan.exposure.ramp,
      used: sky.used,
      hysteresisStops: sky.hysteresisStops,
      steps: sky.steps.map((step) => ({ ...step })),
    },
  },
}));

/** Freezes a value and everything in it. */
export function deepFreeze<T>(value: T): T {
  if (value !== null && typeof value === 'object' && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const member of Object.values(value)) deepFreeze(member);
  }
  return value;
}
