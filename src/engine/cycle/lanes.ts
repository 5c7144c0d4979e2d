/** What happens in one interval, one after another: the stretches of its lanes, in words. */
import { openShutterS } from '../exposure/shutter.ts';
import type { Plan } from '../plan/schema.ts';
import type { Schedule } from '../schedule-types.ts';
import { ofFrame } from '../working/names.ts';
import { cameraPhases, type Phase } from './cycle.ts';

/** A stretch of a lane. */
export interface Stretch {
  kind: Phase['kind'] | 'hold' | 'move' | 'settle' | 'guard' | 'spare';
  label: string;
  durationS: number;
  /** Name of the figure that its duration is; null if it is none. */
  figure: string | null;
}

/** The lanes of one frame from the trigger on, and what is free after the longer of the two. */
export interface Lanes {
  camera: Stretch[];
  rig: Stretch[];
  free: Stretch[];
}

const CAMERA_LABELS: Readonly<Record<Phase['kind'], string>> = {
  lag: 'Shutter lag',
  exposure: 'Exposure',
  dark: 'Dark frame',
  write: 'Write',
};

type Run = Pick<Schedule, 'columns' | 'exposure'>;

/** The camera's stretches with the settings of that frame. */
function cameraStretches(plan: Plan, { exposure, columns }: Run, k: number): Stretch[] {
  const rung = columns.rung && exposure?.rungs[Number(columns.rung[k])];
  const one = plan.exposure.bracketCount === 1;
  return cameraPhases(plan, rung?.openS ?? openShutterS(plan)).map(({ kind, durationS }) => ({
    kind,
    label: CAMERA_LABELS[kind],
    durationS,
    figure: one && kind === 'exposure' ? ofFrame(k, 'openS') : null,
  }));
}

function rigStretches(plan: Plan, { columns }: Run, k: number): Stretch[] {
  if (plan.move.mode !== 'moveShootMove') return [];
  const stretch = (kind: Stretch['kind'], label: string, column: Float64Array, what: string): Stretch => ({
    kind,
    label,
    durationS: column[k] as number,
    figure: ofFrame(k, what),
  });
  const moves =
    plan.move.order === 'inTurn'
      ? columns.axes.map(({ name, moveS }) => stretch('move', name, moveS, `axes.${name}.moveS`))
      : [stretch('move', 'Move', columns.moveS, 'moveS')];
  return [
    stretch('hold', 'Hold still', columns.holdS, 'holdS'),
    ...moves,
    stretch('settle', 'Settle', columns.settleS, 'settleS'),
  ];
}

/** Guard and spare time; of none the guard is used, and nothing is spare. */
const freeStretches = ({ cycle }: Plan, { columns }: Run, k: number): Stretch[] => [
  { kind: 'guard', label: 'Guard', durationS: cycle.guardS, figure: null },
  { kind: 'spare', label: 'Spare', durationS: columns.spareS[k] as number, figure: ofFrame(k, 'spareS') },
];

/** The lanes of a frame, counted from 0; what takes no time does not stand in them. */
export function lanesOf(plan: Plan, run: Run, k: number): Lanes {
  const some = (stretches: Stretch[]) => stretches.filter(({ durationS }) => durationS > 0);
  return {
    camera: some(cameraStretches(plan, run, k)),
    rig: some(rigStretches(plan, run, k)),
    free: some(freeStretches(plan, run, k)),
  };
}
