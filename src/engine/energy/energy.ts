/**
 * Energy drawn from each source, frame by frame, and when its packs run out.
 *
 * A frame's period is its interval, or its longer lane if that overruns; after the last frame, the longer lane
 * alone. Over the period a load draws: always-on throughout; exposing while the shutter is open; writing while
 * the camera is busy after closing (dark frames included); idle for the rest (lag included); moving while the
 * rig moves; holding for the rest. An axis draws its moving power while it moves itself, its holding power for
 * the rest. A load's draw is divided by the efficiency of its feed. Source: the definitions of this project's
 * design; the watts are the user's own.
 */
import type { Plan, Source } from '../plan/schema.ts';
import type { AxisColumns, SourceColumns, SourceSummary } from '../schedule-types.ts';
import { flightRule, fullWh, ratedWh } from './battery.ts';

/** What the energy of a frame depends on: seconds, one entry a frame unless said otherwise. */
export interface Periods {
  periodS: Float64Array;
  exposureS: Float64Array;
  /** Dark frames and writing of a frame, seconds: the same for all frames. */
  busyS: number;
  moveS: Float64Array;
  axes: readonly AxisColumns[];
}

/** Watts of one source, by what they are drawn over. */
interface Draw {
  /** Over the whole period. */
  periodW: number;
  /** On top, while the shutter is open, while the camera is busy, while the rig moves, while each axis moves. */
  exposureW: number;
  busyW: number;
  moveW: number;
  axesW: number[];
}

function drawOf(plan: Plan, source: Source): Draw {
  const draw: Draw = { periodW: 0, exposureW: 0, busyW: 0, moveW: 0, axesW: [] };
  for (const load of plan.power.loads) {
    if (load.source !== source.name) continue;
    const { efficiencyShare: eta } = load;
    draw.periodW += (load.alwaysOnW + load.idleW + load.holdingW) / eta;
    draw.exposureW += (load.exposingW - load.idleW) / eta;
    draw.busyW += (load.writingW - load.idleW) / eta;
    draw.moveW += (load.movingW - load.holdingW) / eta;
  }
  draw.axesW = plan.rig.axes.map((axis) => {
    if (axis.source !== source.name) return 0;
    draw.periodW += axis.holdW;
    return axis.moveW - axis.holdW;
  });
  return draw;
}

/** Joules drawn over each frame's period, written into `joules`. */
function fillDraw(joules: Float64Array, draw: Draw, periods: Periods): void {
  const { periodS, exposureS, busyS, moveS } = periods;
  const { periodW, exposureW, busyW, moveW } = draw;
  const atOnce = busyW * busyS;
  for (let k = 0; k < joules.length; k += 1) {
    joules[k] =
      periodW * (periodS[k] as number) +
      exposureW * (exposureS[k] as number) +
      atOnce +
      moveW * (moveS[k] as number);
  }
  draw.axesW.forEach((watts, index) => {
    const own = periods.axes[index]?.moveS;
    if (watts === 0 || !own) return;
    for (let k = 0; k < joules.length; k += 1) joules[k] = (joules[k] as number) + watts * (own[k] as number);
  });
}

/** One source over the run: its column and its summary. */
export interface SourceRun {
  source: Source;
  columns: SourceColumns;
  summary: SourceSummary;
}

const JOULES_PER_WH = 3600;

/**
 * Runs one source down.
 *
 * A pack is swapped before the frame that would take it below its reserve. When none is left the last one goes
 * on to nothing, and the packs needed are counted on.
 */
function runSource(plan: Plan, source: Source, periods: Periods): SourceRun {
  const frames = periods.periodS.length;
  // The column first holds each frame's draw and is then rewritten to what is left: one array, not two.
  const leftWh = new Float64Array(frames);
  fillDraw(leftWh, drawOf(plan, source), periods);
  const full = fullWh(source, plan.power.temperatureC);
  const usableJ = full * (1 - source.reserveShare) * JOULES_PER_WH;
  const brought = source.kind === 'mains' ? Number.POSITIVE_INFINITY : source.count;
  const swapFrames: number[] = [];
  let shortAtFrame: number | null = null;
  let needed = 1;
  let sinceSwapJ = 0;
  let sinceLastPackJ = 0;
  let totalJ = 0;
  let totalS = 0;
  for (let k = 0; k < frames; k += 1) {
    const frameJ = leftWh[k] as number;
    if (sinceSwapJ + frameJ > usableJ && k > 0) {
      needed += 1;
      sinceSwapJ = 0;
      if (needed <= brought) {
        swapFrames.push(k + 1);
        sinceLastPackJ = 0;
      } else shortAtFrame ??= k + 1;
    }
    leftWh[k] = Math.max(0, full - sinceLastPackJ / JOULES_PER_WH);
    if (frameJ > usableJ) shortAtFrame ??= k + 1;
    sinceSwapJ += frameJ;
    sinceLastPackJ += frameJ;
    totalJ += frameJ;
    totalS += periods.periodS[k] as number;
  }
  const mains = source.kind === 'mains';
  return {
    source,
    columns: { name: source.name, leftWh },
    summary: {
      name: source.name,
      kind: source.kind,
      ratedWh: mains ? null : ratedWh(source),
      usableWh: mains ? null : usableJ / JOULES_PER_WH,
      drawnWh: totalJ / JOULES_PER_WH,
      meanW: totalS > 0 ? totalJ / totalS : 0,
      needed,
      brought: source.count,
      swapFrames,
      shortAtFrame,
      flight: flightRule(source),
    },
  };
}

/**
 * Runs all sources down over a run.
 * @returns one entry a source, in the plan's order
 */
export const energyOf = (plan: Plan, periods: Periods): SourceRun[] =>
  plan.power.sources.map((source) => runSource(plan, source, periods));
