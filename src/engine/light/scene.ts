/**
 * Exposure value of the scene over time: steady light of lamps, or sky by illuminance, cloud and one reading.
 *
 * E = C x 2^EV / 100 lux at ISO 100 (ISO 2720, C from 240 to 400 for flat receptors, 250 usual; as quoted by the
 * colour-hdri library, V2). The sky gives the light on level open ground; how much brighter or darker the scene
 * itself is, is what a reading fixes. Cloud counts against a clear sky, or against the sky of the reading.
 */
import { ev100 } from '../exposure/apex.ts';
import { cameraOpenS } from '../exposure/shutter.ts';
import { exactApertureF, exactIso } from '../exposure/stops.ts';
import type { Plan } from '../plan/schema.ts';
import { moonAt, moonLitShare, sunAt } from '../sky/position.ts';
import { startOf } from '../time/clock.ts';
import { moonLux, sunLux } from './sky-light.ts';

/**
 * Exposure value at ISO 100 that an incident meter reads.
 * @param lux - illuminance, more than 0
 * @param incidentC - the meter's constant: 2.5 lux is EV 0 at 250
 */
export const ev100OfLux = (lux: number, incidentC: number): number => Math.log2((lux * 100) / incidentC);

/** Illuminance in lux behind an exposure value at ISO 100. */
export const luxOfEv100 = (ev: number, incidentC: number): number => (incidentC * 2 ** ev) / 100;

/** What of the sky gives light at an instant. Altitudes are geometric. */
export interface SkyAt {
  sunAltitudeDeg: number;
  moonAltitudeDeg: number;
  /** Lit share of the moon's disk, 0 to 1. */
  moonLitShare: number;
  moonDistanceKm: number;
}

/** A sky at even steps of time, at least two: what the light of a run is worked out from. */
export interface SkyNodes {
  startMs: number;
  stepMs: number;
  /** Geometric. */
  sunAltitudeDeg: Float64Array;
  /** Illuminance of level open ground by sun, twilight and night sky, and by the moon. */
  sunLux: Float64Array;
  moonLux: Float64Array;
}

/** Exposure value of a grey surface lying open to a clear sky. */
export const openGroundEv = (plan: Plan, sky: SkyAt): number =>
  groundEv(
    plan,
    sunLux(sky.sunAltitudeDeg),
    moonLux(sky.moonAltitudeDeg, sky.moonLitShare, sky.moonDistanceKm),
  );

const groundEv = ({ light }: Plan, bySunLux: number, byMoonLux: number): number =>
  ev100OfLux(light.moonlight ? bySunLux + byMoonLux : bySunLux, light.incidentC);

/** Exposure value at ISO 100 of the scene that was read: exact stops, filter counted. */
export function readingEv(plan: Plan): number {
  const { meteredShutterS, meteredApertureF, meteredIso, meteredFilterStops } = plan.light;
  const openS = cameraOpenS(plan, meteredShutterS);
  return ev100(exactApertureF(meteredApertureF), openS, exactIso(meteredIso)) + meteredFilterStops;
}

/** Milliseconds of the epoch at which the reading was taken. */
function readingMs(plan: Plan): number {
  const { meteredDate: date, meteredTime: time } = plan.light;
  return startOf({ ...plan, start: { ...plan.start, tiedTo: 'clock', date, time } }).startMs;
}

/**
 * Stops by which the scene is brighter than a grey surface lying open to the sky: from the reading, or as typed.
 * Without a place there is no sky to hold the reading against: then as typed.
 */
export function sceneOffsetStops(plan: Plan): number {
  const { latitudeDeg, longitudeDeg } = plan.place;
  if (!plan.light.metered || latitudeDeg === null || longitudeDeg === null) return plan.light.sceneStops;
  const ms = readingMs(plan);
  const moon = moonAt(ms, latitudeDeg, longitudeDeg);
  const sky = {
    sunAltitudeDeg: sunAt(ms, latitudeDeg, longitudeDeg).geometricAltitudeDeg,
    moonAltitudeDeg: moon.geometricAltitudeDeg,
    moonLitShare: moonLitShare(ms),
    moonDistanceKm: moon.distanceKm,
  };
  return readingEv(plan) - openGroundEv(plan, sky);
}

/**
 * Exposure value at ISO 100 of the scene under a sky; studio light goes by none.
 * @param offsetStops - {@link sceneOffsetStops}, if it is known already
 */
export function sceneEv(plan: Plan, sky: SkyAt, offsetStops = sceneOffsetStops(plan)): number {
  if (plan.light.kind === 'studio') return plan.light.studioEv;
  return openGroundEv(plan, sky) - plan.light.cloudStops + offsetStops;
}

/**
 * Stops by which a picture stays darker than the scene would be rightly exposed: none from `nightFromDeg` up, all of
 * `nightStops` from `nightFullDeg` down, evenly between.
 * @param sunDeg - geometric altitude of the sun
 */
export function nightAllowanceStops(plan: Plan, sunDeg: number): number {
  const { nightStops, nightFromDeg, nightFullDeg } = plan.exposure.ramp;
  if (sunDeg >= nightFromDeg) return 0;
  if (sunDeg <= nightFullDeg || nightFullDeg >= nightFromDeg) return nightStops;
  return (nightStops * (nightFromDeg - sunDeg)) / (nightFromDeg - nightFullDeg);
}

/** The light of a run at even steps of time, at least two. */
export interface LightTrack {
  /** Exposure value at ISO 100 of the scene. */
  sceneEv: Float64Array;
  /** Exposure value that the settings should have: the scene's and the night allowance. */
  targetEv: Float64Array;
}

/**
 * The light of a run.
 * @param nodes - the sky over the run; null if there is no place, which studio light does without
 * @returns one entry a node, two for studio light; null if the light is not planned or the sky not known
 */
export function lightTrack(plan: Plan, nodes: SkyNodes | null): LightTrack | null {
  const { kind, studioEv } = plan.light;
  if (kind === 'studio') return { sceneEv: pair(studioEv), targetEv: pair(studioEv) };
  if (kind === 'none' || nodes === null) return null;
  return skyTrack(plan, nodes);
}

const pair = (value: number): Float64Array => new Float64Array(2).fill(value);

/** Light at nodes, as it was last asked for, and by which figures: most edits of a plan leave it as it is. */
const known = new WeakMap<SkyNodes, { by: string; track: LightTrack }>();

function skyTrack(plan: Plan, nodes: SkyNodes): LightTrack {
  const { moonlight, incidentC, cloudStops } = plan.light;
  const { nightStops, nightFromDeg, nightFullDeg } = plan.exposure.ramp;
  const aboveGround = sceneOffsetStops(plan) - cloudStops;
  const by = [moonlight, incidentC, aboveGround, nightStops, nightFromDeg, nightFullDeg].join(' ');
  const found = known.get(nodes);
  if (found?.by === by) return found.track;
  const track = trackOver(plan, nodes, aboveGround);
  known.set(nodes, { by, track });
  return track;
}

function trackOver(plan: Plan, nodes: SkyNodes, aboveGround: number): LightTrack {
  const count = nodes.sunAltitudeDeg.length;
  const track = { sceneEv: new Float64Array(count), targetEv: new Float64Array(count) };
  for (let i = 0; i < count; i += 1) {
    const value = groundEv(plan, nodes.sunLux[i] as number, nodes.moonLux[i] as number) + aboveGround;
    track.sceneEv[i] = value;
    track.targetEv[i] = value + nightAllowanceStops(plan, nodes.sunAltitudeDeg[i] as number);
  }
  return track;
}
