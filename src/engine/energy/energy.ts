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
import type { Plan, Source } from '../plan/schema.ts';
import type { Room } from '../room.ts';
import type { AxisColumns, SourceColumns, SourceSummary } from '../schedule-types.ts';
import type { Spell } from '../spell.ts';
import { flightRule, fullWh, ratedWh } from './battery.ts';

/** What the energy of a frame depends on. */
export interface Uses {
  periods: Periods;
  /** Camera lane of each rung of the ramp; without a ramp one. */
  lanes: readonly CameraLane[];
  /** Seconds that the rig and its axes move, one entry a frame. */
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

/** What a source gives in each frame of a spell: a share that is the same for all, and one of each duration. */
interface Flow {
  sameWh: number;
  /** The rig's move, as a rule that of an axis or two; at least {@link AT_ONCE}, some of which may give nothing. */
  parts: readonly Part[];
}

/** As many durations as one loop takes. */
const AT_ONCE = 3;

/** What a source gives, spell by spell. */
function flowOver(draw: Draw, { periods: { periodS }, lanes, moveS, axes }: Uses): (spell: Spell) => Flow {
  const part = (durationS: Float64Array, watts: number): Part => ({ durationS, whPerS: watts * WH_PER_J });
  const moves = [part(moveS, draw.moveW), ...axes.map((axis, i) => part(axis.moveS, draw.axesW[i] ?? 0))];
  const parts = moves.filter(({ whPerS }) => whPerS !== 0);
  if (periodS) parts.unshift(part(periodS, draw.periodW));
  while (parts.length < AT_ONCE) parts.push(part(moveS, 0));
  const laneWh = lanes.map(
    ({ exposureS, busyS }) => (draw.exposureW * exposureS + draw.busyW * busyS) * WH_PER_J,
  );
  const periodWhPerS = periodS ? 0 : draw.periodW * WH_PER_J;
  return ({ rung, intervalS }) => ({ sameWh: (laneWh[rung] as number) + periodWhPerS * intervalS, parts });
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

/** What has been drawn since the last swap, since the last pack that there was, and in all; watt-hours. */
interface Drawn {
  sinceSwap: number;
  sinceLastPack: number;
  total: number;
}

/** A flow of as few durations as one loop takes: the first of them go into the column that is to be filled. */
function folded({ sameWh, parts }: Flow, column: Float64Array, spell: Spell): Flow {
  if (parts.length <= AT_ONCE) return { sameWh, parts };
  const [{ durationS: a, whPerS: perA }, { durationS: b, whPerS: perB }] = parts as [Part, Part];
  for (let k = spell.begin; k < spell.end; k += 1)
    column[k] = sameWh + perA * (a[k] as number) + perB * (b[k] as number);
  const rest = [{ durationS: column, whPerS: 1 }, ...parts.slice(2)];
  return folded({ sameWh: 0, parts: rest }, column, spell);
}

/** A pack: what it holds, and how much of that may be drawn, watt-hours. */
interface Pack {
  fullWh: number;
  limitWh: number;
}

/**
 * Fills what is left at frames from one index to before another, as long as the pack lasts.
 * @returns index of the first frame that would overdraw it
 */
function drainPack(
  leftWh: Float64Array,
  [from, to]: readonly [number, number],
  { sameWh, parts }: Flow,
  { fullWh, limitWh }: Pack,
  drawn: Drawn,
): number {
  const [{ durationS: a, whPerS: perA }, { durationS: b, whPerS: perB }] = parts as [Part, Part];
  const { durationS: c, whPerS: perC } = parts[2] as Part;
  let { sinceSwap, sinceLastPack, total } = drawn;
  let k = from;
  for (; k < to; k += 1) {
    const wh = sameWh + perA * (a[k] as number) + perB * (b[k] as number) + perC * (c[k] as number);
    if (sinceSwap + wh > limitWh) break;
    leftWh[k] = Math.max(0, fullWh - sinceLastPack);
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
 * Fills what is left when each shutter opens, watt-hours.
 *
 * A pack is swapped before the frame that would take it below its reserve. When none is left the last one goes
 * on to nothing, and the packs needed are counted on.
 * @param usedWh - what the first pack has given before the first frame
 */
function drain(
  leftWh: Float64Array,
  spells: readonly Spell[],
  flowOf: (spell: Spell) => Flow,
  { pack, brought, usedWh }: { pack: Pack; brought: number; usedWh: number },
): Drain {
  const result: Drain = { needed: 1, swapFrames: [], shortAtFrame: null, totalWh: 0 };
  const whatever = { ...pack, limitWh: Infinity };
  const drawn: Drawn = { sinceSwap: usedWh, sinceLastPack: usedWh, total: 0 };
  for (const spell of spells) {
    const flow = folded(flowOf(spell), leftWh, spell);
    let k = drainPack(leftWh, [spell.begin, spell.end], flow, pack, drawn);
    while (k < spell.end) {
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
      // It takes this frame whatever comes.
      drainPack(leftWh, [k, k + 1], flow, whatever, drawn);
      // A pack that does not last for one frame is short at once, fresh or not.
      if (!fresh || drawn.sinceSwap > pack.limitWh) result.shortAtFrame ??= k + 1;
      k = drainPack(leftWh, [k + 1, spell.end], flow, pack, drawn);
    }
  }
  result.totalWh = drawn.total;
  return result;
}

function runSource(plan: Plan, source: Source, uses: Uses, room: Room, usedWh: number): SourceRun {
  const { spells, runS } = uses.periods;
  const mains = source.kind === 'mains';
  const full = fullWh(source, plan.power.temperatureC);
  const usable = full * (1 - source.reserveShare);
  // The sum of many frames carries a rounding: a pack that is used up to its last digit is not overdrawn.
  const pack = { fullWh: full, limitWh: usable * (1 + 1e-9) };
  const brought = mains ? Number.POSITIVE_INFINITY : source.count;
  const leftWh = room.f64(uses.moveS.length);
  const flowOf = flowOver(drawOf(plan, source), uses);
  const lasts = drain(leftWh, spells, flowOf, { pack, brought, usedWh });
  return {
    source,
    columns: { name: source.name, leftWh },
    summary: {
      name: source.name,
      kind: source.kind,
      ratedWh: mains ? null : ratedWh(source),
      usableWh: mains ? null : usable,
      drawnWh: lasts.totalWh,
      meanW: runS > 0 ? lasts.totalWh / WH_PER_J / runS : 0,
      needed: lasts.needed,
      brought: source.count,
      swapFrames: lasts.swapFrames,
      shortAtFrame: lasts.shortAtFrame,
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
  return plan.power.sources.map((source) => runSource(plan, source, uses, room, used.get(source.name) ?? 0));
}
