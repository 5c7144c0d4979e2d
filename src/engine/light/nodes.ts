/** The sky over a run at even steps of time, from which its light is worked out. */
import { altitudeOn } from '../sky/path.ts';
import { valueAt } from '../sky/series.ts';
import { litShareOn, type SkyTrack } from '../sky/track.ts';
import type { SkyNodes } from './scene.ts';

/**
 * Between nodes the light is taken as a straight line. Where it bends most, as the sun goes down, that is off by
 * 0.01 stops for a minute, 0.04 for two and 0.2 for five: long runs have few frames in each dusk.
 */
const STEPS = [
  { longestMs: 8 * 86_400_000, stepMs: 60_000 },
  { longestMs: 40 * 86_400_000, stepMs: 120_000 },
  { longestMs: Number.POSITIVE_INFINITY, stepMs: 300_000 },
];

/** The nodes of whole tracks: those of the track in use are worked out once. */
const known = new WeakMap<SkyTrack, SkyNodes>();

function nodesOf(track: SkyTrack): SkyNodes {
  const { fromMs, toMs } = track;
  const stepMs = STEPS.find(({ longestMs }) => toMs - fromMs <= longestMs)?.stepMs ?? 300_000;
  const count = Math.max(2, Math.ceil((toMs - fromMs) / stepMs) + 1);
  const over = (value: (ms: number) => number) => {
    const values = new Float64Array(count);
    for (let i = 0; i < count; i += 1) values[i] = value(fromMs + i * stepMs);
    return values;
  };
  return {
    startMs: fromMs,
    stepMs,
    sunAltitudeDeg: over((ms) => altitudeOn(track.sun, ms)),
    moonAltitudeDeg: over((ms) => altitudeOn(track.moon, ms)),
    moonLitShare: over((ms) => litShareOn(track, ms)),
    moonDistanceKm: over((ms) => valueAt(track.moon.distanceKm, ms)),
  };
}

/**
 * Nodes around a run, at least two.
 * @param track - over the whole run
 */
export function skyNodes(track: SkyTrack, startMs: number, endMs: number): SkyNodes {
  const whole = known.get(track) ?? nodesOf(track);
  known.set(track, whole);
  const { stepMs } = whole;
  const first = Math.max(0, Math.floor((startMs - whole.startMs) / stepMs));
  const end = Math.max(first + 2, Math.ceil((endMs - whole.startMs) / stepMs) + 1);
  return {
    startMs: whole.startMs + first * stepMs,
    stepMs,
    sunAltitudeDeg: whole.sunAltitudeDeg.subarray(first, end),
    moonAltitudeDeg: whole.moonAltitudeDeg.subarray(first, end),
    moonLitShare: whole.moonLitShare.subarray(first, end),
    moonDistanceKm: whole.moonDistanceKm.subarray(first, end),
  };
}
