/** How the exposure value of the scene at a frame came about. */
import { cameraOpenS } from '../exposure/shutter.ts';
import { exactApertureF, exactIso } from '../exposure/stops.ts';
import { longestRunS } from '../frames.ts';
import { paceOf } from '../pacing/pacing.ts';
import type { Plan } from '../plan/schema.ts';
import { daysTrack } from '../sky/track.ts';
import { APEX, type Draft, none, sameAs, term, type Worked, type Workings } from '../working/make.ts';
import { skyNodes } from './nodes.ts';
import { nightAllowanceStops, readingEv, type SkyNodes, sceneOffsetStops } from './scene.ts';

const METER =
  'Incident light: E = C × 2^EV / 100 lux at ISO 100 (ISO 2720, C 250 usual). Light of sun and moon by altitude: Vallado, Fundamentals of Astrodynamics, Table 5-1.';

/** The two nodes of the light about a frame, and how far it is from the first to the second. */
interface Between {
  nodes: SkyNodes;
  first: number;
  second: number;
  share: number;
}

function between({ plan, made }: Worked, k: number): Between | null {
  const { latitudeDeg, longitudeDeg } = plan.place;
  if (plan.light.kind !== 'sky' || latitudeDeg === null || longitudeDeg === null) return null;
  const endMs = made.startMs + longestRunS(plan, paceOf(plan)) * 1000;
  const nodes = skyNodes(daysTrack(made.startMs, endMs, latitudeDeg, longitudeDeg), made.startMs, endMs);
  const atMs = made.startMs + (made.columns.elapsedS[k] as number) * 1000;
  const last = nodes.sunLux.length - 1;
  const at = Math.min((atMs - nodes.startMs) / nodes.stepMs, last);
  const first = Math.floor(at);
  return { nodes, first, second: Math.min(first + 1, last), share: at - first };
}

/** Lux of open ground at a node. */
const luxAt = ({ light }: Worked['plan'], { sunLux, moonLux }: SkyNodes, node: number): number =>
  (sunLux[node] as number) + (light.moonlight ? (moonLux[node] as number) : 0);

/** Scene of a frame. */
export function scene(of: Worked, k: number): Draft {
  const { plan } = of;
  const base = { title: 'Scene', unit: 'EV' };
  const at = between(of, k);
  if (at === null)
    return sameAs(base.title, 'light as metered', plan.light.studioEv, 'EV', null, { source: METER });
  const { nodes, first, second, share } = at;
  return {
    ...base,
    expression:
      'log2(100 * luxBefore / incidentC) * (1 - share) + log2(100 * luxAfter / incidentC) * share + sceneStops - cloudStops',
    terms: [
      term('luxBefore', 'light on open ground before', luxAt(plan, nodes, first), 'lx'),
      term('incidentC', 'constant of the meter', plan.light.incidentC, ''),
      term('share', 'share of the way to the next', share, ''),
      term('luxAfter', 'light on open ground after', luxAt(plan, nodes, second), 'lx'),
      term('sceneStops', 'scene against open ground', sceneOffsetStops(plan), 'stops'),
      term('cloudStops', 'cloud', plan.light.cloudStops, 'stops'),
    ],
    remarks: [
      `The light is worked out every ${nodes.stepMs / 1000} s from the altitudes of sun and moon; between two such moments it is a straight line.`,
      ...(plan.light.metered ? ['How the scene stands against open ground comes from your reading.'] : []),
      'The schedule keeps it to seven digits.',
    ],
    source: METER,
  };
}

/** Night allowance at a frame, stops. */
function nightAt(of: Worked, k: number): number {
  const at = between(of, k);
  if (at === null) return 0;
  const stops = (node: number) => nightAllowanceStops(of.plan, at.nodes.sunAltitudeDeg[node] as number);
  return stops(at.first) * (1 - at.share) + stops(at.second) * at.share;
}

/** Night allowance of a frame. */
export function night(of: Worked, k: number): Draft {
  const at = between(of, k);
  const title = 'Night allowance';
  if (at === null) return none(title, 'stops', 'Steady light has none.');
  const { nightStops, nightFromDeg, nightFullDeg } = of.plan.exposure.ramp;
  if (nightFullDeg >= nightFromDeg || nightStops === 0)
    return sameAs(title, 'stops that the scene stays darker', nightAt(of, k), 'stops', null, {
      source: 'Your own: night scenes look right darker.',
    });
  const node = (n: string) => `max(0, min(1, (fromDeg - sun${n}Deg) / (fromDeg - fullDeg)))`;
  return {
    title,
    unit: 'stops',
    expression: `nightStops * (${node('Before')} * (1 - share) + ${node('After')} * share)`,
    terms: [
      term('nightStops', 'stops that the night stays darker', nightStops, 'stops'),
      term('fromDeg', 'begins at an altitude of the sun of', nightFromDeg, 'deg'),
      term('sunBeforeDeg', 'altitude of the sun before', at.nodes.sunAltitudeDeg[at.first] as number, 'deg'),
      term('fullDeg', 'is complete at', nightFullDeg, 'deg'),
      term('share', 'share of the way to the next', at.share, ''),
      term('sunAfterDeg', 'altitude of the sun after', at.nodes.sunAltitudeDeg[at.second] as number, 'deg'),
    ],
    source: 'Your own: night scenes look right darker. Common practice, no source.',
  };
}

/** What the meter's reading comes to. */
function reading(plan: Plan): Draft {
  const { meteredShutterS, meteredApertureF, meteredIso, meteredFilterStops } = plan.light;
  return {
    title: 'Your reading',
    value: readingEv(plan),
    unit: 'EV',
    expression: 'log2(aperture ^ 2 / openS) - log2(iso / 100) + filterStops',
    terms: [
      term('aperture', 'f-number, exact', exactApertureF(meteredApertureF), ''),
      term('openS', 'shutter open', cameraOpenS(plan, meteredShutterS), 's'),
      term('iso', 'ISO speed, exact', exactIso(meteredIso), ''),
      term('filterStops', 'filter', meteredFilterStops, 'stops'),
    ],
    remarks: ['Computed on the exact values behind the marks.'],
    source: APEX,
  };
}

/** Workings of the light over the run. */
export const lightWorkings = ({ plan }: Worked): Workings =>
  plan.light.kind === 'sky' && plan.light.metered ? { 'light.readingEv': () => reading(plan) } : {};

/** Workings of the light at one frame. */
export const frameLightWorkings = (of: Worked, k: number): Workings =>
  of.made.exposure ? { evScene: () => scene(of, k), nightStops: () => night(of, k) } : {};
