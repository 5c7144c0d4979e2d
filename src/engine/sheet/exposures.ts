/** The exposures of a production: shots and actions one after another, and their columns. */

import type { Action, Plan } from '../plan/schema.ts';
import { labeller } from './labels.ts';
import { type PassSet, passBits, passSets } from './passes.ts';
import { actionFrames, exposuresIn, fillHolds, holdsText, lastShortBy } from './production.ts';
import { sameExposures } from './reuse.ts';
import { type RigWork, rigOf, type ShotPart } from './rig.ts';
import { shotsOf } from './shots.ts';
import type { SheetAction, SheetColumns } from './types.ts';

/** Columns that there are once there is a clock. */
type OfTheClock = 'startMs' | 'doneMs' | 'tick';

/** The exposures, before there is a clock. */
export interface Exposures {
  frames: number;
  count: number;
  parts: ShotPart[];
  actions: SheetAction[];
  columns: Omit<SheetColumns, OfTheClock>;
  rig: RigWork;
  setOf: (bits: number) => PassSet;
}

/** An action of the plan and its place in the sheet. */
interface ActionPart {
  action: Action;
  placed: SheetAction;
}

function lay(plan: Plan): { parts: ShotPart[]; actions: ActionPart[]; frames: number; count: number } {
  const { frameRate } = plan.clip;
  const label = labeller(plan);
  const [parts, actions]: [ShotPart[], ActionPart[]] = [[], []];
  let [frames, count] = [0, 0];
  shotsOf(plan).forEach((shot, index) => {
    const [shotFrames, shotCount] = [frames, count];
    for (const action of shot.actions) {
      const long = actionFrames(action, frameRate);
      const exposures = exposuresIn(action.holds, long);
      actions.push({
        action,
        placed: {
          shot: index,
          text: action.text,
          firstExposure: count + 1,
          exposures,
          firstFrame: frames - shotFrames + 1,
          frames: long,
          lastShort: lastShortBy(action.holds, long) > 0,
          holdsText: holdsText(action.holds, long),
        },
      });
      frames += long;
      count += exposures;
    }
    parts.push({
      shot,
      placed: {
        name: shot.name,
        firstExposure: shotCount + 1,
        exposures: count - shotCount,
        firstFrame: shotFrames + 1,
        frames: frames - shotFrames,
        setUpMin: shot.setUpMin ?? plan.sheet.setUpMin,
        timecode: label(shotFrames + 1),
      },
    });
  });
  return { parts, actions, frames, count };
}

/**
 * Works the exposures of a production out.
 * @param before - those of the plan before an edit: what the edit leaves as it was is taken from them
 */
export function exposuresOf(
  plan: Plan,
  before: { plan: Plan; exposures: Exposures } | null = null,
): Exposures {
  if (before && sameExposures(plan, before.plan)) return before.exposures;
  const { parts, actions, frames, count } = lay(plan);
  const setOf = passSets(plan);
  const columns = {
    shot: new Uint16Array(count),
    action: new Uint32Array(count),
    firstFrame: new Int32Array(count),
    frames: new Int32Array(count),
    passes: new Uint32Array(count),
    minutes: new Float64Array(count),
    rigS: new Float64Array(count),
  };
  actions.forEach((part, index) => {
    fillAction(plan, columns, part, index, setOf);
  });
  const rig = rigOf(plan, parts, columns.firstFrame, before);
  const { rigS, passes } = columns;
  for (let i = 0; i < count; i += 1)
    rigS[i] = (rig.moveS[i] as number) + (rig.settleS[i] as number) + setOf(passes[i] as number).cameraS;
  return {
    frames,
    count,
    parts,
    actions: actions.map(({ placed }) => placed),
    columns: { ...columns, axes: rig.axes },
    rig,
    setOf,
  };
}

function fillAction(
  plan: Plan,
  columns: Omit<SheetColumns, OfTheClock | 'axes'>,
  { action, placed }: ActionPart,
  index: number,
  setOf: (bits: number) => PassSet,
): void {
  const from = placed.firstExposure - 1;
  const to = fillHolds(columns.frames, from, action.holds, placed.frames);
  columns.shot.fill(placed.shot, from, to);
  columns.action.fill(index, from, to);
  const animatingMin = action.minutesPerExposure ?? plan.sheet.minutesPerExposure;
  const bits = passBits(plan, action.passes);
  columns.passes.fill(bits, from, to);
  columns.minutes.fill(animatingMin + setOf(bits).changeMin, from, to);
  for (const { exposure, passes } of action.details) {
    if (passes === null || exposure > placed.exposures) continue;
    const own = passBits(plan, passes);
    columns.passes[from + exposure - 1] = own;
    columns.minutes[from + exposure - 1] = animatingMin + setOf(own).changeMin;
  }
  let frame = placed.firstFrame;
  for (let i = from; i < to; i += 1) {
    columns.firstFrame[i] = frame;
    frame += columns.frames[i] as number;
  }
}
