/**
 * Tip-over: how far the centre of mass of everything gets from the middle of the feet.
 *
 * A rig stands as long as its centre of mass is above the polygon of its feet. Which way that polygon is turned nobody
 * knows, so that the circle inside it counts: feet x cos(180 deg / legs), half the feet's radius for three legs. Level
 * ground, no wind, nobody leaning on it. The middle of the feet is under the pivot with the slide at its zero.
 */
import { type Gradual, leap } from '../leap.ts';
import { extremesOf } from '../path/path.ts';
import { lensAt, RAD, type Vector } from '../path/pose.ts';
import type { Plan } from '../plan/schema.ts';
import { type Carriers, carriedAt, farthestMove, positionsOf } from './carried.ts';

/** Moments of a run that are looked at at least, besides the extremes of its axes; then finer about the worst. */
const SAMPLES = 512;
/** Runs of so many frames are looked at frame by frame: a swing of a few frames must not escape. */
const EVERY_FRAME = 4096;

/** Masses by how they move. */
export interface Masses {
  /** Goes with the slide, if there is one: payload, arm and counterweight; kg. */
  ridingKg: number;
  /** Stays above the middle of the feet: rest of the rig, support, weigh-down; kg. */
  fixedKg: number;
  /** Sum of mass times place along the arm, towards the camera positive, kg mm; 0 without an arm. */
  alongArmKgMm: number;
}

/** How near the rig comes to tipping over. */
export interface TipOver {
  /** Radius of the circle inside the feet, mm. */
  safeMm: number;
  /** Farthest that the centre of mass gets from the middle of the feet, level, mm. */
  farthestMm: number;
  /** What is left of the radius there, mm; negative: it tips over. */
  marginMm: number;
  /** Frame nearest to that moment, counted from 1. */
  frame: number;
  /**
   * Lean of the ground, degrees, that tips the rig over at that moment; negative if it tips on the level. What does not
   * move is taken to sit as high as the pivot, so that the lean is rather too small than too large.
   */
  leanDeg: number;
  /** Everything, kg. */
  totalKg: number;
}

/**
 * Centre of mass of everything at a moment, mm, counted like the lens: it goes like a lens on a shorter arm, on a slide
 * that goes less far.
 * @param at - index of a frame, or between two
 */
export function centreAt(carriers: Carriers, masses: Masses, at: number): Vector {
  const { boom } = carriers.geometry;
  // Where there is no mass there is nothing off the middle.
  const totalKg = masses.ridingKg + masses.fixedKg || 1;
  const arm = boom && { ...boom, lengthMm: masses.alongArmKgMm / totalKg };
  const stance = carriedAt(carriers, at);
  const slide = (stance.slide * masses.ridingKg) / totalKg;
  return lensAt({ ...carriers.geometry, boom: arm }, { ...stance, slide });
}

/**
 * Level distance of the centre of mass from the middle of the feet at a moment, mm: that of {@link centreAt}, without
 * making anything on the way, since thousands of moments are asked for.
 */
export function distancesOf(carriers: Carriers, masses: Masses): Gradual {
  const { boom, slide } = carriers.geometry;
  const totalKg = masses.ridingKg + masses.fixedKg || 1;
  const [slidePosition, boomPosition] = [positionsOf(carriers.slide), positionsOf(carriers.boom)];
  const [slideX, slideY] = [(slide.x * masses.ridingKg) / totalKg, (slide.y * masses.ridingKg) / totalKg];
  const armMm = boom ? masses.alongArmKgMm / totalKg : 0;
  const riseMm = armMm * (boom?.rise.x ?? 0);
  const { zeroRad, radPerUnit } = boom ?? { zeroRad: 0, radPerUnit: 0 };
  const valueAt = (at: number) => {
    const along = slidePosition(at);
    const angle = zeroRad + boomPosition(at) * radPerUnit;
    const x = slideX * along + riseMm * Math.sin(angle);
    const y = slideY * along + armMm * Math.cos(angle);
    return Math.sqrt(x * x + y * y);
  };
  // The arm's end goes along its arc, or, seen from above, less far.
  const byArm = Math.abs(armMm) * radPerUnit * farthestMove(carriers.boom);
  return { valueAt, mostAFrame: byArm + Math.hypot(slideX, slideY) * farthestMove(carriers.slide) };
}

/**
 * The moment at which a value is largest, 0 to `last`: among samples that hit every frame of a run of up to
 * {@link EVERY_FRAME} and among the marks, then finer about the best of these. In longer runs a peak shorter than a
 * sample, and at no mark, escapes. Samples that cannot be as large as the largest of the marks are left out.
 */
function worstMoment(last: number, marks: readonly number[], { valueAt, mostAFrame }: Gradual): number {
  let [best, most] = [0, valueAt(0)];
  const within = (at: number) => Math.min(Math.max(0, at), last);
  const look = (at: number): number => {
    const moment = within(at);
    const value = valueAt(moment);
    if (value > most) [best, most] = [moment, value];
    return value;
  };
  const spacing =
    last >= SAMPLES ? Math.max(1, last / EVERY_FRAME) : 1 / Math.ceil(SAMPLES / Math.max(1, last));
  const marked = Math.max(0, ...marks.map((mark) => valueAt(within(mark))));
  for (let i = 1; i * spacing <= last; ) i += leap(marked - look(i * spacing), mostAFrame * spacing);
  for (const mark of marks) look(mark);
  for (let width = spacing; width > 1e-7; width /= 4) {
    const middle = best;
    for (let i = -4; i <= 4; i += 1) look(middle + (i * width) / 4);
  }
  return best;
}

/**
 * The moment at which the centre of mass is farthest from the middle of the feet: index of a frame, or between two.
 * Parameters as for {@link tipOverOf}.
 */
export function farthestMoment(carriers: Carriers, masses: Masses, suspects: readonly number[]): number {
  const columns = [carriers.boom, carriers.slide].flatMap((axis) => axis ?? []);
  const moving = columns.filter((column) => column.largestMoveSteps > 0);
  const last = Math.max(0, ...moving.map((column) => column.steps.length - 1));
  const marks = [...moving.flatMap(extremesOf), ...suspects];
  return worstMoment(last, marks, distancesOf(carriers, masses));
}

/**
 * Judges the standing of a rig over its whole move; from frame to frame its axes are taken to go straight.
 * @param suspects - indices of frames to look at besides its samples and the ends of its axes
 */
export function tipOverOf(
  plan: Plan,
  carriers: Carriers,
  masses: Masses,
  suspects: readonly number[],
): TipOver {
  const { feetRadiusMm, legs } = plan.balance;
  const worst = farthestMoment(carriers, masses, suspects);
  const farthestMm = distancesOf(carriers, masses).valueAt(worst);
  const safeMm = feetRadiusMm * Math.cos(Math.PI / legs);
  const marginMm = safeMm - farthestMm;
  const { z } = centreAt(carriers, masses, worst);
  return {
    safeMm,
    farthestMm,
    marginMm,
    frame: Math.round(worst) + 1,
    leanDeg: Math.atan2(marginMm, Math.max(0, z)) / RAD,
    totalKg: masses.ridingKg + masses.fixedKg,
  };
}
