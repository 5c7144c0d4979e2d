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
import type { Periods } from '../cycle/columns.ts';
import type { CameraLane } from '../cycle/cycle.ts';
import type { Coded } from '../motion/blocks.ts';
import type { Plan, Source } from '../plan/schema.ts';
import type { Room } from '../room.ts';
import type { AxisColumns, SourceColumns, SourceSummary } from '../schedule-types.ts';
import { flightRule, fullWh, ratedWh } from './battery.ts';
import { drain, type Flow } from './drain.ts';

/** What the energy of a frame depends on. */
export interface Uses {
  periods: Periods;
  /** Camera lane of each rung of the ramp; without a ramp one. */
  lanes: readonly CameraLane[];
  /** Seconds that the rig and its axes move, one entry a frame. */
  moveS: Float64Array;
  axes: readonly AxisColumns[];
  /** Those that go by a code of the frame; null if none do. */
  coded: Coded | null;
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

/** Seconds that something draws for, by a code or in each frame, and how much. */
interface Part {
  column: Float64Array;
  whPerS: number;
}

/** Every frame by itself, where they have no codes. */
function eachFrame({ periods: { periodS }, moveS, axes }: Uses): Coded {
  const columns = [moveS, ...axes.map((axis) => axis.moveS), ...(periodS ? [periodS] : [])];
  const of = new Int32Array(moveS.length);
  for (let k = 0; k < of.length; k += 1) of[k] = k;
  return { of, columns: columns.map((column) => ({ column, table: column })) };
}

/**
 * What a source gives over a run.
 * @param whOf - of the codes, all 0
 */
function flowOf(draw: Draw, uses: Uses, coded: Coded, whOf: Float64Array): Flow {
  const { lanes, moveS, axes } = uses;
  const { periodS } = uses.periods;
  const part = (column: Float64Array, watts: number): Part => ({ column, whPerS: watts * WH_PER_J });
  const laneWh = lanes.map(
    ({ exposureS, busyS }) => (draw.exposureW * exposureS + draw.busyW * busyS) * WH_PER_J,
  );
  const whPerS = periodS ? 0 : draw.periodW * WH_PER_J;
  const parts = [
    part(moveS, draw.moveW),
    ...axes.map((axis, i) => part(axis.moveS, draw.axesW[i] ?? 0)),
    ...(periodS ? [part(periodS, draw.periodW)] : []),
  ];
  for (const { column, whPerS: by } of parts) {
    // An axis without a table does not move.
    const found = by === 0 ? undefined : coded.columns.find((picked) => picked.column === column);
    if (found) addTimes(whOf, found.table, by);
  }
  return {
    sameWh: ({ rung, intervalS }) => (laneWh[rung] as number) + whPerS * intervalS,
    codes: coded.of,
    whOf,
  };
}

function addTimes(sum: Float64Array, terms: ArrayLike<number>, times: number): void {
  for (let i = 0; i < sum.length; i += 1) sum[i] = (sum[i] as number) + times * (terms[i] as number);
}

/** One source over the run: its column and its summary. */
export interface SourceRun {
  source: Source;
  columns: SourceColumns;
  summary: SourceSummary;
}

function runSource(
  plan: Plan,
  source: Source,
  uses: Uses,
  coded: Coded,
  isEach: boolean,
  room: Room,
  usedWh: number,
): SourceRun {
  const { spells, runS } = uses.periods;
  const mains = source.kind === 'mains';
  const full = fullWh(source, plan.power.temperatureC);
  const usableWh = full * (1 - source.reserveShare);
  const brought = mains ? Number.POSITIVE_INFINITY : source.count;
  const leftWh = room.f64(uses.moveS.length);
  // What is not by code is summed where it is taken from the pack.
  const whOf = isEach ? leftWh.fill(0) : new Float64Array(coded.columns[0]?.table.length ?? 0);
  const flow = flowOf(drawOf(plan, source), uses, coded, whOf);
  // The sum of many frames carries a rounding: a pack that is used up to its last digit is not overdrawn.
  const limitWh = usableWh * (1 + 1e-9);
  const drained = drain(leftWh, spells, flow, { fullWh: full, limitWh, brought, usedWh });
  const { totalWh, needed, swapFrames, shortAtFrame } = drained;
  return {
    source,
    columns: { name: source.name, leftWh },
    summary: {
      name: source.name,
      kind: source.kind,
      ratedWh: mains ? null : ratedWh(source),
      usableWh: mains ? null : usableWh,
      drawnWh: totalWh,
      meanW: runS > 0 ? totalWh / WH_PER_J / runS : 0,
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
export function energyOf(plan: Plan, uses: Uses, room: Room, used = FRESH): SourceRun[] {
  const { sources } = plan.power;
  if (sources.length === 0) return [];
  // Where frames overrun, no code says how long they take.
  const byCode = uses.periods.periodS ? null : uses.coded;
  const coded = byCode ?? eachFrame(uses);
  return sources.map((source) =>
    runSource(plan, source, uses, coded, byCode === null, room, used.get(source.name) ?? 0),
  );
}
