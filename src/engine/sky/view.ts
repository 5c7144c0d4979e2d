/**
 * Where the lens looks, whether the sun is in the picture, and how far stars trail.
 *
 * The picture is a pinhole's: sensor and focal length, no distortion. Pan counts clockwise from above, tilt
 * upwards, roll clockwise as seen from behind the camera.
 */
import type { Plan } from '../plan/schema.ts';
import type { AxisColumns } from '../schedule-types.ts';

const RAD = Math.PI / 180;

/** Directions of the camera, degrees. */
export interface Lens {
  /** Of the lens axis, from north, clockwise. */
  azimuthDeg: number;
  altitudeDeg: number;
  rollDeg: number;
}

/** Apparent radius of the sun's disk: 16' (NREL/TP-560-34302, App. A.2). */
export const SUN_RADIUS_DEG = 0.26667;

/** Axes that turn the lens. */
const TURNING = ['pan', 'tilt', 'roll'] as const;

const isStill = ({ steps }: AxisColumns): boolean => steps.every((step) => step === steps[0]);

/**
 * Where the lens looks: the plan's view, turned by the axes that pan, tilt and roll.
 * @param axes - as the schedule has them, in the order of the plan's
 * @returns the lens at a frame counted from 0; the same object for every frame if nothing turns it
 */
export function lensOver(plan: Plan, axes: readonly AxisColumns[]): (index: number) => Lens {
  const turning = TURNING.map((kind) =>
    axes.filter((_, i) => plan.rig.axes[i]?.kind === kind && plan.rig.axes[i]?.unit === 'deg'),
  );
  const turned = (some: readonly AxisColumns[] | undefined, index: number): number =>
    (some ?? []).reduce((deg, { steps, stepsPerUnit }) => deg + (steps[index] ?? 0) / stepsPerUnit, 0);
  const at = (index: number): Lens => ({
    azimuthDeg: plan.view.azimuthDeg + turned(turning[0], index),
    altitudeDeg: plan.view.altitudeDeg + turned(turning[1], index),
    rollDeg: turned(turning[2], index),
  });
  if (!turning.flat().every(isStill)) return at;
  const still = at(0);
  return () => still;
}

/** Half the angle of view over a side of the sensor, degrees. */
export const halfViewDeg = (sideMm: number, focalLengthMm: number): number =>
  Math.atan(sideMm / 2 / focalLengthMm) / RAD;

/** Angle from the lens axis to a corner of the picture, degrees. */
export const cornerDeg = ({ sensorWidthMm, sensorHeightMm, focalLengthMm }: Plan['camera']): number =>
  halfViewDeg(Math.hypot(sensorWidthMm, sensorHeightMm), focalLengthMm);

/** The sun as the lens has it. */
export interface SunInFrame {
  /** Angle between the lens axis and the middle of the sun, degrees. */
  fromAxisDeg: number;
  /** Whether any of its disk is in the picture; hills and houses left out of account. */
  inside: boolean;
}

/** The sun in the picture: of a lens, at an apparent altitude and an azimuth from north. */
export type SunFinder = (lens: Lens, altitudeDeg: number, azimuthDeg: number) => SunInFrame;

/** Finds the sun in the pictures of a camera. */
export function sunFinder({ sensorWidthMm, sensorHeightMm, focalLengthMm }: Plan['camera']): SunFinder {
  const halfWidth = halfViewDeg(sensorWidthMm, focalLengthMm) * RAD;
  const halfHeight = halfViewDeg(sensorHeightMm, focalLengthMm) * RAD;
  const [sineWidth, cosineWidth] = [Math.sin(halfWidth), Math.cos(halfWidth)];
  const [sineHeight, cosineHeight] = [Math.sin(halfHeight), Math.cos(halfHeight)];
  const most = Math.sin(SUN_RADIUS_DEG * RAD);
  return (lens, altitudeDeg, azimuthDeg) => {
    const h = altitudeDeg * RAD;
    const a = (azimuthDeg - lens.azimuthDeg) * RAD;
    const tilt = lens.altitudeDeg * RAD;
    const roll = lens.rollDeg * RAD;
    const level = Math.cos(h) * Math.cos(a);
    // The sun's direction along the lens axis, to the right of it and above it, before the roll.
    const ahead = level * Math.cos(tilt) + Math.sin(h) * Math.sin(tilt);
    const right = Math.cos(h) * Math.sin(a);
    const up = Math.sin(h) * Math.cos(tilt) - level * Math.sin(tilt);
    const x = Math.abs(right * Math.cos(roll) - up * Math.sin(roll));
    const y = Math.abs(up * Math.cos(roll) + right * Math.sin(roll));
    // How far outside the planes through the lens and the edges of the sensor, as sines.
    const beyondSide = x * cosineWidth - ahead * sineWidth;
    const beyondTop = y * cosineHeight - ahead * sineHeight;
    return {
      fromAxisDeg: Math.acos(Math.min(1, Math.max(-1, ahead))) / RAD,
      inside: ahead > 0 && beyondSide <= most && beyondTop <= most,
    };
  };
}

/** Sidereal rate, arc seconds a second (IERS rotation rate, from memory). */
const SIDEREAL_ARCSEC_PER_S = 15.041067;
const ARCSEC = 3600 / RAD;

/**
 * How far a star trails on the sensor, near the middle of the picture; towards the corners of a wide lens more.
 * @param openS - shutter open, seconds
 * @param declinationDeg - of the star; 0 trails most
 * @param pixelPitchMm - width of a pixel
 * @returns pixels
 */
export const starTrailPx = (
  openS: number,
  declinationDeg: number,
  focalLengthMm: number,
  pixelPitchMm: number,
): number =>
  ((SIDEREAL_ARCSEC_PER_S * openS * Math.cos(declinationDeg * RAD)) / ARCSEC) *
  (focalLengthMm / pixelPitchMm);

/**
 * The declination in view that trails most: the one nearest to the celestial equator that the circle through the
 * corners of the picture takes in.
 * @returns degrees, at least 0
 */
export function leastDeclinationDeg(lens: Lens, latitudeDeg: number, camera: Plan['camera']): number {
  const [phi, h] = [latitudeDeg * RAD, lens.altitudeDeg * RAD];
  const sine = Math.sin(phi) * Math.sin(h) + Math.cos(phi) * Math.cos(h) * Math.cos(lens.azimuthDeg * RAD);
  const axisDeg = Math.abs(Math.asin(Math.min(1, Math.max(-1, sine)))) / RAD;
  return Math.max(0, axisDeg - cornerDeg(camera));
}
