/** One cycle as bars on two lanes: what the camera and the rig do within one interval. */
import { cameraPhases, type Phase } from '../../engine/cycle/cycle.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Columns, Schedule } from '../../engine/schedule-types.ts';
import { atLeastText } from '../format/durations.ts';
import { laneS } from './cycleFrames.ts';
import { needs, rest, sentence } from './cycleWords.ts';

/** What fills a stretch of a lane. */
export type BarKind = Phase['kind'] | 'hold' | 'move' | 'settle' | 'guard' | 'spare';

/** A stretch of a lane, seconds from the trigger. */
export interface Bar {
  kind: BarKind;
  label: string;
  startS: number;
  durationS: number;
}

/** The cycle of one frame. */
export interface CycleModel {
  /** Counted from 1. */
  frame: number;
  intervalS: number;
  guardS: number;
  /** Longer of the two lanes. */
  lanesS: number;
  /** Free beside the guard; negative: the guard is used, or worse. */
  spareS: number;
  camera: Bar[];
  rig: Bar[];
  /** What the whole rig lane says where it has no stretches of its own. */
  rigWord: 'Still' | 'Moving all the time' | null;
  /** The lane that the guard and the spare time follow. */
  longer: 'camera' | 'rig';
  /** Guard and spare time; the guard runs past the interval if it is used. */
  free: Bar[];
  standing: 'fine' | 'warning' | 'stop';
  /** Which frames have this cycle, and its main times. */
  sentence: string;
  /** What the interval has to be for this frame, or for all of them; and the same in fewer words. */
  needs: string;
  atLeast: string;
  /** What is left, or missing. */
  rest: string;
}

const CAMERA_LABELS: Readonly<Record<Phase['kind'], string>> = {
  lag: 'Shutter lag',
  exposure: 'Exposure',
  dark: 'Dark frame',
  write: 'Write',
};

/** Works out the cycle of a frame, counted from 0. */
export function cycleModel(schedule: Schedule, plan: Plan, index: number): CycleModel {
  const { columns } = schedule;
  const { guardS } = plan.cycle;
  const lanesS = laneS(columns, index);
  const intervalS = Number(columns.intervalS[index]);
  const spareS = Number(columns.spareS[index]);
  const longer = Number(columns.rigS[index]) >= Number(columns.cameraS[index]) ? 'rig' : 'camera';
  return {
    frame: index + 1,
    intervalS,
    guardS,
    lanesS,
    spareS,
    camera: framePhases(schedule, plan, index).map((phase) => ({
      ...phase,
      label: CAMERA_LABELS[phase.kind],
    })),
    rig: rigBars(columns, plan, index),
    rigWord: rigWord(columns, plan, index),
    longer,
    free: freeBars(lanesS, guardS, spareS),
    standing: lanesS > intervalS ? 'stop' : spareS < 0 ? 'warning' : 'fine',
    sentence: sentence(schedule, plan, index),
    needs: needs(schedule, index, lanesS + guardS),
    atLeast: `At least ${atLeastText(lanesS + guardS)}`,
    rest: rest(lanesS - intervalS, spareS, guardS),
  };
}

/** The camera's stretches with the settings of that frame. */
function framePhases({ exposure, columns }: Schedule, plan: Plan, index: number): Phase[] {
  const rung = columns.rung && exposure?.rungs[Number(columns.rung[index])];
  return rung ? cameraPhases(plan, rung.openS) : cameraPhases(plan);
}

function rigWord(columns: Columns, plan: Plan, index: number): CycleModel['rigWord'] {
  if (plan.move.mode === 'moveShootMove') return null;
  return plan.move.mode === 'continuous' && Number(columns.moveS[index]) > 0
    ? 'Moving all the time'
    : 'Still';
}

function rigBars(columns: Columns, plan: Plan, index: number): Bar[] {
  if (plan.move.mode !== 'moveShootMove') return [];
  const at = (column: Float64Array) => Number(column[index]);
  const moves =
    plan.move.order === 'inTurn'
      ? columns.axes.map((axis) => stretch('move', axis.name, at(axis.moveS)))
      : [stretch('move', 'Move', at(columns.moveS))];
  return inSequence([
    stretch('hold', 'Hold still', at(columns.holdS)),
    ...moves,
    stretch('settle', 'Settle', at(columns.settleS)),
  ]);
}

function freeBars(lanesS: number, guardS: number, spareS: number): Bar[] {
  const bars = inSequence([
    stretch('guard', 'Guard', guardS),
    stretch('spare', 'Spare', Math.max(0, spareS)),
  ]);
  return bars.map((bar) => ({ ...bar, startS: bar.startS + lanesS }));
}

const stretch = (kind: BarKind, label: string, durationS: number) => ({ kind, label, durationS });

/** One after the other from 0, those of no length left out. */
function inSequence(stretches: readonly Omit<Bar, 'startS'>[]): Bar[] {
  let startS = 0;
  return stretches.flatMap((one) => {
    const bar = { ...one, startS };
    startS += one.durationS;
    return one.durationS > 0 ? [bar] : [];
  });
}
