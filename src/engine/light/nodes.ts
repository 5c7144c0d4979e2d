/** The sky over a run at even steps of time, from which its light is worked out. */
import { altitudeOn } from '../sky/path.ts';
import { valueAt } from '../sky/series.ts';
import { litShareOn, type SkyTrack } from '../sky/track.ts';
import type { SkyNodes } from './scene.ts';
import { moonLux, sunLux } from './sky-light.ts';

/**
 * Between nodes the light is taken as a straight line. Where it bends most, as the sun goes down, that was measured to
 * be off by up to 0.04 stops for a minute and 0.18 for five: long runs have few frames in each dusk.
 */
const STEPS = [
  { longestMs: 4 * 86_400_000, stepMs: 60_000 },
  { longestMs: 40 * 86_400_000, stepMs: 120_000 },
];
const LONGEST_STEP_MS = 300_000;

/** The nodes of a whole track, and those of the run that was last asked for. */
interface Known {
  whole: SkyNodes;
  run: SkyNodes | null;
}

/** By their steps: those of the track in use are worked out once. */
const known = new WeakMap<SkyTrack, Map<number, Known>>();

function nodesOf(track: SkyTrack, stepMs: number): SkyNodes {
  const { fromMs, toMs } = track;
  const count = Math.max(2, Math.ceil((toMs - fromMs) / stepMs) + 1);
  const sunAltitudeDeg = new Float64Array(count);
  const bySun = new Float64Array(count);
  const byMoon = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const ms = fromMs + i * stepMs;
    const sunDeg = altitudeOn(track.sun, ms);
    sunAltitudeDeg[i] = sunDeg;
    bySun[i] = sunLux(sunDeg);
    byMoon[i] = moonLux(
      altitudeOn(track.moon, ms),
      litShareOn(track, ms),
      valueAt(track.moon.distanceKm, ms),
    );
  }
  return { startMs: fromMs, stepMs, sunAltitudeDeg, sunLux: bySun, moonLux: byMoon };
}

function knownNodes(track: SkyTrack, stepMs: number): Known {
  const bySteps = known.get(track) ?? new Map<number, Known>();
  const found = bySteps.get(stepMs) ?? { whole: nodesOf(track, stepMs), run: null };
  known.set(track, bySteps.set(stepMs, found));
  return found;
}

/**
 * Nodes around a run, at least two. The same run has the same nodes whatever track covers it.
 * @param track - over the whole run, from a whole step since the epoch
 * @returns the very same as before where most edits of a plan leave its times as they are
 */
export function skyNodes(track: SkyTrack, startMs: number, endMs: number): SkyNodes {
  const stepMs = STEPS.find(({ longestMs }) => endMs - startMs <= longestMs)?.stepMs ?? LONGEST_STEP_MS;
  const found = knownNodes(track, stepMs);
  const { whole, run } = found;
  const first = Math.max(0, Math.floor((startMs - whole.startMs) / stepMs));
  const end = Math.max(first + 2, Math.ceil((endMs - whole.startMs) / stepMs) + 1);
  const fromMs = whole.startMs + first * stepMs;
  const part = (column: Float64Array) => column.subarray(first, end);
  const sunLux = part(whole.sunLux);
  if (run?.startMs === fromMs && run.sunLux.length === sunLux.length) return run;
  found.run = {
    startMs: fromMs,
    stepMs,
    sunAltitudeDeg: part(whole.sunAltitudeDeg),
    sunLux,
    moonLux: part(whole.moonLux),
  };
  return found.run;
}
