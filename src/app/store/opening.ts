/** What is opened: demos, other plans, and what could not be opened. */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Fault } from '../../engine/plan/fault.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { enter, entered } from './entries.ts';
import { replacePlan } from './plan.ts';
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

/** Says why something was not opened. */
export function showFaults(fileName: string, faults: readonly Fault[]): void {
  unreadStore.setState({ unread: { fileName, faults } });
  showDialog('faults');
}

/** Shows another plan, seen from its beginning. It is kept in a place of its own; an undo leads back. */
export function openPlan(plan: Plan): void {
  resetView();
  replacePlan(entered(plan));
}

/** Says that what reads it could not be fetched. */
export const showPartMissing = (fileName: string): void =>
  showFaults(fileName, [
    {
      path: '',
      found: 'a page of which a part is missing',
      allowed: 'the whole page, to check the plan with: reload it while there is a network',
    },
  ]);

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
