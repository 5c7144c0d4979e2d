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

/** The nodes of whole tracks, by their steps: those of the track in use are worked out once. */
const known = new WeakMap<SkyTrack, Map<number, SkyNodes>>();

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

function knownNodes(track: SkyTrack, stepMs: number): SkyNodes {
  const bySteps = known.get(track) ?? new Map<number, SkyNodes>();
  const nodes = bySteps.get(stepMs) ?? nodesOf(track, stepMs);
  known.set(track, bySteps.set(stepMs, nodes));
  return nodes;
}

/**
 * Nodes around a run, at least two. The same run has the same nodes whatever track covers it.
 * @param track - over the whole run, from a whole step since the epoch
 */
export function skyNodes(track: SkyTrack, startMs: number, endMs: number): SkyNodes {
  const stepMs = STEPS.find(({ longestMs }) => endMs - startMs <= longestMs)?.stepMs ?? LONGEST_STEP_MS;
  const whole = knownNodes(track, stepMs);
  const first = Math.max(0, Math.floor((startMs - whole.startMs) / stepMs));
  const end = Math.max(first + 2, Math.ceil((endMs - whole.startMs) / stepMs) + 1);
  return {
    startMs: whole.startMs + first * stepMs,
    stepMs,
    sunAltitudeDeg: whole.sunAltitudeDeg.subarray(first, end),
    sunLux: whole.sunLux.subarray(first, end),
    moonLux: whole.moonLux.subarray(first, end),
  };
}
