/** Plans in and out: files, demos, new ones. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Fault } from '../../engine/plan/faults.ts';
import { defaultPlan, parsePlan, serialisePlan } from '../../engine/plan/parse.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { fileStem } from '../../outputs/file-name.ts';
import { bytesText } from '../format/bytes.ts';
import { currentPlan, replacePlan } from './plan.ts';
import { resetView, showDialog } from './view.ts';

/** Invented plans that come with the page. */
export const DEMOS = [
  { name: 'harbour-at-dusk', title: 'Harbour at dusk', about: 'Outdoor time-lapse, boom and pan' },
  { name: 'loaf-proving', title: 'Loaf proving', about: 'Indoor time-lapse, slow slide' },
  { name: 'clay-snail', title: 'Clay snail', about: 'Stop-motion on twos' },
] as const;

/** A file that could not be read. */
export interface Unread {
  fileName: string;
  faults: readonly Fault[];
}

const unreadStore = createStore<{ unread: Unread | null }>(() => ({ unread: null }));
export const useUnread = (): Unread | null => useStore(unreadStore, (state) => state.unread);

function showFaults(fileName: string, faults: readonly Fault[]): void {
  unreadStore.setState({ unread: { fileName, faults } });
  showDialog('faults');
}

/** Puts another plan in place of the present one, seen from its beginning. */
export function openPlan(plan: Plan): void {
  resetView();
  replacePlan(plan);
}

/** Opens the text of a plan file; if it is at fault, says so and changes nothing. */
export function openText(fileName: string, text: string): void {
  const read = parsePlan(text);
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
  openText(file.name, await file.text());
}

/** Text of a demo plan, or null if it cannot be had. */
export async function demoText(name: string): Promise<string | null> {
  if (!DEMOS.some((demo) => demo.name === name)) return null;
  const answer = await fetch(`./examples/${name}.json`).catch(() => null);
  return answer?.ok ? answer.text() : null;
}

/** Opens a demo plan. */
export async function openDemo(name: string): Promise<void> {
  const text = await demoText(name);
  if (text !== null) openText(`${name}.json`, text);
  else
    showFaults(`${name}.json`, [
      { path: '', found: 'no such file', allowed: 'a demo that comes with the page' },
    ]);
}

/** Name of the plan's file: the same stem as the prompt's outputs have. */
export const fileNameOf = (title: string): string => `${fileStem(title)}.json`;

/** Hands the present plan over as a file. */
export function saveFile(): void {
  const plan = currentPlan();
  const url = URL.createObjectURL(new Blob([serialisePlan(plan)], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = fileNameOf(plan.title);
  link.click();
  URL.revokeObjectURL(url);
}

const two = (value: number) => String(value).padStart(2, '0');

/** A new plan of an event and a clip, on the day and in the zone of this browser. */
export function planFor(eventS: number, clipLengthS: number, now = new Date()): Plan {
  const plan = defaultPlan();
  const date = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  return {
    ...plan,
    pacing: { ...plan.pacing, workedOut: 'interval', eventS, clipLengthS },
    start: { ...plan.start, date },
    place: { ...plan.place, zone: Intl.DateTimeFormat().resolvedOptions().timeZone ?? 'Etc/UTC' },
  };
}
