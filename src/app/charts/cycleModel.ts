/** One cycle as bars on two lanes: what the camera and the rig do within one interval. */
import { lanesOf, type Stretch } from '../../engine/cycle/lanes.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Columns, Schedule } from '../../engine/schedule-types.ts';
import { atLeastText } from '../format/durations.ts';
import { laneS } from './cycleFrames.ts';
import { needs, rest, sentence } from './cycleWords.ts';

/** What fills a stretch of a lane. */
export type BarKind = Stretch['kind'];

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

/** Works out the cycle of a frame, counted from 0. */
export function cycleModel(schedule: Schedule, plan: Plan, index: number): CycleModel {
  const { columns } = schedule;
  const { guardS } = plan.cycle;
  const { camera, rig, free } = lanesOf(plan, schedule, index);
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
    camera: inSequence(camera, 0),
    rig: inSequence(rig, 0),
    rigWord: rigWord(columns, plan, index),
    longer,
    free: inSequence(free, lanesS),
    standing: lanesS > intervalS ? 'stop' : spareS < 0 ? 'warning' : 'fine',
    sentence: sentence(schedule, plan, index),
    needs: needs(schedule, index, lanesS + guardS),
    atLeast: `At least ${atLeastText(lanesS + guardS)}`,
    rest: rest(lanesS - intervalS, spareS, guardS),
  };
}

function rigWord(columns: Columns, plan: Plan, index: number): CycleModel['rigWord'] {
  if (plan.move.mode === 'moveShootMove') return null;
  return plan.move.mode === 'continuous' && Number(columns.moveS[index]) > 0
    ? 'Moving all the time'
    : 'Still';
}

/** One after the other. */
function inSequence(stretches: readonly Stretch[], fromS: number): Bar[] {
  let startS = fromS;
  return stretches.map(({ kind, label, durationS }) => {
    const bar = { kind, label, startS, durationS };
    startS += durationS;
    return bar;
  });
}
