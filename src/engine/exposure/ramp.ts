/**
 * Following the light: which rung of the ladder each frame takes.
 *
 * The first frame takes the nearest rung. After that nothing changes until the light is farther from the rung in use
 * than half the step to its neighbour and the hysteresis; then the nearest rung is taken. A change is therefore only
 * undone when the light has come back by twice the hysteresis: the ramp never hunts.
 */
import type { RampStep } from '../plan/schema.ts';
import type { Spell } from '../spell.ts';
import type { Ladder, Rung } from './ladder.ts';

/** What a ramp is worked out from. */
export interface RampInput {
  /** Exposure value of each rung, strictly falling. */
  ladderEv: Float64Array;
  /** Seconds from first shutter opening to last closing at each rung; read if the trigger counts end to start. */
  openSpanS: Float64Array;
  /** Light at even steps of time, at least two: what the settings should be, and what the scene is. Straight between. */
  targetEv: Float64Array;
  sceneEv: Float64Array;
  /** Seconds between two of them, and where frame 1 lies among them, counted in steps from the first. */
  nodeStepS: number;
  firstNode: number;
  /** Seconds on the dial: the interval, or the gap from closing to opening. */
  dialS: number;
  endToStart: boolean;
  hysteresisStops: number;
}

/** One entry a frame, filled by {@link fillRamp}. */
export interface RampColumns {
  /** Rung in use, counted from 0. */
  rung: Uint16Array;
  /** Exposure value of the scene at the shutter opening. */
  evScene: Float32Array;
  /** Stops by which the picture comes out brighter than wanted; negative is darker. */
  evError: Float32Array;
  /** Seconds from the first shutter opening to this one, and to the next. */
  elapsedS: Float64Array;
  intervalS: Float64Array;
}

/** Borders between neighbouring rungs: half way, the last entry beyond everything. */
function bordersOf(ladderEv: Float64Array): Float64Array {
  const borders = new Float64Array(ladderEv.length).fill(Number.NEGATIVE_INFINITY);
  for (let i = 0; i + 1 < ladderEv.length; i += 1) {
    borders[i] = ((ladderEv[i] as number) + (ladderEv[i + 1] as number)) / 2;
  }
  return borders;
}

/** The rung nearest to a target, looked for from a rung near by. */
function nearestRung(borders: Float64Array, from: number, targetEv: number): number {
  let rung = from;
  while (rung > 0 && targetEv > (borders[rung - 1] as number)) rung -= 1;
  while (targetEv < (borders[rung] as number)) rung += 1;
  return rung;
}

/**
 * Fills the columns of a ramp, and the times of the frames, which with an end-to-start trigger depend on it.
 *
 * Start to start, frame k opens at k x dial exactly. End to start, each interval is the gap and the time from that
 * frame's first opening to its last closing. The light beyond the last node stays as it is there.
 * @returns frames of the same settings, in order
 */
export function fillRamp(input: RampInput, columns: RampColumns): Spell[] {
  const { ladderEv, openSpanS, targetEv, sceneEv, firstNode, dialS, endToStart, hysteresisStops } = input;
  const { evScene, evError, elapsedS } = columns;
  const borders = bordersOf(ladderEv);
  const frames = elapsedS.length;
  const nodesPerS = 1 / input.nodeStepS;
  const lastNode = targetEv.length - 1;
  const spells: Spell[] = [];
  let elapsed = 0;
  let rung = 0;
  let settingEv = 0;
  // Nothing changes between these two; at first nothing fits, so that the first frame is looked up.
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let interval = dialS;
  let k = 0;
  while (k < frames) {
    // The straight piece of light that the next frames lie on, up to the node where another begins.
    const from = firstNode + elapsed * nodesPerS;
    const beyond = from >= lastNode;
    const node = beyond ? lastNode : Math.floor(from);
    const nextNode = beyond ? Number.POSITIVE_INFINITY : node + 1;
    const target = targetEv[node] as number;
    const targetRise = beyond ? 0 : (targetEv[node + 1] as number) - target;
    const scene = sceneEv[node] as number;
    const sceneRise = beyond ? 0 : (sceneEv[node + 1] as number) - scene;
    const first = target + targetRise * (from - node);
    if (first < low || first > high) {
      rung = nearestRung(borders, rung, first);
      settingEv = ladderEv[rung] as number;
      low = (borders[rung] as number) - hysteresisStops;
      high = rung === 0 ? Number.POSITIVE_INFINITY : (borders[rung - 1] as number) + hysteresisStops;
      if (endToStart) interval = dialS + (openSpanS[rung] as number);
      spells.push({ begin: k, end: frames, rung, intervalS: interval });
    }
    for (; k < frames; k += 1) {
      if (!endToStart) elapsed = k * dialS;
      const at = firstNode + elapsed * nodesPerS;
      const share = at - node;
      const wanted = target + targetRise * share;
      if (at >= nextNode || wanted < low || wanted > high) break;
      evScene[k] = scene + sceneRise * share;
      evError[k] = wanted - settingEv;
      elapsedS[k] = elapsed;
      elapsed += interval;
    }
  }
  fillSpells(spells, columns);
  return spells;
}

/** Ends each spell where the next begins, and fills what stays the same over it. */
function fillSpells(spells: readonly Spell[], { rung, intervalS }: RampColumns): void {
  spells.forEach((spell, i) => {
    spell.end = spells[i + 1]?.begin ?? spell.end;
    rung.fill(spell.rung, spell.begin, spell.end);
    intervalS.fill(spell.intervalS, spell.begin, spell.end);
  });
}

/** A change of the settings before a frame. */
export interface RampChange {
  /** First frame with the new settings, counted from 1. */
  frame: number;
  from: Rung;
  to: Rung;
  /** By hand if any of what changes is. */
  by: RampStep['by'];
}

/** Rungs that a change takes, the one that it starts from in brighter light left out. */
const taken = ({ rungs }: Ladder, from: number, to: number): readonly Rung[] =>
  rungs.slice(Math.min(from, to) + 1, Math.max(from, to) + 1);

function changeAt(ladder: Ladder, frame: number, from: number, to: number): RampChange {
  const by = taken(ladder, from, to).some((rung) => rung.by === 'hand') ? 'hand' : 'camera';
  return { frame, from: ladder.rungs[from] as Rung, to: ladder.rungs[to] as Rung, by };
}

/** Every change of the settings, in order of time. */
export const rampChanges = (spells: readonly Spell[], ladder: Ladder): RampChange[] =>
  spells.slice(1).map(({ begin, rung }, i) => changeAt(ladder, begin + 1, (spells[i] as Spell).rung, rung));
