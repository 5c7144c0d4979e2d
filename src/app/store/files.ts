/** Plans in and out: files, new ones. */

import defaultPlan from 'virtual:plan/default';
import type { Plan } from '../../engine/plan/schema.ts';
import { serialisePlan } from '../../engine/plan/serialise.ts';
import { fileStem } from '../../outputs/file-name.ts';
import { bytesText } from '../format/bytes.ts';
import { fetchChecks } from './checker.ts';
import { openPlan, showFaults, showPartMissing } from './opening.ts';
import { currentPlan } from './plan.ts';
import { showDialog } from './view.ts';

/** Files of many plans on their way to the list of plans. */
let arriving: File[] = [];

/** Hands those files over, once. */
export function takeArriving(): File[] {
  const files = arriving;
  arriving = [];
  return files;
}

const MANY_PLANS = /^\s*\{\s*"format":\s*"escapement-plans"/;

/** Opens the text of a plan file; if it is at fault, says so and changes nothing. */
export async function openText(fileName: string, text: string): Promise<void> {
  const checks = await fetchChecks().catch(() => null);
  if (!checks) {
    return showPartMissing(fileName);
  }
  const read = checks.parsePlan(text);
  if (read.ok) openPlan(read.plan);
  else showFaults(fileName, read.faults);
}

// A plan of a million characters is read in a blink; a film dropped by mistake must not fill the memory.
const LARGEST_FILE_BYTES = 16_000_000;

/** Opens a plan file that was picked or dropped. */
export async function openFile(file: File): Promise<void> {
  if (file.size > LARGEST_FILE_BYTES) {
    showFaults(file.name, [
      { path: '', found: bytesText(file.size), allowed: `at most ${bytesText(LARGEST_FILE_BYTES)}` },
    ]);
    return;
  }
  const text = await file.text();
  if (!MANY_PLANS.test(text)) return openText(file.name, text);
  arriving.push(file);
  showDialog('plans');
}

/** Name of the plan's file: the same stem as the prompt's outputs have. */
export const fileNameOf = (title: string): string => `${fileStem(title)}.json`;

/** Hands text over as a file; a long one in pieces. */
export function handOver(
  fileName: string,
  text: string | readonly BlobPart[],
  type = 'application/json',
): void {
  const url = URL.createObjectURL(new Blob(typeof text === 'string' ? [text] : [...text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = fileName;
  link.click();
  URL.revokeObjectURL(url);
}

/** Hands the present plan over as a file. */
export function saveFile(): void {
  const plan = currentPlan();
  handOver(fileNameOf(plan.title), serialisePlan(plan));
}

const two = (value: number) => String(value).padStart(2, '0');

/** A new plan of an event and a clip, on the day and in the zone of this browser. */
export function planFor(eventS: number, clipLengthS: number, now = new Date()): Plan {
  const date = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  return {
    ...defaultPlan,
    pacing: { ...defaultPlan.pacing, workedOut: 'interval', eventS, clipLengthS },
    start: { ...defaultPlan.start, date },
    place: { ...defaultPlan.place, zone: Intl.DateTimeFormat().resolvedOptions().timeZone ?? 'Etc/UTC' },
  };
}
