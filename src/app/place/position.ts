/** A position on the earth in words. */
import { numberText } from '../format/numbers.ts';

/** Where on the earth: north and east positive, WGS 84. */
export interface Position {
  latitudeDeg: number;
  longitudeDeg: number;
}

const side = (degrees: number, positive: string, negative: string): string =>
  `${numberText(Math.abs(degrees))}° ${degrees < 0 ? negative : positive}`;

/** `43.3° N, 6.4° E`, which can be read again. */
export const positionText = ({ latitudeDeg, longitudeDeg }: Position): string =>
  `${side(latitudeDeg, 'N', 'S')}, ${side(longitudeDeg, 'E', 'W')}`;

function sixtieths(degrees: number, positive: string, negative: string): string {
  const tenths = Math.round(Math.abs(degrees) * 36_000);
  const minutes = Math.floor(tenths / 600);
  const seconds = numberText((tenths % 600) / 10);
  return `${Math.floor(minutes / 60)}° ${minutes % 60}′ ${seconds}″ ${degrees < 0 ? negative : positive}`;
}

/** `43° 18′ 0″ N, 6° 24′ 0″ E`, to a tenth of a second. */
export const sixtiethsText = ({ latitudeDeg, longitudeDeg }: Position): string =>
  `${sixtieths(latitudeDeg, 'N', 'S')}, ${sixtieths(longitudeDeg, 'E', 'W')}`;

/** Ten centimetres on the ground; the binary dust of sixtieths goes. */
export const rounded = (degrees: number, decimals = 6): number => Number(degrees.toFixed(decimals));
