/**
 * A whole run worked out frame by frame as objects: slow, and as plain as can be. Steps are taken as given (they
 * are judged on their own); everything after them is worked out here again.
 */
import type { Card, Plan, Source } from '../../../src/engine/plan/schema.ts';
import { type Shot, shotsOf } from './exposure.ts';
import { toDouble } from './fraction.ts';
import { allTogether, axisMoves, motorWays, type SlowMove } from './moves.ts';
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
  /** Ring at the end of the move, px, and the size of what it was added up from. */
  ringPx: number;
  summedPx: number;
  /** The move can be made in two ways that end as soon. */
  tied: boolean;
  /** The rig lane with the other choice of quiet moves. */
  rigOtherwiseS: number;
  /** Watt-hours drawn from each source over the frame's period. */
  drawnWh: number[];
}

export interface SlowRun {
  pace: SlowPace;
  shots: Shot[];
  frames: SlowFrame[];
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

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

/** Seconds to each frame, and to the end of the last interval. */
export function elapsedOf({ frames }: SlowRun): number[] {
  const last = frames.at(-1) as SlowFrame;
  return [...frames.map((frame) => frame.elapsedS), last.elapsedS + last.intervalS];
}

/** Whether quiet moves can change how long any takes. */
export const quietMatters = ({ move, ringing }: Plan): boolean =>
  move.mode === 'moveShootMove' &&
  move.settleBy === 'ringing' &&
  move.moveS === null &&
  ringing.measuredSettleS === null;

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
  const ways = plan.rig.axes.map((axis, i) => motorWays(axis, stepsOf[i] ?? [], stepsPerUnit[i] ?? 1));
  const between = plan.move.mode === 'moveShootMove';
  const made = (quiet: boolean): SlowMove[][] =>
    between ? plan.rig.axes.map((axis, i) => axisMoves(plan, axis, ways[i] ?? [], quiet)) : [];
  const asPlanned = made(plan.move.quiet);
  const otherwise = quietMatters(plan) ? made(!plan.move.quiet) : asPlanned;
  const ofFrame = (moves: readonly SlowMove[][], k: number) => moves.map((list) => list[k] as SlowMove);
  const frames: SlowFrame[] = [];
  for (let k = 0; k < pace.frames; k += 1) {
    const last = k === pace.frames - 1;
    const goes = plan.move.mode === 'continuous';
    const rig = allTogether(plan, ofFrame(asPlanned, k));
    const other = otherwise === asPlanned ? rig : allTogether(plan, ofFrame(otherwise, k));
    const moves = between
      ? ofFrame(asPlanned, k).map((move) => move.durationS)
      : ways.map((list) => (goes && list[k]?.length ? intervalS : 0));
    const moveS = between ? rig.durationS : Math.max(0, ...moves);
    const settleS = between ? rig.settleS : 0;
    const rigS = between ? holdS + moveS + settleS : 0;
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
      ringPx: rig.ringPx,
      summedPx: rig.summedPx,
      tied: rig.tied || other.tied,
      rigOtherwiseS: holdS + other.durationS + other.settleS,
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
