/** The rig over a run: how it moves, where it takes the camera, what that does to the picture, and what it weighs. */
import { type BalanceRun, balanceOf } from './balance/balance.ts';
import { judgeBalance } from './balance/findings.ts';
import { isAimed, type Motion, motionOf } from './motion/motion.ts';
import { type LanesAsTheyAre, quietComparison } from './motion/quiet.ts';
import { type Aim, type AimSummary, aimer, aims } from './path/aim.ts';
import { judgePath } from './path/findings.ts';
import { type ImageMotion, imageMotion } from './path/image.ts';
import { type ImageSummary, imageSummaryOf } from './path/image-summary.ts';
import { type PathSummary, pathOf } from './path/path.ts';
import { Scene } from './path/scene.ts';
import type { Plan } from './plan/schema.ts';
import { judgeRinging } from './ringing/findings.ts';
import { type RingingSummary, ringingOf } from './ringing/summary.ts';
import type { Room } from './room.ts';
import type { Judge } from './run.ts';
import type { AxisColumns, Columns } from './schedule-types.ts';

/** Everything of a run that follows from the rig and its tracks, whenever the frames are shot. */
export interface RigMotion extends Motion {
  /** null unless the plan keeps its subject framed. */
  aim: Aim | null;
  /** null without a subject, or with nothing that moves it in the picture. */
  image: ImageMotion | null;
}

/** What a rig does over a run, in single figures; null for what the plan does not ask for. */
export interface RigRun {
  path: PathSummary | null;
  aim: AimSummary | null;
  image: ImageSummary | null;
  ringing: RingingSummary | null;
  balance: BalanceRun | null;
}

/**
 * Works out how the rig moves.
 * @param intervalS - seconds from each frame to the next, one entry a frame
 */
export function rigMotionOf(plan: Plan, intervalS: Float64Array, room: Room): RigMotion {
  let aim: Aim | null = null;
  let scene: Scene | undefined;
  const take = (axes: AxisColumns[]) => {
    scene = new Scene(plan, axes);
    aim = aimer(plan, axes, room, scene);
  };
  const motion = aims(plan)
    ? motionOf(withoutAimed(plan), intervalS, room, take)
    : motionOf(plan, intervalS, room);
  return { ...motion, aim, image: imageMotion(plan, motion.axes, room, motion.axes, scene) };
}

/** A plan without the tracks of pan and tilt: what an aim overwrites need not be worked out. */
function withoutAimed(plan: Plan): Plan {
  const aimed = plan.rig.axes.filter((axis) => isAimed(plan, axis)).map(({ name }) => name);
  const tracks = plan.move.tracks.filter(({ axis }) => !aimed.includes(axis));
  return { ...plan, move: { ...plan.move, tracks } };
}

/** Sums a run's rig up. */
export function rigRunOf(
  plan: Plan,
  motion: RigMotion,
  { exposureS, intervalS }: Columns,
  lanes: LanesAsTheyAre,
  frameRate: number,
): RigRun {
  const times = { exposureS, intervalS, frameRate };
  const quiet = quietComparison(plan, motion, lanes);
  return {
    path: pathOf(plan, motion.axes),
    aim: motion.aim?.summary ?? null,
    image: motion.image && imageSummaryOf(plan, motion.image, times),
    ringing: ringingOf(plan, motion, quiet),
    balance: balanceOf(plan, motion.axes),
  };
}

/** What path, ringing and balance say. */
export const judgeRig: Judge = (run) => {
  const said = [
    judgePath(run, run.rig),
    judgeRinging(run, run.rig.ringing),
    judgeBalance(run, run.rig.balance),
  ];
  return {
    findings: said.flatMap(({ findings }) => findings),
    margins: said.flatMap(({ margins }) => margins),
  };
};
