/** Fields of the move: tracks and their keyframes, how moves are made, what is looked at, and how the rig rings. */
import * as z from 'zod/mini';
import { FARTHEST, MAX_FRAMES, MAX_KEYFRAMES } from './constants.ts';
import { choice, count, fieldRegistry, flag, optionalQuantity, quantity, section } from './fields.ts';
import { millimetres } from './rig-fields.ts';

const unitShare = (title: string) => z.number().check(z.gte(0), z.lte(1)).register(fieldRegistry, { title });

/** How an axis goes from one keyframe to the next. */
export const ease = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('hold') }),
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

/** One point of a track. */
export const keyframe = z.strictObject({
  at: choice(
    {
      title: 'Placed at',
      description: 'A share of the run, a frame, or a time after the first shutter opening.',
    },
    ['share', 'frame', 'time'],
    'share',
  ),
  share: z._default(unitShare('At share of the run'), 0),
  frame: count({ title: 'At frame', minimum: 1, maximum: MAX_FRAMES }, 1),
  timeS: quantity({ title: 'At time', unit: 's', minimum: 0, maximum: 315_360_000, step: 1 }, 0),
  position: z.number().check(z.gte(-FARTHEST), z.lte(FARTHEST)).register(fieldRegistry, {
    title: 'Position',
    unit: 'axis',
  }),
  /** How the axis goes on from here to the next keyframe. */
  ease: z._default(ease, () => ({ kind: 'smooth' as const })),
});

/** The move of one axis over the run. */
export const track = z.strictObject({
  axis: z.string().check(z.minLength(1), z.maxLength(40)).register(fieldRegistry, { title: 'Axis' }),
  keyframes: z.array(keyframe).check(z.minLength(1), z.maxLength(MAX_KEYFRAMES)),
  thereAndBack: flag({ title: 'There and back', description: 'The second half mirrors the first.' }, false),
});

/** How the rig moves. */
export const move = section({
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
  profile: choice(
    {
      title: 'Moves are',
      description: 'Of limited acceleration, or of limited jerk too: softer, and longer.',
    },
    ['trapezoidal', 'jerkLimited'],
    'trapezoidal',
  ),
  settleBy: choice(
    {
      title: 'Settle',
      description: 'A fixed time after every move, or until each move’s own ring has died down.',
    },
    ['time', 'ringing'],
    'time',
  ),
  quiet: flag(
    {
      title: 'Quiet moves',
      description:
        'Slows a move so that its start and its stop ring against each other, where that saves time.',
    },
    false,
  ),
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

/** What the camera looks at, and how fast it may go by. */
export const subject = section({
  used: flag({ title: 'There is a subject', description: 'A point to watch, or to keep framed.' }, false),
  rightMm: millimetres('To the right', 'Of the rig’s pivot.', 0),
  forwardMm: millimetres('Forward', 'Of the rig’s pivot.', 2000),
  heightMm: millimetres('Above the floor', 'Of the subject.', 1200),
  onTurntable: flag({ title: 'It stands on the turntable', description: 'And turns with it.' }, false),
  aimed: flag(
    {
      title: 'Keep it framed',
      description: 'Pan and tilt are worked out at every frame so that the lens stays on it.',
    },
    false,
  ),
  backgroundM: quantity(
    {
      title: 'Background',
      unit: 'm',
      description: 'Distance of what is far behind it.',
      minimum: 0.1,
      maximum: 1_000_000,
      step: 10,
    },
    100,
  ),
  blurMaxPx: quantity(
    {
      title: 'Blur allowed',
      unit: 'px',
      description: 'While the shutter is open and the rig moves. Common practice, no source: three pass.',
      minimum: 0.1,
      maximum: 10_000,
      step: 0.5,
    },
    3,
  ),
  crossingMinS: quantity(
    {
      title: 'To cross the frame takes at least',
      unit: 's',
      description: 'On screen, for a still thing. Common practice, no source: seven; less and it judders.',
      minimum: 0.1,
      maximum: 1000,
      step: 1,
    },
    7,
  ),
});

/** How the rig rings after a move. */
export const ringing = section({
  frequencyHz: quantity(
    {
      title: 'Rings at',
      unit: 'Hz',
      description: 'Natural frequency with the payload on.',
      minimum: 0.05,
      maximum: 1000,
      step: 0.1,
    },
    5,
  ),
  dampingRatio: quantity(
    {
      title: 'Damping ratio',
      unit: 'share',
      description: 'Of critical. Bare arms have 0.01 to 0.05: common practice, no source.',
      minimum: 0.0005,
      maximum: 0.9,
      step: 0.005,
    },
    0.02,
  ),
  tolerancePx: quantity(
    {
      title: 'Still enough at',
      unit: 'px',
      description: 'Shift of the image that no longer shows.',
      minimum: 0.01,
      maximum: 100,
      step: 0.1,
    },
    0.5,
  ),
  flexMm: millimetres('It bends over', 'Length from where it is held to the camera.', 1000, 10),
  measuredSettleS: optionalQuantity({
    title: 'Measured settle',
    unit: 's',
    description: 'From the end of a move until a test frame was sharp. If given, it counts for every move.',
    minimum: 0,
    maximum: 600,
    step: 0.1,
  }),
});
