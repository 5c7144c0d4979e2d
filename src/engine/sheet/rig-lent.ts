/** The rig over a shot, as an earlier sheet has it. */
import type { Plan } from '../plan/schema.ts';
import type { Exposures } from './exposures.ts';
import { sameColumn } from './reuse.ts';
import type { RigWork, ShotPart } from './rig.ts';
import { tracksOf } from './shots.ts';
import type { SheetShot } from './types.ts';

/** Whether a shot lies where the one that it is taken from did. */
export const inPlace = ({ placed }: ShotPart, lender: ShotPart | null | undefined): boolean =>
  placed.exposures === 0 || lender?.placed.firstExposure === placed.firstExposure;

/** A shot of before, itself or that of its place, that has the same tracks over the same exposures. */
export function lenderOf(
  plan: Plan,
  { shot, placed }: ShotPart,
  index: number,
  firstFrame: Int32Array,
  before: { plan: Plan; exposures: Exposures },
): ShotPart | null {
  const { parts, columns } = before.exposures;
  const lender = parts.find((part) => part.shot === shot) ?? parts[index];
  if (lender?.placed.frames !== placed.frames) return null;
  if (tracksOf(plan, shot) !== tracksOf(before.plan, lender.shot)) return null;
  const own = (starts: Int32Array, { firstExposure, exposures }: SheetShot) =>
    starts.subarray(firstExposure - 1, firstExposure - 1 + exposures);
  return sameColumn(own(firstFrame, placed), own(columns.firstFrame, lender.placed)) ? lender : null;
}

/** Takes the exposures of a shot over. */
export function copyShot({ placed }: ShotPart, lender: ShotPart, from: RigWork, to: RigWork): void {
  const start = lender.placed.firstExposure - 1;
  const copy = <Column extends Int32Array | Float64Array>(column: Column, into: Column) =>
    into.set(column.subarray(start, start + placed.exposures), placed.firstExposure - 1);
  to.axes.forEach(({ steps }, a) => {
    copy(from.axes[a]?.steps as Int32Array, steps);
    copy(from.axisMoveS[a] as Float64Array, to.axisMoveS[a] as Float64Array);
  });
  copy(from.moveS, to.moveS);
  copy(from.settleS, to.settleS);
}
