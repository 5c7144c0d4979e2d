/**
 * Sun and moon at an instant, as seen from a place at sea level.
 *
 * suncalc gives an altitude with refraction in it, and holds the horizon's refraction for everything below the
 * horizon. Twilights are defined on the geometric altitude, so that is recovered by taking suncalc's own
 * refraction out again; the apparent altitude is then made with the usual formula down to the horizon.
 * Azimuths count from north, clockwise; latitudes north, longitudes east positive.
 */
import { getMoonIllumination, getMoonPosition, getPosition } from 'suncalc';

/** Where a body stands in the sky. */
export interface SkyPosition {
  /** Centre of the body, without refraction. */
  geometricAltitudeDeg: number;
  /** Centre of the body, as refraction lifts it. */
  apparentAltitudeDeg: number;
  /** From north, clockwise, 0 to 360. */
  azimuthDeg: number;
}

/** The moon, with what makes it bright. */
export interface MoonPosition extends SkyPosition {
  distanceKm: number;
}

const RAD = Math.PI / 180;

/**
 * Geometric altitude behind one of suncalc's: it adds the refraction of Meeus, Astronomical Algorithms, 16.4, and below
 * the horizon goes on adding the horizon's. By Newton's method: three rounds reach the last decimals.
 */
function withoutRefraction(apparentDeg: number): number {
  const apparent = apparentDeg * RAD;
  let h = apparent - 0.0002967 / Math.tan(0.00312536 / 0.08901179);
  if (h <= 0) return h / RAD;
  for (let round = 0; round < 3; round += 1) {
    const lift = h + 0.08901179;
    const cotangent = 1 / Math.tan(h + 0.00312536 / lift);
    const slope = 1 - 0.0002967 * (1 + cotangent * cotangent) * (1 - 0.00312536 / (lift * lift));
    h -= (h + 0.0002967 * cotangent - apparent) / slope;
  }
  return h / RAD;
}

/**
 * Refraction at a geometric altitude, 1010 hPa and 10 °C.
 *
 * Source: Saemundsson's formula, Meeus, Astronomical Algorithms, 16.4: 1.02' cot(h + 10.3/(h + 5.11)). Below a
 * degree under the horizon nobody sees the body: the lift fades out to the end of civil twilight, so that the
 * apparent altitude has no jump.
 * @param geometricDeg - degrees
 * @returns degrees, at least 0
 */
export function refractionDeg(geometricDeg: number): number {
  const h = Math.max(-1, geometricDeg);
  const lift = 1.02 / 60 / Math.tan((h + 10.3 / (h + 5.11)) * RAD);
  // The formula goes a hair below 0 at the zenith.
  const fade = geometricDeg >= -1 ? 1 : Math.max(0, (geometricDeg + 6) / 5);
  return Math.max(0, lift * fade);
}

const positionOf = (altitude: number, azimuth: number): SkyPosition => {
  const geometricAltitudeDeg = withoutRefraction(altitude);
  return {
    geometricAltitudeDeg,
    apparentAltitudeDeg: geometricAltitudeDeg + refractionDeg(geometricAltitudeDeg),
    azimuthDeg: azimuth,
  };
};

/**
 * The sun at an instant.
 * @param ms - milliseconds of the epoch
 */
export function sunAt(ms: number, latitudeDeg: number, longitudeDeg: number): SkyPosition {
  const { altitude, azimuth } = getPosition(new Date(ms), latitudeDeg, longitudeDeg);
  return positionOf(altitude, azimuth);
}

/**
 * The moon at an instant; its altitude allows for where on the earth one stands.
 * @param ms - milliseconds of the epoch
 */
export function moonAt(ms: number, latitudeDeg: number, longitudeDeg: number): MoonPosition {
  const { altitude, azimuth, distance } = getMoonPosition(new Date(ms), latitudeDeg, longitudeDeg);
  return { ...positionOf(altitude, azimuth), distanceKm: distance };
}

/** Lit share of the moon's disk, 0 to 1. */
export const moonLitShare = (ms: number): number => getMoonIllumination(new Date(ms)).fraction;
