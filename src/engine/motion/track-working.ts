/** What a run makes of an axis: its largest and smallest moves, where it stalls and where it turns back. */
import { aims } from '../path/aim.ts';
import { countWhere, frameFound, whereRemark } from '../working/found.ts';
import {
  DEFINITION,
  type Draft,
  ofFrame,
  sameAs,
  term,
  type Worked,
  type Workings,
} from '../working/make.ts';
import type { Term } from '../working/types.ts';
import { runClock } from './keyframes.ts';
import { isAimed } from './motion.ts';
import { goingOn } from './tracks.ts';
import type { AxisOf } from './working.ts';

type Holds = (k: number) => boolean;

/** Whether an axis goes by the aim, not by a track. */
export const goesByAim = ({ plan }: Worked, { axis }: AxisOf): boolean => aims(plan) && isAimed(plan, axis);

/** Steps from a frame to the next, counted from 0; their sign is the direction. */
const stepsAfter = (steps: Int32Array, k: number): number =>
  (steps[k + 1] ?? (steps[k] as number)) - (steps[k] as number);

/** Microsteps of the first move of a size. @param which - `largest`, `smallest` */
function sizeOf({ axis, columns: { steps } }: AxisOf, which: string, size: number): Draft {
  const k = steps.findIndex((_, at) => Math.abs(stepsAfter(steps, at)) === size);
  const moveSteps = stepsAfter(steps, k);
  return {
    ...sameAs(
      `${axis.name}: ${which} move in microsteps`,
      'microsteps to the next frame',
      moveSteps,
      'steps',
      ofFrame(k, `axes.${axis.name}.moveSteps`),
    ),
    value: size,
    expression: 'abs(found)',
    frame: k + 1,
    remarks: [`The ${which} of all moves of the run, those of no step left out; the first of several.`],
  };
}

/** Microsteps for one of the axis's unit. */
export const stepsPerUnitTerm = ({ axis, columns }: AxisOf): Term =>
  term(
    'stepsPerUnit',
    `microsteps a ${axis.unit}`,
    columns.stepsPerUnit,
    `steps/${axis.unit}`,
    `axes.${axis.name}.stepsPerUnit`,
  );

/** A move in the axis's unit. @param steps - of the move */
export function sizeInUnits({ axis, columns }: AxisOf, which: string, steps: number): Draft {
  const named = (what: string) => `axes.${axis.name}.${what}`;
  const words = `microsteps of the ${which} move`;
  return {
    title: `${axis.name}: ${which} move`,
    unit: axis.unit,
    expression: 'moveSteps / stepsPerUnit',
    terms: [
      term('moveSteps', words, steps, 'steps', steps > 0 ? named(`${which}MoveSteps`) : null),
      stepsPerUnitTerm({ axis, columns }),
    ],
    source: DEFINITION,
  };
}

/** Whether a frame, counted from 0, is one that the axis was to move before. */
function wantsToMove(of: Worked, own: AxisOf): Holds {
  const { plan, made } = of;
  const { steps } = own.columns;
  if (goesByAim(of, own)) {
    const first = steps.findIndex((step, k) => k > 0 && step !== steps[k - 1]);
    const last = steps.findLastIndex((step, k) => k > 0 && step !== steps[k - 1]);
    return (k) => k >= first && k <= last && (made.columns.moveS[k - 1] as number) > 0;
  }
  const track = plan.move.tracks.find(({ axis }) => axis === own.axis.name);
  if (!track) return () => false;
  const spans = goingOn(track, runClock(made.columns.intervalS));
  const within = (k: number) => spans.some(({ begin, end }) => k >= begin && k < end);
  return track.thereAndBack ? (k) => within(k) || within(steps.length - k) : within;
}

function repeats(of: Worked, own: AxisOf): Draft {
  const { axis, columns } = own;
  const { steps } = columns;
  const wants = wantsToMove(of, own);
  const moved: Holds = (k) => wants(k) && steps[k] !== steps[k - 1];
  const byAim = goesByAim(of, own);
  return {
    title: `${axis.name}: frames that repeat a position`,
    value: columns.repeats,
    unit: 'frames',
    expression: 'goingOnFrames - movedFrames',
    terms: [
      term(
        'goingOnFrames',
        byAim
          ? 'frames that the rig moves to, from its first move to its last'
          : 'frames that its track goes on to',
        countWhere(steps.length, wants),
        'frames',
      ),
      term(
        'movedFrames',
        'those of them that it makes a whole step to',
        countWhere(steps.length, moved),
        'frames',
      ),
    ],
    ...(columns.firstRepeat !== null && { frame: columns.firstRepeat }),
    remarks: [
      'A frame repeats a position where its way from the frame before rounds to no whole microstep.',
      whereRemark(steps.length, (k) => wants(k) && !moved(k)),
    ],
    source: DEFINITION,
  };
}

/** Direction of the move that leads to each frame if it turns the axis back: 1 up, -1 down; 0 otherwise. */
function turnsOf(steps: Int32Array): Int8Array {
  const turns = new Int8Array(steps.length);
  let facing = 0;
  for (let k = 1; k < steps.length; k += 1) {
    const direction = Math.sign(stepsAfter(steps, k - 1));
    if (direction === 0) continue;
    if (facing !== 0 && direction !== facing) turns[k] = direction;
    facing = direction;
  }
  return turns;
}

function reversals({ axis, columns }: AxisOf): Draft {
  const turns = turnsOf(columns.steps);
  const to = (direction: number) => turns.filter((turn) => turn === direction).length;
  return {
    title: `${axis.name}: turns back`,
    value: columns.reversals,
    unit: '',
    expression: 'turnsDown + turnsUp',
    terms: [
      term('turnsDown', 'moves down its scale after one up', to(-1), ''),
      term('turnsUp', 'moves up its scale after one down', to(1), ''),
    ],
    ...(columns.firstReversal !== null && { frame: columns.firstReversal }),
    remarks: [
      'Each move against the one before it; frames without a move do not count.',
      whereRemark(turns.length, (k) => turns[k] !== 0),
    ],
    source: DEFINITION,
  };
}

/** Workings of where an axis stalls, also of one that gets nowhere; names without the axis. */
export function stallWorkings(of: Worked, own: AxisOf): Workings {
  const { repeats: count, firstRepeat, largestMoveSteps } = own.columns;
  if (count === 0 && largestMoveSteps === 0) return {};
  return {
    repeats: () => repeats(of, own),
    ...(firstRepeat !== null && {
      firstRepeat: () =>
        frameFound(
          `${own.axis.name}: first repeat`,
          'first frame that repeats the position before it',
          firstRepeat,
        ),
    }),
  };
}

/** Workings of what a run makes of an axis that moves; names without the axis. */
export function trackWorkings(own: AxisOf): Workings {
  const { name } = own.axis;
  const { largestMoveSteps, smallestMoveSteps, firstReversal } = own.columns;
  return {
    smallestMove: () => sizeInUnits(own, 'smallest', smallestMoveSteps),
    largestMoveSteps: () => sizeOf(own, 'largest', largestMoveSteps),
    smallestMoveSteps: () => sizeOf(own, 'smallest', smallestMoveSteps),
    reversals: () => reversals(own),
    ...(firstReversal !== null && {
      firstReversal: () =>
        frameFound(`${name}: first move back`, 'frame that the first move back leads to', firstReversal),
    }),
  };
}
