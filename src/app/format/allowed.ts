/** What a field takes, in words. */
import type { FieldInfo } from '../../engine/plan/faults.ts';
import { withUnit } from './numbers.ts';

/** One way of showing and reading a number. */
export interface Codec {
  /** What stands in the field, without the unit beside it. */
  text(value: number): string;
  /** The unit beside the field's text. */
  unit(value: number): string;
  /** The value of a text, or null. `present` is the value that stands now. */
  read(text: string, present: number): number | null;
  /** What the text should be, e.g. `a length of time`. */
  kind: string;
}

/** A value with its unit, e.g. for 'allowed: 0 s to 10 min'. */
export const fullText = (codec: Codec, value: number): string =>
  withUnit(codec.text(value), codec.unit(value));

/** What a number field takes, in the units that the field shows. */
export function allowedText(info: FieldInfo, codec: Codec): string {
  const { minimum = 0, maximum = 0 } = info;
  const range = `${fullText(codec, minimum)} to ${fullText(codec, maximum)}`;
  const kind = info.whole ? 'whole numbers from ' : '';
  return `Allowed: ${kind}${range}${info.optional ? ', or nothing' : ''}.`;
}
