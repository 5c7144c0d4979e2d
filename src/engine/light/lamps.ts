/**
 * Lamps on the mains: how much of their ripple an exposure leaves, and which shutter times cancel it.
 *
 * Light of a lamp on the mains swings at twice its frequency (IEEE 1789-2015, V2). An exposure averages over the time
 * it is open: of a swing of depth m about the mean, m x |sinc(2 f t)| is left, sinc x = sin(pi x)/(pi x), the Fourier
 * transform of a box (textbook result, from memory). That holds for the first harmonic; an exposure of whole swings
 * cancels the others too. Frames meet the swing anywhere, so that two of them can differ by twice what is left.
 */
import { openAtMarkS } from '../exposure/shutter.ts';
import { markSeconds, SHUTTER_THIRDS } from '../exposure/stops.ts';
import type { Plan } from '../plan/schema.ts';

/** |sinc|, the share of a swing that is left after averaging over `swings` of it. */
const sinc = (swings: number): number =>
  swings === 0 ? 1 : Math.abs(Math.sin(Math.PI * swings) / (Math.PI * swings));

/**
 * Ripple left in a frame.
 * @param depthShare - how far the light swings about its mean, 0 to 1
 * @param mainsHz - frequency of the mains; the light has twice that
 * @param openS - seconds the shutter is open, exact ones
 * @returns share of the mean by which a frame can be too bright or too dark
 */
export const rippleLeftShare = (depthShare: number, mainsHz: number, openS: number): number =>
  depthShare * sinc(2 * mainsHz * openS);

/** Largest change from frame to frame, as a share of the mean: one frame at the top of the swing, one at its bottom. */
export const worstChangeShare = (leftShare: number): number => 2 * leftShare;

/** The same in stops: log2 of the brightest by the darkest frame. */
export const worstChangeStops = (leftShare: number): number => Math.log2((1 + leftShare) / (1 - leftShare));

/** A shutter time under lamps. */
export interface LampShutter {
  mark: string;
  /** Seconds as marked. */
  shutterS: number;
  /** Seconds it is really open: a mark of 1/50 is 1/50.8. */
  openS: number;
  /** Ripple left, share of the mean. */
  leftShare: number;
  /** Largest change from frame to frame, share of the mean. */
  changeShare: number;
}

/** Frequency of the plan's mains, Hz; null if no lamp is on the mains. */
export const mainsHzOf = ({ lamps }: Plan): number | null =>
  lamps.mainsHz === 'none' ? null : Number(lamps.mainsHz);

/**
 * Every third-stop shutter time under the plan's lamps, longest first, with what it leaves of the ripple; none
 * without lamps. No mark is called free of flicker by its name: what is left goes by the time behind it.
 */
export function lampShutters(plan: Plan): LampShutter[] {
  const mainsHz = mainsHzOf(plan);
  if (mainsHz === null) return [];
  return SHUTTER_THIRDS.map(({ mark, exact }) => {
    const shutterS = markSeconds(mark);
    const openS = openAtMarkS(plan, shutterS, exact);
    const leftShare = rippleLeftShare(plan.lamps.depthShare, mainsHz, openS);
    return { mark, shutterS, openS, leftShare, changeShare: worstChangeShare(leftShare) };
  });
}

/** The shutter times that leave no more change than the plan allows (to the last place), longest first. */
export const flickerFreeShutters = (plan: Plan): LampShutter[] =>
  lampShutters(plan).filter(({ changeShare }) => changeShare <= plan.lamps.limitShare + 1e-9);

/** The shutter times on either side of a marked one that keep within what the plan allows: the longer one first. */
export function nearestFlickerFree(plan: Plan, markedS: number): LampShutter[] {
  const free = flickerFreeShutters(plan);
  const longer = free.findLast(({ shutterS }) => shutterS > markedS);
  const shorter = free.find(({ shutterS }) => shutterS < markedS);
  return [longer, shorter].filter((shutter) => shutter !== undefined);
}
