/** Fields of the rig: its axes, where they stand, and what balances them. */

import * as z from 'zod/mini';
import { FARTHEST } from './constants.ts';
import {
  choice,
  count,
  flag,
  name,
  optionalQuantity,
  quantity,
  section,
  sourceName,
  watts,
} from './fields.ts';

/** Kinds of motorised degree of freedom. */
export const AXIS_KINDS = ['boom', 'slide', 'pan', 'tilt', 'roll', 'turntable', 'focus'] as const;

/** One motorised axis. */
export const axis = z.strictObject({
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
  travelMin: quantity({ title: 'Travel from', unit: 'axis', minimum: -FARTHEST, maximum: FARTHEST }, 0),
  travelMax: quantity({ title: 'Travel to', unit: 'axis', minimum: -FARTHEST, maximum: FARTHEST }, 1000),
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
  maxJerk: quantity(
    {
      title: 'Jerk',
      unit: 'axis/s³',
      description: 'Change of the acceleration, per second cubed: for moves of limited jerk.',
      minimum: 0.0001,
      maximum: 100_000_000,
    },
    400,
  ),
  arrive: choice(
    {
      title: 'Arrives',
      description:
        'From either side, or always going up or down its scale: a move the other way overruns and comes back.',
    },
    ['eitherWay', 'upwards', 'downwards'],
    'eitherWay',
  ),
  overrun: optionalQuantity({
    title: 'Overruns by',
    unit: 'axis',
    description: 'Before it comes back from the right side. If not given, twice the backlash.',
    minimum: 0,
    maximum: 1000,
  }),
  torqueNm: optionalQuantity({
    title: 'Holding torque',
    unit: 'N m',
    description: 'Of the motor alone, before its gearing.',
    minimum: 0.001,
    maximum: 1000,
    step: 0.01,
  }),
  driveEfficiencyShare: quantity(
    {
      title: 'Gearing passes on',
      unit: 'share',
      description: 'Share of the torque that its gearing leaves over.',
      minimum: 0.01,
      maximum: 1,
      step: 0.05,
    },
    0.8,
  ),
  word: choice(
    {
      title: 'Axis word',
      description: 'Letter of this axis in a part program (RS-274): X, Y, Z for lengths, A, B, C for angles.',
    },
    ['auto', 'X', 'Y', 'Z', 'A', 'B', 'C'],
    'auto',
  ),
  holdW: watts('Draw holding', 'Motor current on while it stands still.', 1.5),
  moveW: watts('Draw moving', 'While the motor turns.', 6),
  source: sourceName,
});

/** A length on the rig or the set. */
export const millimetres = (title: string, description: string, byDefault: number, minimum = -FARTHEST) =>
  quantity({ title, unit: 'mm', description, minimum, maximum: FARTHEST, step: 10 }, byDefault);

const degrees = (title: string, description: string, byDefault: number, minimum = -360, maximum = 360) =>
  quantity({ title, unit: '°', description, minimum, maximum, step: 5 }, byDefault);

const kilograms = (title: string, description: string, byDefault: number) =>
  quantity({ title, unit: 'kg', description, minimum: 0, maximum: 1000, step: 0.1 }, byDefault);

const arm = section({
  lengthMm: millimetres('Arm', 'From its pivot to the camera.', 1000, 10),
  planeTiltDeg: degrees('Arc leans by', '0: the arm swings upright. 90: it swings flat.', 0, 0, 90),
  zeroDeg: degrees(
    'Angle at zero',
    'Of the arm from level, its axis at 0. Below level is negative.',
    0,
    -180,
    180,
  ),
  keepsLevel: flag(
    {
      title: 'Head stays level',
      description: 'As on a four-bar arm. If not, the camera turns with the arm.',
    },
    true,
  ),
});

const slide = section({
  bearingDeg: degrees('Slide runs to', 'From the rig’s forward, clockwise: 90 is to the right.', 90),
  inclineDeg: degrees('Slide climbs by', '0 level, 90 straight up.', 0, -90, 90),
});

const turntable = section({
  rightMm: millimetres('Turntable, to the right', 'Of the rig’s pivot.', 0),
  forwardMm: millimetres('Turntable, forward', 'Of the rig’s pivot.', 1000),
});

/** The rig. Where something is, is measured from its pivot: right, forward, and up from the floor. */
export const rig = section({
  axes: z._default(z.array(axis).check(z.maxLength(12)), () => []),
  pivotHeightMm: millimetres(
    'Pivot above the floor',
    'Without an arm: the lens with all axes at 0.',
    1200,
    0,
  ),
  lensBearingDeg: degrees('Lens looks to', 'With pan at 0: from the rig’s forward, clockwise.', 0),
  lensTiltDeg: degrees('Lens looks up by', 'With tilt at 0.', 0, -90, 90),
  arm,
  slide,
  turntable,
});

/** What hangs on the arm and stands on the feet. */
export const balance = section({
  used: flag(
    { title: 'Balance the arm', description: 'Works out its counterweight and what the feet bear.' },
    false,
  ),
  workedOut: choice(
    {
      title: 'Work out',
      description: 'The counterweight’s place, its mass, or what the two typed leave unbalanced.',
    },
    ['place', 'mass', 'residual'],
    'place',
  ),
  payloadKg: kilograms('Payload', 'Camera, lens and head: what hangs at the camera’s end.', 1.5),
  armKg: kilograms('Arm by itself', 'Without payload and counterweight.', 1),
  armCentreMm: millimetres(
    'Its centre of mass',
    'From the pivot towards the camera; negative behind it.',
    200,
  ),
  counterweightKg: kilograms('Counterweight', 'All its plates together.', 5),
  counterweightMm: millimetres('Counterweight sits at', 'Behind the pivot.', 400, 0),
  counterweightMaxMm: millimetres('Rear arm', 'Farthest that the counterweight can sit.', 500, 1),
  ratedKg: optionalQuantity({
    title: 'Arm carries',
    unit: 'kg',
    description: 'Largest payload its maker allows, at the length beside. A longer arm carries less.',
    minimum: 0.01,
    maximum: 1000,
    step: 0.1,
  }),
  ratedMm: millimetres('At an arm of', 'Length that this payload is allowed at.', 1000, 10),
  baseKg: kilograms('Rest of the rig', 'What else stands on the support: base, motors, slide.', 1.5),
  ballastKg: kilograms('Weigh-down', 'Hung from the middle of the support.', 0),
  supportKg: kilograms('Support by itself', 'Tripod or stand.', 4),
  supportRatedKg: optionalQuantity({
    title: 'Support carries',
    unit: 'kg',
    description: 'What its maker allows on it.',
    minimum: 0.01,
    maximum: 10_000,
    step: 1,
  }),
  feetRadiusMm: millimetres('Feet at', 'From the middle of the support to each foot.', 500, 10),
  legs: count({ title: 'Legs', minimum: 3, maximum: 8 }, 3),
});
