/**
 * A whole run worked out frame by frame as objects: slow, and as plain as can be. Steps are taken as given (they
 * are judged on their own); everything after them is worked out here again.
 */
import type { Axis, Card, Plan, Source } from '../../../src/engine/plan/schema.ts';
import { type Shot, shotsOf } from './exposure.ts';
import { toDouble } from './fraction.ts';
import { type SlowPace, slowPace } from './pacing.ts';

export interface SlowFrame {
  elapsedS: number;
  intervalS: number;
  exposureS: number;
  holdS: number;
  cameraS: number;
  moveS: number;
  settleS: number;
  rigS: number;
  spareS: number;
  periodS: number;
  axisMoveS: number[];
  /** Watt-hours drawn from each source over the frame's period. */
  drawnWh: number[];
}

export interface SlowRun {
  pace: SlowPace;
  shots: Shot[];
  frames: SlowFrame[];
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Seconds of one move from rest to rest: by its peak speed. */
export function slowMoveS(distance: number, axis: Axis): number {
  if (distance === 0) return 0;
  const peak = Math.min(axis.maxSpeed, Math.sqrt(distance * axis.maxAccel));
  const onRamps = (peak * peak) / axis.maxAccel;
  return (2 * peak) / axis.maxAccel + (distance - onRamps) / peak;
}

function axisMoveS(plan: Plan, axis: Axis, distance: number, intervalS: number): number {
  if (distance === 0 || plan.move.mode === 'still') return 0;
  if (plan.move.mode === 'continuous') return intervalS;
  return plan.move.moveS ?? slowMoveS(distance, axis);
}

/** Joules of a source over one frame: phase after phase, load after load. */
function joules(plan: Plan, source: Source, frame: SlowFrame, shots: readonly Shot[]): number {
  const exposingS = sum(shots.map((shot) => shot.openS));
  const writingS = sum(shots.map((shot) => shot.darkS + shot.writeS));
  let total = 0;
  for (const load of plan.power.loads) {
    if (load.source !== source.name) continue;
    const drawn =
      load.alwaysOnW * frame.periodS +
      load.exposingW * exposingS +
      load.writingW * writingS +
      load.idleW * (frame.periodS - exposingS - writingS) +
      load.movingW * frame.moveS +
      load.holdingW * (frame.periodS - frame.moveS);
    total += drawn / load.efficiencyShare;
  }
  plan.rig.axes.forEach((axis, i) => {
    if (axis.source !== source.name) return;
    const movingS = frame.axisMoveS[i] ?? 0;
    total += axis.moveW * movingS + axis.holdW * (frame.periodS - movingS);
  });
  return total;
}

/**
 * @param marked - whether the plan's shutter time is a mark of a dial
 * @param stepsOf - whole steps of each axis at each frame
 */
export function slowRun(
  plan: Plan,
  marked: boolean,
  stepsOf: readonly ArrayLike<number>[],
  stepsPerUnit: readonly number[],
): SlowRun {
  const shots = shotsOf(plan, marked);
  const pace = slowPace(plan, shots);
  const intervalS = toDouble(pace.interval);
  const cameraS = sum(shots.map((shot) => shot.lagS + shot.openS + shot.darkS + shot.writeS));
  const lastShot = shots.at(-1) as Shot;
  const holdS = cameraS - lastShot.darkS - lastShot.writeS;
  const frames: SlowFrame[] = [];
  for (let k = 0; k < pace.frames; k += 1) {
    const last = k === pace.frames - 1;
    const moves = plan.rig.axes.map((axis, i) => {
      const [here, next] = [stepsOf[i]?.[k] ?? 0, stepsOf[i]?.[last ? k : k + 1] ?? 0];
      return axisMoveS(plan, axis, Math.abs(next - here) / (stepsPerUnit[i] ?? 1), intervalS);
    });
    const inTurn = plan.move.order === 'inTurn' && plan.move.mode === 'moveShootMove';
    const moveS = inTurn ? sum(moves) : Math.max(0, ...moves);
    const settleS = plan.move.mode === 'moveShootMove' && moveS > 0 ? plan.move.settleS : 0;
    const rigS = plan.move.mode === 'moveShootMove' ? holdS + moveS + settleS : 0;
    const longest = Math.max(cameraS, rigS);
    const frame: SlowFrame = {
      elapsedS: k * intervalS,
      intervalS,
      exposureS: sum(shots.map((shot) => shot.openS)),
      holdS,
      cameraS,
      moveS,
      settleS,
      rigS,
      spareS: intervalS - plan.cycle.guardS - longest,
      periodS: last ? longest : Math.max(intervalS, longest),
      axisMoveS: moves,
      drawnWh: [],
    };
    frame.drawnWh = plan.power.sources.map((source) => joules(plan, source, frame, shots) / 3600);
    frames.push(frame);
  }
  return { pace, shots, frames };
}

/** Watt-hours of one full pack at the plan's temperature: straight lines between the points of its curve. */
export function packWh(source: Source, temperatureC: number): number {
  const rated = source.energyWh ?? (source.voltageV * source.capacityMah) / 1000;
  const points = [...source.capacityCurve].sort((a, b) => a.temperatureC - b.temperatureC);
  const colder = points.filter((point) => point.temperatureC < temperatureC).at(-1);
  const warmer = points.find((point) => point.temperatureC >= temperatureC);
  if (!colder || !warmer) return rated * ((colder ?? warmer)?.share ?? Number.NaN);
  const weight = (temperatureC - colder.temperatureC) / (warmer.temperatureC - colder.temperatureC);
  return rated * (colder.share * (1 - weight) + warmer.share * weight);
}

/** Bytes of one frame with its whole bracket, each exposure a whole number of bytes. */
export function frameBytes(plan: Plan): number {
  const { camera } = plan;
  const bits = camera.imageWidthPx * camera.imageHeightPx * camera.bitsPerPixel;
  const exposure = Math.round(camera.frameBytes ?? Math.max(1, (bits / 8) * camera.compression));
  return exposure * plan.exposure.bracketCount;
}

/** Bytes of a card that may be filled. */
export const usableBytes = (card: Card): number => card.cardBytes - card.cardBytes * card.reserveShare;
