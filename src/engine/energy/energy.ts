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
import type { CameraLane } from '../cycle/cycle.ts';
import type { Plan, Source } from '../plan/schema.ts';
import type { Room } from '../room.ts';
import type { AxisColumns, SourceColumns, SourceSummary } from '../schedule-types.ts';
import { flightRule, fullWh, ratedWh } from './battery.ts';

/** What the energy of a frame depends on: seconds, one entry a frame unless said otherwise. */
export interface Periods {
  periodS: Float64Array;
  /** All periods together. */
  runS: number;
  /** Camera lane of each rung of the ramp, and the rung of each frame; without a ramp one lane and no rungs. */
  lanes: readonly CameraLane[];
  rung: Uint16Array | null;
  moveS: Float64Array;
  axes: readonly AxisColumns[];
}

/** Watts of one source, by what they are drawn over. */
export interface Draw {
  /** Over the whole period. */
  periodW: number;
  /** On top, while the shutter is open, while the camera is busy, while the rig moves, while each axis moves. */
  exposureW: number;
  busyW: number;
  moveW: number;
  axesW: number[];
}

export function drawOf(plan: Plan, source: Source): Draw {
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

const WH_PER_J = 1 / 3600;

/** Something that draws for part of a frame. */
interface Part {
  durationS: Float64Array;
  whPerS: number;
}

/** What a source gives in a frame: a share by its settings, and a share of each duration. */
interface Flow {
  /** By the rung of the frame; one entry without a ramp. */
  laneWh: Float64Array;
  rung: Uint16Array | null;
  /** The whole period. */
  period: Part;
  /** What else there is, as a rule the rig's move and that of an axis or two. */
  others: Part[];
}

function flowOf(draw: Draw, { lanes, rung, periodS, moveS, axes }: Periods): Flow {
  const part = (durationS: Float64Array, watts: number): Part => ({ durationS, whPerS: watts * WH_PER_J });
  const others = [part(moveS, draw.moveW), ...axes.map((axis, i) => part(axis.moveS, draw.axesW[i] ?? 0))];
  return {
    laneWh: Float64Array.from(
      lanes,
      ({ exposureS, busyS }) => (draw.exposureW * exposureS + draw.busyW * busyS) * WH_PER_J,
    ),
    rung,
    period: part(periodS, draw.periodW),
    others: others.filter(({ whPerS }) => whPerS !== 0),
  };
}

/** One source over the run: its column and its summary. */
export interface SourceRun {
  source: Source;
  columns: SourceColumns;
  summary: SourceSummary;
}

/** How a source's packs last. */
interface Drain {
  needed: number;
  swapFrames: number[];
  shortAtFrame: number | null;
  totalWh: number;
}

/** What each frame draws, watt-hours. A loop of its own, which the processor runs several frames at a time. */
function fillDrawn(drawnWh: Float64Array, { laneWh, rung, period, others }: Flow): void {
  const nothing = { durationS: period.durationS, whPerS: 0 };
  const [first = nothing, second = nothing, ...further] = others;
  if (rung === null) drawnWh.fill(laneWh[0] as number);
  else fillByRung(drawnWh, laneWh, rung);
  addThree(drawnWh, period, first, second);
  for (const part of further) addThree(drawnWh, part, nothing, nothing);
}

function fillByRung(drawnWh: Float64Array, laneWh: Float64Array, rung: Uint16Array): void {
  for (let k = 0; k < drawnWh.length; k += 1) drawnWh[k] = laneWh[rung[k] as number] as number;
}

function addThree(drawnWh: Float64Array, first: Part, second: Part, third: Part): void {
  const { durationS: a, whPerS: perA } = first;
  const { durationS: b, whPerS: perB } = second;
  const { durationS: c, whPerS: perC } = third;
  for (let k = 0; k < drawnWh.length; k += 1) {
    drawnWh[k] =
      (drawnWh[k] as number) + perA * (a[k] as number) + perB * (b[k] as number) + perC * (c[k] as number);
  }
}

/** What has been drawn since the last swap, since the last pack that there was, and in all; watt-hours. */
interface Drawn {
  sinceSwap: number;
  sinceLastPack: number;
  total: number;
}

/**
 * Rewrites frames from one index to before another, as long as the pack lasts.
 * @returns index of the first frame that would overdraw it
 */
function drainPack(
  column: Float64Array,
  from: number,
  to: number,
  fullWh: number,
  limitWh: number,
  drawn: Drawn,
): number {
  let { sinceSwap, sinceLastPack, total } = drawn;
  let k = from;
  for (; k < to; k += 1) {
    const wh = column[k] as number;
    if (sinceSwap + wh > limitWh) break;
    column[k] = Math.max(0, fullWh - sinceLastPack);
    sinceSwap += wh;
    sinceLastPack += wh;
    total += wh;
  }
  drawn.sinceSwap = sinceSwap;
  drawn.sinceLastPack = sinceLastPack;
  drawn.total = total;
  return k;
}

/**
 * Rewrites what each frame draws to what is left when its shutter opens, watt-hours: one array, not two.
 *
 * A pack is swapped before the frame that would take it below its reserve. When none is left the last one goes
 * on to nothing, and the packs needed are counted on.
 * @param usedWh - what the first pack has given before the first frame
 */
function drain(
  column: Float64Array,
  fullWh: number,
  usableWh: number,
  brought: number,
  usedWh: number,
): Drain {
  const result: Drain = { needed: 1, swapFrames: [], shortAtFrame: null, totalWh: 0 };
  // The sum of many frames carries a rounding: a pack that is used up to its last digit is not overdrawn.
  const limitWh = usableWh * (1 + 1e-9);
  const drawn: Drawn = { sinceSwap: usedWh, sinceLastPack: usedWh, total: 0 };
  const frames = column.length;
  let k = drainPack(column, 0, frames, fullWh, limitWh, drawn);
  while (k < frames) {
    const wh = column[k] as number;
    // A fresh pack that does not last for the first frame is not followed by another.
    const begun = k > 0 || usedWh > 0;
    if (begun) {
      result.needed += 1;
      drawn.sinceSwap = 0;
    }
    const fresh = begun && result.needed <= brought;
    if (fresh) {
      result.swapFrames.push(k + 1);
      drawn.sinceLastPack = 0;
    }
    // A pack that does not last for one frame is short at once, fresh or not.
    if (!fresh || wh > limitWh) result.shortAtFrame ??= k + 1;
    // It takes this frame whatever comes.
    drainPack(column, k, k + 1, fullWh, Number.POSITIVE_INFINITY, drawn);
    k = drainPack(column, k + 1, frames, fullWh, limitWh, drawn);
  }
  result.totalWh = drawn.total;
  return result;
}

function runSource(plan: Plan, source: Source, periods: Periods, room: Room, usedWh: number): SourceRun {
  const leftWh = room.f64(periods.periodS.length);
  fillDrawn(leftWh, flowOf(drawOf(plan, source), periods));
  const mains = source.kind === 'mains';
  const full = fullWh(source, plan.power.temperatureC);
  const usable = full * (1 - source.reserveShare);
  const brought = mains ? Number.POSITIVE_INFINITY : source.count;
  const { needed, swapFrames, shortAtFrame, totalWh } = drain(leftWh, full, usable, brought, usedWh);
  return {
    source,
    columns: { name: source.name, leftWh },
    summary: {
      name: source.name,
      kind: source.kind,
      ratedWh: mains ? null : ratedWh(source),
      usableWh: mains ? null : usable,
      drawnWh: totalWh,
      meanW: periods.runS > 0 ? totalWh / WH_PER_J / periods.runS : 0,
      needed,
      brought: source.count,
      swapFrames,
      shortAtFrame,
      flight: flightRule(source),
    },
  };
}

/** What the pack in use has given before the first frame, watt-hours, by the name of its source. */
export type UsedWh = ReadonlyMap<string, number>;

const FRESH: UsedWh = new Map();

/**
 * Runs all sources down over a run.
 * @param used - of packs that are not fresh
 * @returns one entry a source, in the plan's order
 */
export function energyOf(plan: Plan, periods: Periods, room: Room, used = FRESH): SourceRun[] {
  return plan.power.sources.map((source) =>
    runSource(plan, source, periods, room, used.get(source.name) ?? 0),
  );
}
