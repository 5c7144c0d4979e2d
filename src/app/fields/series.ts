/** Fields that go by the marks of a dial instead of even steps. */
import { APERTURE_SERIES, ISO_SERIES, SHUTTER_SERIES } from '../format/exposure.ts';

export { stepInSeries } from '../format/exposure.ts';

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
