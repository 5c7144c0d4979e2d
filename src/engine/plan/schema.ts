/**
 * The plan file, version 1: one table of every field with its unit, range, default and a sentence.
 *
 * Quantities carry their unit in the name. An axis moves in millimetres or degrees: its `unit` stands beside
 * its figures, which are all in that unit, in that unit a second, or in that unit a second squared.
 */
import * as z from 'zod/mini';
import { PLAN_FORMAT, PLAN_VERSION, START_EVENTS, TECHNIQUES } from './constants.ts';
import { day, partProgram } from './day-fields.ts';
import {
  choice,
  count,
  flag,
  formattedText,
  name,
  optionalQuantity,
  quantity,
  section,
  share,
  sourceName,
  text,
  watts,
} from './fields.ts';
import { keyframe, move, ringing, subject, track } from './move-fields.ts';
import { axis, balance, rig } from './rig-fields.ts';
import { action, cue, detail, pass, rest, sheet, shot, tick } from './sheet-fields.ts';

export { PLAN_FORMAT, PLAN_VERSION } from './constants.ts';
export { AXIS_KINDS } from './rig-fields.ts';

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
  tiedTo: choice(
    {
      title: 'Start goes by',
      description: 'The clock, or the sun or moon: then it stays true when the date changes.',
    },
    ['clock', 'sky'],
    'clock',
  ),
  event: choice(
    { title: 'Event', description: 'What in the sky the start goes by.' },
    START_EVENTS,
    'sunset',
  ),
  offsetMin: quantity(
    {
      title: 'After the event by',
      unit: 'min',
      description: 'Minutes from the event to the first frame; negative is before it.',
      minimum: -1440,
      maximum: 1440,
      step: 5,
    },
    0,
  ),
});

const horizonPoint = z.strictObject({
  azimuthDeg: quantity(
    { title: 'Azimuth', unit: '°', description: 'From north, clockwise.', minimum: 0, maximum: 360 },
    0,
  ),
  altitudeDeg: quantity({ title: 'Altitude', unit: '°', minimum: -30, maximum: 90 }, 0),
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
  horizon: z._default(z.array(horizonPoint).check(z.maxLength(720)), () => []),
});

const altitude = (title: string, description: string, byDefault: number) =>
  quantity({ title, unit: '°', description, minimum: -18, maximum: 90, step: 0.5 }, byDefault);

/** Common practice, no source: the hours are the user's own, these are what many call them. */
const sky = section({
  goldenLowDeg: altitude('Golden hour from', 'Lowest altitude of the sun.', -4),
  goldenHighDeg: altitude('Golden hour to', 'Highest altitude of the sun.', 6),
  blueLowDeg: altitude('Blue hour from', 'Lowest altitude of the sun.', -6),
  blueHighDeg: altitude('Blue hour to', 'Highest altitude of the sun.', -4),
});

const clockOrNone = (title: string, description: string) =>
  formattedText(
    {
      title,
      description,
      pattern: /^$|^([01]\d|2[0-3]):[0-5]\d$/,
      form: 'nothing, or a 24-hour clock time such as 06:30',
    },
    '',
  );

const bearing = (title: string, description: string) =>
  optionalQuantity({ title, unit: '°', description, minimum: 0, maximum: 360, step: 1 });

const skyAltitude = (title: string, description: string) =>
  optionalQuantity({ title, unit: '°', description, minimum: -90, maximum: 90, step: 0.5 });

const window = section({
  used: flag(
    { title: 'Ask for a window', description: 'A stretch of time in which the sun does what is wanted.' },
    false,
  ),
  sunAltitudeMinDeg: skyAltitude('Sun at least at', 'Lowest altitude, geometric.'),
  sunAltitudeMaxDeg: skyAltitude('Sun at most at', 'Highest altitude, geometric.'),
  sunAzimuthFromDeg: bearing('Sun from azimuth', 'From north, clockwise; on to the other, clockwise.'),
  sunAzimuthToDeg: bearing('Sun to azimuth', 'From north, clockwise.'),
  sunAndHorizon: choice(
    { title: 'Own horizon', description: 'Whether the sun must stand over the horizon that you entered.' },
    ['any', 'above', 'below'],
    'any',
  ),
  sunOnPane: choice(
    { title: 'Pane', description: 'Whether the sun must come through the pane and reach the set.' },
    ['any', 'onSet', 'offSet'],
    'any',
  ),
  clockFrom: clockOrNone('Not before', 'Local clock.'),
  clockTo: clockOrNone('Not after', 'Local clock; earlier than the other means past midnight.'),
  moon: choice(
    { title: 'Moon', description: 'Down, or less lit than the share given, or anything.' },
    ['any', 'down', 'downOrDim'],
    'any',
  ),
  moonLitMaxShare: share('Moon lit at most', 'Lit share of its disk that still passes as dim.', 0.25),
});

const millimetres = (title: string, description: string, byDefault: number, minimum = 0) =>
  quantity({ title, unit: 'mm', description, minimum, maximum: 100_000, step: 50 }, byDefault);

const pane = section({
  used: flag({ title: 'Sun through a pane', description: 'A window or door of the room.' }, false),
  facingDeg: quantity(
    {
      title: 'Facing',
      unit: '°',
      description: 'Azimuth to which the pane looks out, from north, clockwise.',
      minimum: 0,
      maximum: 360,
      step: 5,
    },
    180,
  ),
  sillMm: millimetres('Sill', 'Lower edge of the glass above the floor.', 900),
  headMm: millimetres('Head', 'Upper edge of the glass above the floor.', 2100),
  widthMm: millimetres('Width', 'Of the glass.', 1200, 1),
  roomDepthMm: millimetres('Room depth', 'From the pane to the opposite wall.', 4000, 1),
  setHeightMm: millimetres('Set height', 'Top of the table, or 0 for the floor.', 750),
  setNearMm: millimetres('Set from', 'Nearest edge of the set, into the room from the pane.', 800),
  setFarMm: millimetres('Set to', 'Farthest edge of the set, into the room from the pane.', 1600),
  setLeftMm: millimetres(
    'Set left',
    'Along the wall from the middle of the pane, looking out.',
    -500,
    -100_000,
  ),
  setRightMm: millimetres(
    'Set right',
    'Along the wall from the middle of the pane, looking out.',
    500,
    -100_000,
  ),
});

/** Reading of a meter or of a test frame that came out right. */
const reading = {
  meteredDate: formattedText(
    {
      title: 'Read on',
      description: 'Local date of the reading.',
      pattern: /^\d{4}-\d{2}-\d{2}$/,
      form: 'a date such as 2026-08-08',
    },
    '2026-06-21',
  ),
  meteredTime: formattedText(
    {
      title: 'Read at',
      description: 'Local clock of the reading.',
      pattern: /^([01]\d|2[0-3]):[0-5]\d(:[0-5]\d)?$/,
      form: 'a 24-hour clock time such as 19:40',
    },
    '12:00',
  ),
  meteredShutterS: quantity({ title: 'Shutter read', unit: 's', minimum: 0.00001, maximum: 7200 }, 1 / 60),
  meteredApertureF: quantity({ title: 'Aperture read', unit: 'f/', minimum: 0.5, maximum: 128 }, 8),
  meteredIso: quantity({ title: 'ISO read', minimum: 1, maximum: 10_000_000 }, 100),
  meteredFilterStops: quantity(
    { title: 'Filter read through', unit: 'stops', minimum: 0, maximum: 30, step: 1 },
    0,
  ),
};

const light = section({
  kind: choice(
    {
      title: 'Light',
      description: 'Not planned, steady as of studio lamps, or from sun, twilight and moon.',
    },
    ['none', 'studio', 'sky'],
    'none',
  ),
  studioEv: quantity(
    {
      title: 'Studio light',
      unit: 'EV',
      description: 'Metered exposure value at ISO 100.',
      minimum: -10,
      maximum: 24,
      step: 0.5,
    },
    8,
  ),
  cloudStops: quantity(
    {
      title: 'Cloud takes',
      unit: 'stops',
      description:
        'Light lost against a clear sky, or against the sky of your reading. Common practice, no source: 1 thin, 2 grey, 3 heavy.',
      minimum: 0,
      maximum: 8,
      step: 0.5,
    },
    0,
  ),
  moonlight: flag({ title: 'Count the moon', description: 'Its light, where it is up.' }, true),
  sceneStops: quantity(
    {
      title: 'Scene is brighter by',
      unit: 'stops',
      description: 'Than a grey surface lying open to the sky. A metered reading replaces it.',
      minimum: -20,
      maximum: 20,
      step: 0.5,
    },
    0,
  ),
  incidentC: quantity(
    {
      title: 'Incident constant C',
      description: 'E = C · 2^EV / 100 lux. Meters are made with 250, some with 320 to 340.',
      minimum: 200,
      maximum: 400,
      step: 10,
    },
    250,
  ),
  metered: flag({ title: 'I have a reading', description: 'Fixes how bright the scene is.' }, false),
  ...reading,
});

const lamps = section({
  mainsHz: choice(
    {
      title: 'Mains',
      description: 'Frequency of the mains that feeds the lamps; none for daylight or cells.',
    },
    ['none', '50', '60'],
    'none',
  ),
  depthShare: share(
    'Ripple depth',
    'How far the lamp’s light swings about its mean: 1 goes down to dark.',
    0.3,
  ),
  limitShare: share('Ripple allowed', 'Change from frame to frame that you accept.', 0.01),
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
  focalLengthMm: quantity({ title: 'Focal length', unit: 'mm', minimum: 1, maximum: 5000, step: 1 }, 24),
  sensorWidthMm: quantity({ title: 'Sensor width', unit: 'mm', minimum: 1, maximum: 200, step: 0.1 }, 36),
  sensorHeightMm: quantity({ title: 'Sensor height', unit: 'mm', minimum: 1, maximum: 200, step: 0.1 }, 24),
});

const view = section({
  used: flag(
    {
      title: 'Watch for the sun in frame',
      description: 'Needs a place and where the lens looks.',
    },
    false,
  ),
  azimuthDeg: quantity(
    {
      title: 'Lens looks to',
      unit: '°',
      description: 'Azimuth of the lens axis with the pan at 0, from north, clockwise.',
      minimum: 0,
      maximum: 360,
      step: 5,
    },
    180,
  ),
  altitudeDeg: quantity(
    {
      title: 'Lens looks up by',
      unit: '°',
      description: 'Altitude of the lens axis with the tilt at 0.',
      minimum: -90,
      maximum: 90,
      step: 1,
    },
    0,
  ),
  stars: flag({ title: 'Stars must stay points', description: 'Says how far they trail.' }, false),
  starTrailMaxPx: quantity(
    {
      title: 'Trail allowed',
      unit: 'px',
      description: 'On the sensor. Common practice, no source: two or three pass for points.',
      minimum: 0.1,
      maximum: 1000,
      step: 0.5,
    },
    3,
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

/** Settings that a ramp can change. */
export const RAMP_SETTINGS = ['shutter', 'iso', 'aperture'] as const;

const rampStep = z.strictObject({
  setting: choice({ title: 'Change' }, RAMP_SETTINGS, 'shutter'),
  to: quantity(
    {
      title: 'To',
      description: 'Seconds, ISO or f-number, as marked: where this setting stops and the next goes on.',
      minimum: 0.00001,
      maximum: 10_000_000,
    },
    1,
  ),
  step: choice({ title: 'In steps of', unit: 'stop' }, ['third', 'half', 'full'], 'third'),
  by: choice(
    { title: 'Changed by', description: 'The camera by itself, or a hand during the spare time.' },
    ['camera', 'hand'],
    'camera',
  ),
});

const ramp = section({
  used: flag({ title: 'Follow the light', description: 'Settings change as the light does.' }, false),
  /** In the order in which they are changed as the light falls; backwards as it returns. */
  steps: z._default(z.array(rampStep).check(z.maxLength(12)), () => [
    { setting: 'shutter' as const, to: 1, step: 'third' as const, by: 'camera' as const },
    { setting: 'iso' as const, to: 800, step: 'third' as const, by: 'camera' as const },
  ]),
  nightStops: quantity(
    {
      title: 'Night stays darker by',
      unit: 'stops',
      description: 'A night that is exposed like day looks like day.',
      minimum: 0,
      maximum: 6,
      step: 0.5,
    },
    1,
  ),
  nightFromDeg: quantity(
    {
      title: 'From sun altitude',
      unit: '°',
      description: 'Where the night allowance begins.',
      minimum: -18,
      maximum: 30,
      step: 1,
    },
    0,
  ),
  nightFullDeg: quantity(
    {
      title: 'In full at',
      unit: '°',
      description: 'Where the whole allowance is reached.',
      minimum: -18,
      maximum: 30,
      step: 1,
    },
    -12,
  ),
  hysteresisStops: quantity(
    {
      title: 'Hysteresis',
      unit: 'stops',
      description: 'How far beyond half a step the light must go before anything changes.',
      minimum: 0,
      maximum: 2,
      step: 0.05,
    },
    0.1,
  ),
  toleranceStops: quantity(
    {
      title: 'Error allowed',
      unit: 'stops',
      description: 'Beyond the ends of the ramp: farther off, a frame counts as out of range.',
      minimum: 0.05,
      maximum: 6,
      step: 0.1,
    },
    0.5,
  ),
  changeS: quantity(
    {
      title: 'A change by hand takes',
      unit: 's',
      minimum: 0,
      maximum: 3600,
      step: 1,
    },
    8,
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
  filterStops: quantity(
    {
      title: 'ND filter',
      unit: 'stops',
      description: 'Density 0.3 is one stop. No eye protection, whatever its density.',
      minimum: 0,
      maximum: 30,
      step: 1,
    },
    0,
  ),
  shutterAngleMaxDeg: optionalQuantity({
    title: 'Shutter angle at most',
    unit: '°',
    description: '360 × exposure / interval: the ramp’s shutter goes no further. 180 is half the interval.',
    minimum: 0.1,
    maximum: 360,
    step: 10,
  }),
  ramp,
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
  technique: choice({ title: 'Technique' }, TECHNIQUES, 'timeLapse'),
  clip,
  pacing,
  start,
  place,
  sky,
  window,
  pane,
  light,
  lamps,
  camera,
  view,
  trigger,
  exposure,
  cycle,
  rig,
  move,
  subject,
  ringing,
  balance,
  sheet,
  power,
  storage,
  day,
  partProgram,
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

/** One point of the user's own horizon. */
export type HorizonPoint = Plan['place']['horizon'][number];
/** One stretch of a ramp: a setting and how far it is taken. */
export type RampStep = Plan['exposure']['ramp']['steps'][number];

/** One shot of a stop-motion production, and what it is made of. */
export type Shot = Plan['sheet']['shots'][number];
export type Action = Shot['actions'][number];
export type Cue = Shot['cues'][number];
/** One pass of every exposure that has it. */
export type Pass = Plan['sheet']['passes'][number];
/** An exposure that is in the camera. */
export type Tick = Plan['sheet']['ticks'][number];

/** Schemas of the list members, for 'add one more' with every default filled in. */
export const memberSchemas = {
  axis,
  track,
  keyframe,
  source,
  load,
  card,
  horizonPoint,
  rampStep,
  pass,
  rest,
  shot,
  action,
  detail,
  cue,
  tick,
} as const;
