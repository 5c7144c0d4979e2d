/**
 * Exposure values.
 *
 * Source: Exif 2.x Annex C (APEX) for Av, Tv, Sv, from memory; EV = log2(N^2/t), Ray, The Manual of
 * Photography, 2000, p. 318. The speed constant is 3.125 so that ISO 100 is exactly Sv 5.
 */

/** Aperture value of an f-number: f/8 is 6. */
export const apexAv = (fNumber: number): number => 2 * Math.log2(fNumber);

/** Time value of a shutter time in seconds: 1/64 s is 6. */
export const apexTv = (shutterS: number): number => -Math.log2(shutterS);

/** Speed value of an ISO speed: ISO 100 is 5. */
export const apexSv = (iso: number): number => Math.log2(iso / 3.125);

/** Exposure value of the settings, whatever the ISO: f/1 at 1 s is 0. */
export const ev = (fNumber: number, shutterS: number): number => apexAv(fNumber) + apexTv(shutterS);

/** Exposure value at ISO 100 of a scene that the settings expose rightly. */
export const ev100 = (fNumber: number, shutterS: number, iso: number): number =>
  ev(fNumber, shutterS) - Math.log2(iso / 100);
