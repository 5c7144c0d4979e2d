/** Passes: which of them an exposure has, and what these take. */
import { type CameraLane, cameraLane } from '../cycle/cycle.ts';
import { openAtMarkS } from '../exposure/shutter.ts';
import type { Pass, Plan } from '../plan/schema.ts';

/** What the passes of an exposure take together. */
export interface PassSet {
  count: number;
  /** Hands on. */
  changeMin: number;
  /** The camera, for all of them: the whole lane, shutter open, busy after closing. Seconds. */
  cameraS: number;
  exposureS: number;
  busyS: number;
}

/** The camera lane of one pass: with its own shutter time, if it has one. */
export const passLane = (plan: Plan, pass: Pass): CameraLane =>
  cameraLane(plan, openAtMarkS(plan, pass.shutterS ?? plan.exposure.shutterS));

/** Every pass of the production. */
export const allPasses = ({ sheet }: Plan): number => 2 ** sheet.passes.length - 1;

/** Bits of passes by name; all of them if no names are given. Names that there are not do not count. */
export function passBits(plan: Plan, names: readonly string[] | null): number {
  if (names === null) return allPasses(plan);
  return plan.sheet.passes.reduce((bits, { name }, p) => (names.includes(name) ? bits + 2 ** p : bits), 0);
}

/** Whether a set has a pass. */
export const hasPass = (bits: number, pass: number): boolean => ((bits >>> pass) & 1) === 1;

/** What each set of passes takes, worked out once. */
export function passSets(plan: Plan): (bits: number) => PassSet {
  const { passes } = plan.sheet;
  const lanes = passes.map((pass) => passLane(plan, pass));
  const known = new Map<number, PassSet>();
  const make = (bits: number): PassSet => {
    const set: PassSet = { count: 0, changeMin: 0, cameraS: 0, exposureS: 0, busyS: 0 };
    passes.forEach((pass, p) => {
      if (!hasPass(bits, p)) return;
      const lane = lanes[p] as CameraLane;
      set.count += 1;
      set.changeMin += pass.changeMin;
      set.cameraS += lane.cameraS;
      set.exposureS += lane.exposureS;
      set.busyS += lane.busyS;
    });
    known.set(bits, set);
    return set;
  };
  // As a rule one exposure has the passes of the one before.
  let last = { bits: 0, set: make(0) };
  return (bits) => {
    if (bits !== last.bits) last = { bits, set: known.get(bits) ?? make(bits) };
    return last.set;
  };
}
