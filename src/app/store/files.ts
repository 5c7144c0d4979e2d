/** Plans in and out: files, demos, new ones. */

import defaultPlan from 'virtual:plan/default';
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Fault } from '../../engine/plan/fault.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { serialisePlan } from '../../engine/plan/serialise.ts';
import { fileStem } from '../../outputs/file-name.ts';
import { bytesText } from '../format/bytes.ts';
import { fetchChecks } from './checker.ts';
import { enter, entered } from './entries.ts';
import { currentPlan, replacePlan } from './plan.ts';
import { resetView, showDialog } from './view.ts';

interface Demo {
  name: string;
  title: string;
  about: string;
  /** Its plan, checked by the build. */
  ready: () => Promise<{ default: Plan }>;
}

/** The demo that the page opens on. */
export const FIRST_DEMO: Demo = {
  name: 'harbour-at-dusk',
  title: 'Harbour at dusk',
  about: 'Outdoor time-lapse, boom and pan',
  ready: () => import('virtual:plan/harbour-at-dusk'),
};

/** Invented plans that come with the page. */
export const DEMOS: readonly Demo[] = [
  FIRST_DEMO,
  {
    name: 'loaf-proving',
    title: 'Loaf proving',
    about: 'Indoor time-lapse, slow slide',
    ready: () => import('virtual:plan/loaf-proving'),
  },
  {
    name: 'clay-snail',
    title: 'Clay snail',
    about: 'Stop-motion on twos',
    ready: () => import('virtual:plan/clay-snail'),
  },
];

/** The demo of that name. */
export const demoOf = (name: string | null): Demo | undefined => DEMOS.find((demo) => demo.name === name);

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

/** Shows another plan, seen from its beginning. It is kept in a place of its own; an undo leads back. */
export function openPlan(plan: Plan): void {
  resetView();
  replacePlan(entered(plan));
}

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
    const allowed = 'the whole page, to check the file with: reload it while there is a network';
    return showFaults(fileName, [{ path: '', found: 'a page of which a part is missing', allowed }]);
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

/** The plan of a demo, or null if it cannot be had. */
export async function demoPlan(demo: Demo | undefined): Promise<Plan | null> {
  const ready = await demo?.ready().catch(() => null);
  if (!demo || !ready) return null;
  // A copy: opened twice, it is two plans.
  const plan = { ...ready.default };
  return enter(plan, { demo: { name: demo.name, plan } });
}

/** Opens a demo plan. */
export async function openDemo(name: string): Promise<void> {
  const plan = await demoPlan(demoOf(name));
  if (plan) openPlan(plan);
  else
    showFaults(`${name}.json`, [
      { path: '', found: 'no such file', allowed: 'a demo that comes with the page' },
    ]);
}

/** Name of the plan's file: the same stem as the prompt's outputs have. */
export const fileNameOf = (title: string): string => `${fileStem(title)}.json`;

/** Hands text over as a file; a long one in pieces. */
export function handOver(
  fileName: string,
  text: string | readonly string[],
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
