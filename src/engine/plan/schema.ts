/**
 * The plan file, version 1: one table of every field with its unit, range, default and a sentence.
 *
 * Quantities carry their unit in the name. An axis moves in millimetres or degrees: its `unit` stands beside
 * its figures, which are all in that unit, in that unit a second, or in that unit a second squared.
 */
import * as z from 'zod/mini';
import {
  choice,
  count,
  fieldRegistry,
  flag,
  formattedText,
  optionalQuantity,
  quantity,
  text,
} from './fields.ts';

/** The word that marks a plan file. */
export const PLAN_FORMAT = 'escapement-plan';

/** The version this program writes. */
export const PLAN_VERSION = 1;

/** Longest run that is worked out. A million frames at 25 fps is more than eleven hours of clip. */
export const MAX_FRAMES = 1_000_000;

/** Longest run that is worked out, in seconds: ten years of 365 days. */
export const MAX_RUN_S = 3650 * 86_400;

const section = <T extends z.core.$ZodLooseShape>(shape: T) => z.prefault(z.strictObject(shape), {} as never);

const name = (byDefault: string) =>
  text({ title: 'Name', description: 'What you call it.', shortest: 1, longest: 40 }, byDefault);

const share = (title: string, description: string, byDefault: number, maximum = 1) =>
  quantity({ title, description, unit: 'share', minimum: 0, maximum, step: 0.05 }, byDefault);

const watts = (title: string, description: string, byDefault = 0) =>
  quantity({ title, description, unit: 'W', minimum: 0, maximum: 1000, step: 0.1 }, byDefault);

const sourceName = z._default(
  z.nullable(z.string().check(z.minLength(1), z.maxLength(40))).register(fieldRegistry, {
    title: 'Fed by',
    description: 'Name of the source that feeds it; none if its draw does not matter.',
  }),
  null,
);

const clip = section({
  frameRate: formattedText(
    {
      title: 'Frame rate',
      unit: 'fps',
      description: 'Frames a second of the clip, as an exact ratio: 25, 24000/1001.',
      pattern: /^[1-9]\d{0,5}(\/[1-9]\d{0,4})?$/,
      form: 'a whole number or a ratio of two, such as 25 or 24000/1001',
    },
    '25',
  ),
  handlesFrames: count(
    {
      title: 'Handles',
      unit: 'frames',
      description: 'Extra frames at the head, and as many at the tail, for the editor.',
      minimum: 0,
      maximum: 10_000,
    },
    0,
  ),
  holdFrames: count(
    {
      title: 'Each exposure is held for',
      unit: 'frames',
      description: 'On ones is 1, on twos is 2: frames of the clip that one exposure covers.',
      minimum: 1,
      maximum: 24,
    },
    1,
  ),
  widthPx: count({ title: 'Clip width', unit: 'px', minimum: 16, maximum: 32_768 }, 3840),
  heightPx: count({ title: 'Clip height', unit: 'px', minimum: 16, maximum: 32_768 }, 2160),
});

const pacing = section({
  workedOut: choice(
    {
      title: 'Work out',
      description: 'Which of event, interval and clip follows from the other two.',
    },
    ['event', 'interval', 'clip'],
    'interval',
  ),
  eventS: quantity(
    {
      title: 'Event',
      unit: 's',
      description: 'Real time to photograph, from the first shutter opening to the last.',
      minimum: 0.01,
      maximum: 31_622_400,
      step: 60,
    },
    1800,
  ),
  intervalS: quantity(
    {
      title: 'Interval',
      unit: 's',
      description: 'From one shutter opening to the next.',
      minimum: 0.01,
      maximum: 2_678_400,
      step: 1,
    },
    7,
  ),
  clipLengthS: quantity(
    {
      title: 'Clip',
      unit: 's',
      description: 'Finished screen time, without handles.',
      minimum: 0.01,
      maximum: 86_400,
      step: 1,
    },
    10,
  ),
});

const start = section({
  date: formattedText(
    {
      title: 'Date',
      description: 'Local date of the first frame.',
      pattern: /^\d{4}-\d{2}-\d{2}$/,
      form: 'a date such as 2026-08-08',
    },
    '2026-06-21',
  ),
  time: formattedText(
    {
      title: 'First frame at',
      description: 'Local clock at the first shutter opening.',
      pattern: /^([01]\d|2[0-3]):[0-5]\d(:[0-5]\d)?$/,
      form: 'a 24-hour clock time such as 20:31 or 20:31:10',
    },
    '12:00:00',
  ),
  whenRepeated: choice(
    {
      title: 'When the clocks go back',
      description: 'Which of the two is meant, if the start falls in the hour that comes twice.',
    },
    ['first', 'second'],
    'first',
  ),
});

const place = section({
  name: text({ title: 'Place', description: 'Where you will stand.', longest: 80 }, ''),
  zone: text(
    {
      title: 'Time zone',
      description: 'IANA name, such as Europe/Lisbon.',
      shortest: 1,
      longest: 60,
    },
    'Etc/UTC',
  ),
  utcOffsetMin: optionalQuantity({
    title: 'Offset from UTC',
    unit: 'min',
    description: 'Only where the zone data of this machine is out of date: replaces the zone’s offset.',
    minimum: -1080,
    maximum: 1080,
    step: 15,
  }),
  latitudeDeg: optionalQuantity({
    title: 'Latitude',
    unit: '°',
    description: 'North is positive.',
    minimum: -90,
    maximum: 90,
    step: 0.1,
  }),
  longitudeDeg: optionalQuantity({
    title: 'Longitude',
    unit: '°',
    description: 'East is positive.',
    minimum: -180,
    maximum: 180,
    step: 0.1,
  }),
});

const camera = section({
  name: name('Camera'),
  shutterLagS: quantity(
    {
      title: 'Shutter lag',
      unit: 's',
      description: 'From the trigger to the shutter opening.',
      minimum: 0,
      maximum: 10,
      step: 0.01,
    },
    0.1,
  ),
  writeS: quantity(
    {
      title: 'Write',
      unit: 's',
      description: 'Camera busy after the shutter closes, until it can take the next frame.',
      minimum: 0,
      maximum: 600,
      step: 0.1,
    },
    0.8,
  ),
  exactStops: flag(
    {
      title: 'Exposes exact stops',
      description: 'Most cameras do: a shutter time marked 30 s then lasts 32 s, 15 s lasts 16 s.',
    },
    true,
  ),
  shutterCorrection: quantity(
    {
      title: 'Measured shutter correction',
      unit: '×',
      description: 'Measured shutter time divided by the exact one. 1 if you never measured.',
      minimum: 0.5,
      maximum: 2,
      step: 0.01,
    },
    1,
  ),
  noiseReduction: flag(
    {
      title: 'Long-exposure noise reduction',
      description: 'The camera takes a dark frame, as long as the exposure, after each long one.',
    },
    false,
  ),
  noiseReductionFromS: quantity(
    {
      title: 'Noise reduction from',
      unit: 's',
      description: 'Shutter times from this one on get a dark frame.',
      minimum: 0,
      maximum: 3600,
      step: 0.1,
    },
    1,
  ),
  imageWidthPx: count({ title: 'Image width', unit: 'px', minimum: 16, maximum: 32_768 }, 6000),
  imageHeightPx: count({ title: 'Image height', unit: 'px', minimum: 16, maximum: 32_768 }, 4000),
  bitsPerPixel: quantity(
    {
      title: 'Bits a pixel',
      unit: 'bit',
      description: 'Before compression. Raw is often 12 or 14.',
      minimum: 1,
      maximum: 96,
      step: 1,
    },
    14,
  ),
  compression: quantity(
    {
      title: 'Compressed to',
      unit: 'share',
      description: 'File size divided by the uncompressed size: 1 for uncompressed raw.',
      minimum: 0.005,
      maximum: 2,
      step: 0.05,
    },
    1,
  ),
  frameBytes: optionalQuantity({
    title: 'Measured frame size',
    unit: 'bytes',
    description: 'Size of a test frame. If not given, worked out from pixels, bits and compression.',
    minimum: 1000,
    maximum: 10_000_000_000,
    step: 1_000_000,
  }),
  bufferBytes: quantity(
    {
      title: 'Buffer',
      unit: 'bytes',
      description: 'What the camera holds before the card has taken it. 0 if it has none.',
      minimum: 0,
      maximum: 1_000_000_000_000,
      step: 100_000_000,
    },
    500_000_000,
  ),
});

const trigger = section({
  name: name('Trigger'),
  stepS: quantity(
    {
      title: 'Settable in steps of',
      unit: 's',
      description: 'Smallest change of the dial.',
      minimum: 0.001,
      maximum: 3600,
      step: 0.5,
    },
    1,
  ),
  minS: quantity({ title: 'Shortest setting', unit: 's', minimum: 0.001, maximum: 3600, step: 0.5 }, 1),
  maxS: quantity(
    { title: 'Longest setting', unit: 's', minimum: 0.001, maximum: 2_678_400, step: 60 },
    86_400,
  ),
  counts: choice(
    {
      title: 'Counts',
      description: 'From one shutter opening to the next, or from one shutter closing to the next opening.',
    },
    ['startToStart', 'endToStart'],
    'startToStart',
  ),
});

const exposure = section({
  shutterS: quantity(
    {
      title: 'Shutter',
      unit: 's',
      description: 'As marked on the camera: 1/60, 0.5, 30.',
      minimum: 0.00001,
      maximum: 7200,
    },
    1 / 60,
  ),
  apertureF: quantity({ title: 'Aperture', unit: 'f/', minimum: 0.5, maximum: 128 }, 8),
  iso: quantity({ title: 'ISO', minimum: 1, maximum: 10_000_000 }, 100),
  timedBy: choice(
    {
      title: 'Shutter time is kept by',
      description: 'The camera’s own dial, or the trigger holding the shutter open for just that long.',
    },
    ['camera', 'trigger'],
    'camera',
  ),
  bracketCount: count(
    {
      title: 'Exposures a frame',
      description: 'More than one makes a bracket around the shutter time.',
      minimum: 1,
      maximum: 15,
    },
    1,
  ),
  bracketStops: quantity(
    {
      title: 'Bracket spacing',
      unit: 'stops',
      minimum: 0.1,
      maximum: 4,
      step: 0.5,
    },
    1,
  ),
});

const cycle = section({
  guardS: quantity(
    {
      title: 'Guard',
      unit: 's',
      description: 'Time to leave free in every interval.',
      minimum: 0,
      maximum: 3600,
      step: 0.1,
    },
    0.5,
  ),
});

/** Kinds of motorised degree of freedom. */
export const AXIS_KINDS = ['boom', 'slide', 'pan', 'tilt', 'roll', 'turntable', 'focus'] as const;

const reach = 1_000_000;

const axis = z.strictObject({
  name: name('Axis'),
  kind: choice({ title: 'Kind' }, AXIS_KINDS, 'slide'),
  unit: choice(
    { title: 'Moves in', description: 'The unit of all figures of this axis.' },
    ['mm', 'deg'],
    'mm',
  ),
  fullStepsPerTurn: count(
    { title: 'Full steps a turn', description: 'A 1.8° motor has 200.', minimum: 1, maximum: 100_000 },
    200,
  ),
  microsteps: count({ title: 'Microsteps a full step', minimum: 1, maximum: 1024 }, 16),
  gearRatio: quantity(
    {
      title: 'Gear ratio',
      unit: ':1',
      description: 'Turns of the motor for one turn of the output.',
      minimum: 0.001,
      maximum: 100_000,
    },
    1,
  ),
  unitsPerTurn: quantity(
    {
      title: 'Travel an output turn',
      unit: 'axis',
      description: 'Millimetres or degrees the axis moves for one turn of the output.',
      minimum: 0.0001,
      maximum: 100_000,
    },
    40,
  ),
  travelMin: quantity({ title: 'Travel from', unit: 'axis', minimum: -reach, maximum: reach }, 0),
  travelMax: quantity({ title: 'Travel to', unit: 'axis', minimum: -reach, maximum: reach }, 1000),
  maxSpeed: quantity(
    { title: 'Top speed', unit: 'axis/s', description: 'Per second.', minimum: 0.0001, maximum: 100_000 },
    20,
  ),
  maxAccel: quantity(
    {
      title: 'Acceleration',
      unit: 'axis/s²',
      description: 'Per second squared.',
      minimum: 0.0001,
      maximum: 1_000_000,
    },
    40,
  ),
  backlash: quantity(
    {
      title: 'Backlash',
      unit: 'axis',
      description: 'Lost motion after a reversal.',
      minimum: 0,
      maximum: 1000,
    },
    0,
  ),
  holdW: watts('Draw holding', 'Motor current on while it stands still.', 1.5),
  moveW: watts('Draw moving', 'While the motor turns.', 6),
  source: sourceName,
});

const unitShare = (title: string) => z.number().check(z.gte(0), z.lte(1)).register(fieldRegistry, { title });

const ease = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('linear') }),
  z.strictObject({ kind: z.literal('smooth') }),
  z.strictObject({ kind: z.literal('smoother') }),
  z.strictObject({
    kind: z.literal('cubicBezier'),
    x1: unitShare('First handle, time'),
    y1: z.number().check(z.gte(-10), z.lte(10)).register(fieldRegistry, { title: 'First handle, travel' }),
    x2: unitShare('Second handle, time'),
    y2: z.number().check(z.gte(-10), z.lte(10)).register(fieldRegistry, { title: 'Second handle, travel' }),
  }),
  z.strictObject({
    kind: z.literal('ramped'),
    headShare: unitShare('Share of the time to speed up'),
    tailShare: unitShare('Share of the time to slow down'),
  }),
]);

const keyframe = z.strictObject({
  share: unitShare('At share of the run'),
  position: z.number().check(z.gte(-reach), z.lte(reach)).register(fieldRegistry, {
    title: 'Position',
    unit: 'axis',
  }),
  /** How the axis goes on from here to the next keyframe. */
  ease: z._default(ease, () => ({ kind: 'smooth' as const })),
});

const track = z.strictObject({
  axis: z.string().check(z.minLength(1), z.maxLength(40)).register(fieldRegistry, { title: 'Axis' }),
  keyframes: z.array(keyframe).check(z.minLength(1), z.maxLength(1000)),
  thereAndBack: flag({ title: 'There and back', description: 'The second half mirrors the first.' }, false),
});

const move = section({
  mode: choice(
    {
      title: 'The rig',
      description: 'Does not move, moves only between exposures, or moves all the time.',
    },
    ['still', 'moveShootMove', 'continuous'],
    'still',
  ),
  order: choice(
    { title: 'Axes move', description: 'All at once, or one after another.' },
    ['together', 'inTurn'],
    'together',
  ),
  moveS: optionalQuantity({
    title: 'Time to move',
    unit: 's',
    description: 'A fixed time for every move. If not given, as fast as the motors’ figures allow.',
    minimum: 0.01,
    maximum: 3600,
    step: 0.5,
  }),
  settleS: quantity(
    {
      title: 'Settle after moving',
      unit: 's',
      description: 'For the rig to stop ringing.',
      minimum: 0,
      maximum: 600,
      step: 0.5,
    },
    1,
  ),
  tracks: z._default(z.array(track).check(z.maxLength(12)), () => []),
});

const curvePoint = z.strictObject({
  temperatureC: quantity({ title: 'Temperature', unit: '°C', minimum: -60, maximum: 90 }, 25),
  share: share('Capacity left', 'Of the rated capacity.', 1, 1.2),
});

/**
 * Made afresh for each plan, so that no two plans share one. Common practice, no source: enter the curve of your
 * own cells' data sheet instead.
 */
const defaultCurve = () => [
  { temperatureC: -20, share: 0.5 },
  { temperatureC: 0, share: 0.8 },
  { temperatureC: 25, share: 1 },
];

const source = z.strictObject({
  name: name('Pack'),
  kind: choice({ title: 'Kind' }, ['battery', 'mains'], 'battery'),
  energyWh: optionalQuantity({
    title: 'Energy each',
    unit: 'Wh',
    description: 'As printed on the pack. If not given, worked out from volts and mAh.',
    minimum: 0.01,
    maximum: 100_000,
    step: 1,
  }),
  voltageV: quantity({ title: 'Nominal voltage', unit: 'V', minimum: 0.1, maximum: 1000, step: 0.1 }, 7.2),
  capacityMah: quantity(
    { title: 'Capacity each', unit: 'mAh', minimum: 1, maximum: 10_000_000, step: 100 },
    2000,
  ),
  count: count({ title: 'How many you bring', minimum: 1, maximum: 1000 }, 1),
  reserveShare: share('Reserve', 'Share of the pack that you do not want to use.', 0.15, 0.95),
  swapS: quantity(
    {
      title: 'Time to swap',
      unit: 's',
      description: 'Hands on, until the rig is ready again.',
      minimum: 0,
      maximum: 86_400,
      step: 5,
    },
    45,
  ),
  capacityCurve: z._default(z.array(curvePoint).check(z.minLength(1), z.maxLength(20)), defaultCurve),
});

const load = z.strictObject({
  name: name('Load'),
  source: sourceName,
  efficiencyShare: quantity(
    {
      title: 'Efficiency of the feed',
      unit: 'share',
      description: 'Of the converter between source and load; 1 if it is fed directly.',
      minimum: 0.05,
      maximum: 1,
      step: 0.05,
    },
    1,
  ),
  idleW: watts('Idle', 'Camera neither exposing nor writing.'),
  exposingW: watts('Exposing', 'Shutter open.'),
  writingW: watts('Writing', 'Busy after the shutter closes.'),
  holdingW: watts('Rig holding', 'Rig stands still.'),
  movingW: watts('Rig moving', 'At least one axis moves.'),
  alwaysOnW: watts('Always on', 'All the time, on top of the others.'),
});

const power = section({
  temperatureC: quantity({ title: 'Temperature', unit: '°C', minimum: -60, maximum: 60, step: 1 }, 20),
  sources: z._default(z.array(source).check(z.maxLength(16)), () => [
    {
      name: 'Camera pack',
      kind: 'battery' as const,
      energyWh: null,
      voltageV: 7.2,
      capacityMah: 2000,
      count: 2,
      reserveShare: 0.15,
      swapS: 45,
      capacityCurve: defaultCurve(),
    },
  ]),
  loads: z._default(z.array(load).check(z.maxLength(32)), () => [
    {
      name: 'Camera',
      source: 'Camera pack',
      efficiencyShare: 1,
      idleW: 2,
      exposingW: 4,
      writingW: 4,
      holdingW: 0,
      movingW: 0,
      alwaysOnW: 0,
    },
  ]),
});

const card = z.strictObject({
  name: name('Card'),
  cardBytes: quantity(
    {
      title: 'Card size',
      unit: 'bytes',
      description: 'Decimal: a card marked 64 GB has 64 000 000 000.',
      minimum: 1_000_000,
      maximum: 1_000_000_000_000_000,
      step: 1_000_000_000,
    },
    64_000_000_000,
  ),
  reserveShare: share('Reserve', 'Share that the format takes or that you leave free.', 0.05, 0.95),
  writeBytesPerS: quantity(
    {
      title: 'Sustained write',
      unit: 'bytes/s',
      description: 'Decimal: video speed class V30 is at least 30 000 000.',
      minimum: 1000,
      maximum: 100_000_000_000,
      step: 1_000_000,
    },
    30_000_000,
  ),
});

const storage = section({
  cards: z._default(z.array(card).check(z.minLength(1), z.maxLength(64)), () => [
    { name: 'Card A', cardBytes: 64_000_000_000, reserveShare: 0.05, writeBytesPerS: 30_000_000 },
  ]),
  cardChangeS: quantity(
    { title: 'Time to change a card', unit: 's', minimum: 0, maximum: 86_400, step: 5 },
    30,
  ),
  copies: count(
    {
      title: 'Copies',
      description: 'How many copies you keep in all, backups included.',
      minimum: 1,
      maximum: 20,
    },
    2,
  ),
});

/** The whole plan file. */
export const planSchema = z.strictObject({
  format: z._default(z.literal(PLAN_FORMAT), PLAN_FORMAT),
  version: z._default(z.literal(PLAN_VERSION), PLAN_VERSION),
  title: text({ title: 'Title', longest: 120 }, 'New plan'),
  notes: text({ title: 'Notes', longest: 20_000 }, ''),
  technique: choice({ title: 'Technique' }, ['timeLapse', 'stopMotion'], 'timeLapse'),
  clip,
  pacing,
  start,
  place,
  camera,
  trigger,
  exposure,
  cycle,
  rig: section({ axes: z._default(z.array(axis).check(z.maxLength(12)), () => []) }),
  move,
  power,
  storage,
});

/** A plan with every field filled in. The only state there is; everything else is derived from it. */
export type Plan = z.infer<typeof planSchema>;
/** One motorised axis of the rig. */
export type Axis = Plan['rig']['axes'][number];
/** The move of one axis over the run. */
export type Track = Plan['move']['tracks'][number];
/** One point of a track. */
export type Keyframe = Track['keyframes'][number];
/** How an axis goes from one keyframe to the next. */
export type Ease = Keyframe['ease'];
/** One kind of battery pack, or the mains. */
export type Source = Plan['power']['sources'][number];
/** Something that draws power. */
export type Load = Plan['power']['loads'][number];
/** One memory card. */
export type Card = Plan['storage']['cards'][number];

/** Schemas of the list members, for 'add one more' with every default filled in. */
export const memberSchemas = { axis, track, keyframe, source, load, card } as const;
