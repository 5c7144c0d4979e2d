/**
 * A second model of daylight and moonlight: USNO Circular 171 (Janiczek and DeYoung 1987), written from its formulas
 * as transcribed in bluegreen-labs/skylight. It knows nothing of the engine.
 */

const RAD = Math.PI / 180;

/** Air mass of a layer, apparent altitude in degrees. */
function airMass(altitudeDeg: number, x: number): number {
  const h = altitudeDeg * RAD;
  const s = Math.asin((x * Math.cos(h)) / (x + 1));
  return x * (Math.cos(s) - Math.sin(h)) + Math.cos(s);
}

function sky(altitudeDeg: number): number {
  const m = airMass(altitudeDeg, 753.66156);
  const sine = Math.sin(altitudeDeg * RAD);
  const direct = Math.exp(-0.21 * m) * sine;
  return direct + 0.0289 * Math.exp(-0.042 * m) * (1 + ((altitudeDeg + 90) * sine) / 57.29577951);
}

/** Illuminance by the sun at an apparent altitude, lux, without night sky. */
export const circularSunLux = (apparentDeg: number): number => 133_775 * sky(apparentDeg);

/** What the Circular adds for the night sky, lux. */
export const CIRCULAR_NIGHT_LUX = 0.0005;
