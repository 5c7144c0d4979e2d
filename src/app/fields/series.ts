/** Fields that go by the marks of a dial instead of even steps. */
import { APERTURE_THIRDS, ISO_THIRDS, markSeconds, SHUTTER_THIRDS } from '../../engine/exposure/stops.ts';

/** Marked shutter times in third stops, seconds, shortest first. */
const SHUTTER_SERIES: readonly number[] = SHUTTER_THIRDS.map(({ mark }) => markSeconds(mark)).reverse();

/** Marked f-numbers in third stops, widest first. */
const APERTURE_SERIES: readonly number[] = APERTURE_THIRDS.map(({ mark }) => Number(mark));

/** Marked ISO speeds in third stops, slowest first. */
const ISO_SERIES: readonly number[] = ISO_THIRDS.map(({ mark }) => Number(mark));

const SERIES: Readonly<Record<string, readonly number[]>> = {
  'exposure.shutterS': SHUTTER_SERIES,
  'exposure.apertureF': APERTURE_SERIES,
  'exposure.iso': ISO_SERIES,
  'light.meteredShutterS': SHUTTER_SERIES,
  'light.meteredApertureF': APERTURE_SERIES,
  'light.meteredIso': ISO_SERIES,
};

/** The marks that a field goes by, ascending; undefined if it goes by even steps. */
export const seriesOf = (path: string): readonly number[] | undefined => SERIES[path];

/** The member of an ascending series that lies `steps` places above a value. */
export function stepInSeries(series: readonly number[], value: number, steps: number): number {
  const near = (a: number, b: number) => Math.abs(a / b - 1) < 1e-3;
  const at = series.findIndex((member) => near(member, value));
  const above = series.findIndex((member) => member > value);
  const from =
    at >= 0 ? at : steps > 0 ? (above < 0 ? series.length : above) - 1 : above < 0 ? series.length : above;
  return series[Math.min(series.length - 1, Math.max(0, from + steps))] ?? value;
}
