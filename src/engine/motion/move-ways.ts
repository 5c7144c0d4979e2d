/** Ways out by how the rig moves between its positions: how fast, how softly, one axis after another, and how it settles. */
import { seconds, withUnit } from '../findings/words.ts';
import { stepsOf, switchWay } from '../fixes/build.ts';
import type { Way } from '../fixes/types.ts';
import { defaultPlan } from '../plan/parse.ts';
import type { Plan } from '../plan/schema.ts';

const isBetween = ({ move }: Plan): boolean => move.mode === 'moveShootMove';

/** Whether somebody has put in how this rig rings: what stands there from the beginning says nothing of it. */
function ringingKnown({ ringing }: Plan): boolean {
  const { frequencyHz, dampingRatio } = defaultPlan().ringing;
  const touched = ringing.frequencyHz !== frequencyHz || ringing.dampingRatio !== dampingRatio;
  return touched || ringing.measuredSettleS !== null;
}

/** Each move settles until its own ring has died down, where it is known how the rig rings. */
export const settleByRinging = (plan: Plan): Way[] =>
  isBetween(plan) && ringingKnown(plan)
    ? switchWay(plan, [['move.settleBy', 'ringing']], {
        kind: 'settle-by-ringing',
        label: ({ ringing }) =>
          ringing.measuredSettleS === null
            ? `Settle until the ring is below ${withUnit(ringing.tolerancePx, 'px')}`
            : `Settle for the measured ${seconds(ringing.measuredSettleS)}`,
        needs: 'a test frame after the longest move',
      })
    : [];

/** Moves slowed so that their start and their stop ring against each other. */
export const quietMoves = (plan: Plan): Way[] =>
  isBetween(plan) && plan.move.settleBy === 'ringing' && plan.move.moveS === null
    ? switchWay(plan, [['move.quiet', true]], { kind: 'quiet-moves', label: () => 'Quiet moves' })
    : [];

/** Moves of limited acceleration only. */
export const notJerkLimited = (plan: Plan): Way[] =>
  isBetween(plan)
    ? switchWay(plan, [['move.profile', 'trapezoidal']], {
        kind: 'moves-trapezoidal',
        label: () => 'Moves without limited jerk',
        needs: 'a harder start and stop of every move',
      })
    : [];

/** All axes at once. */
export const axesTogether = (plan: Plan): Way[] =>
  isBetween(plan)
    ? switchWay(plan, [['move.order', 'together']], {
        kind: 'axes-together',
        label: () => 'Move all axes at once',
        needs: 'power for all motors at once',
      })
    : [];

/** No time of its own for the moves: as fast as the motors go. */
export const asFastAsMotors = (plan: Plan): Way[] =>
  isBetween(plan)
    ? switchWay(plan, [['move.moveS', null]], {
        kind: 'moves-by-motors',
        label: () => 'Move as the motors’ figures allow',
      })
    : [];

const tenths = (moveS: number): number => (moveS >= 10 ? 0.5 : 0.1);

/** A shorter or a longer time for every move, where it has one. @param wantedS - that should just suffice */
export function movesTaking(plan: Plan, side: 1 | -1, wantedS?: number): Way[] {
  const { moveS } = plan.move;
  if (!isBetween(plan) || moveS === null) return [];
  return stepsOf(plan, {
    kind: side === 1 ? 'moves-slower' : 'moves-faster',
    path: 'move.moveS',
    by: side * tenths(moveS),
    ...(wantedS !== undefined && Number.isFinite(wantedS) && { wanted: wantedS }),
    label: (takesS) => `Moves in ${seconds(takesS)}`,
  });
}

/** Still while the shutter is open, where the rig moves all the time. */
export const betweenExposures = (plan: Plan): Way[] =>
  plan.move.mode === 'continuous'
    ? switchWay(plan, [['move.mode', 'moveShootMove']], {
        kind: 'move-between-exposures',
        label: () => 'Move only between exposures',
      })
    : [];
