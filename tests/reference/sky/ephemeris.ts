/** Places, instants and days all over the earth, and what astronomy-engine 2.1.19 (MIT) says of them. */
import {
  Body,
  Equator,
  Horizon,
  Illumination,
  MakeTime,
  Observer,
  SearchAltitude,
  SearchHourAngle,
  SearchRiseSet,
} from 'astronomy-engine';

/** A place and an instant. */
export interface Sample {
  ms: number;
  latitudeDeg: number;
  longitudeDeg: number;
}

const FROM_MS = Date.UTC(1990, 0, 1);
const TO_MS = Date.UTC(2061, 0, 1);

/** Numbers from 0 to 1, the same ones every time: a linear congruence (Numerical Recipes, from memory). */
export function dice(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Instants from 1990 to 2060, anywhere; every twentieth within a degree of a pole or of the equator. */
export function* samples(count: number, seed: number): Generator<Sample> {
  const throwDie = dice(seed);
  for (let i = 0; i < count; i += 1) {
    const anywhere = throwDie() * 180 - 90;
    const special = [90, -90, 0, 89.3, -0.4][Math.floor(throwDie() * 5)] as number;
    yield {
      ms: Math.round(FROM_MS + throwDie() * (TO_MS - FROM_MS)),
      latitudeDeg: i % 20 === 0 ? special : anywhere,
      longitudeDeg: throwDie() * 360 - 180,
    };
  }
}

/** Altitude without refraction, and azimuth, seen from the ground. */
export function seen(body: 'Sun' | 'Moon', { ms, latitudeDeg, longitudeDeg }: Sample) {
  const observer = new Observer(latitudeDeg, longitudeDeg, 0);
  const { ra, dec } = Equator(Body[body], new Date(ms), observer, true, true);
  const { altitude, azimuth } = Horizon(new Date(ms), observer, ra, dec);
  return { altitudeDeg: altitude, azimuthDeg: azimuth };
}

/** Altitude as refraction lifts it. */
export function seenApparent(body: 'Sun' | 'Moon', { ms, latitudeDeg, longitudeDeg }: Sample): number {
  const observer = new Observer(latitudeDeg, longitudeDeg, 0);
  const { ra, dec } = Equator(Body[body], new Date(ms), observer, true, true);
  return Horizon(new Date(ms), observer, ra, dec, 'normal').altitude;
}

export const litShare = (ms: number): number => Illumination(Body.Moon, new Date(ms)).phase_fraction;

type Search = (observer: Observer, fromMs: number, days: number) => { date: Date } | null;

/** Every crossing of an altitude by the sun's centre in one direction, between two instants. */
export const sunPasses =
  (altitudeDeg: number, rising: boolean): Search =>
  (observer, fromMs, days) =>
    SearchAltitude(Body.Sun, observer, rising ? 1 : -1, MakeTime(new Date(fromMs)), days, altitudeDeg);

export const moonPasses =
  (rising: boolean): Search =>
  (observer, fromMs, days) =>
    SearchRiseSet(Body.Moon, observer, rising ? 1 : -1, MakeTime(new Date(fromMs)), days);

export const sunTransits: Search = (observer, fromMs) =>
  SearchHourAngle(Body.Sun, observer, 0, MakeTime(new Date(fromMs))).time;

/** All that a search finds from one instant to another. */
export function found(
  search: Search,
  { latitudeDeg, longitudeDeg }: Omit<Sample, 'ms'>,
  fromMs: number,
  toMs: number,
): number[] {
  const observer = new Observer(latitudeDeg, longitudeDeg, 0);
  const all: number[] = [];
  for (let ms = fromMs; ms < toMs; ) {
    const next = search(observer, ms, (toMs - ms) / 86_400_000)?.date.getTime();
    if (next === undefined || next >= toMs) break;
    all.push(next);
    ms = next + 1000;
  }
  return all;
}
