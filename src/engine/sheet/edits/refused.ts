/** What an edit cannot do: where, what was asked, what is allowed. Nothing has been changed then. */
import { type Fault, faultSentence } from '../../plan/fault.ts';

export class Refused extends RangeError {
  readonly fault: Fault;

  constructor(fault: Fault) {
    super(faultSentence(fault));
    this.name = 'Refused';
    this.fault = fault;
  }
}

/** @throws Refused unless a number is whole and within a range, both ends included */
export function wholeWithin(path: string, value: number, least: number, most: number): number {
  if (Number.isInteger(value) && value >= least && value <= most) return value;
  const allowed = most < least ? 'none, since there is none' : `a whole number from ${least} to ${most}`;
  throw new Refused({ path, found: String(value), allowed });
}

/** @throws Refused if a list would be longer than a plan file may have it */
export function listWithin<T>(path: string, list: T[], most: number): T[] {
  if (list.length <= most) return list;
  throw new Refused({ path, found: `a list of ${list.length}`, allowed: `a list of at most ${most}` });
}

/** @throws Refused if a text would be longer than a plan file may have it */
export function textWithin(path: string, text: string, most: number): string {
  if (text.length <= most) return text;
  throw new Refused({
    path,
    found: `${text.length} characters`,
    allowed: `text of at most ${most} characters`,
  });
}
