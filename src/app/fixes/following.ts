/** Follows the plan: what there is to be worked out about it is asked for once typing pauses. */
import { paceOf } from '../../engine/pacing/pacing.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { currentPlan, planStore } from '../store/plan.ts';
import { afterPaint } from '../store/schedules.ts';
import { createAsking, type Hand } from './asking.ts';
import { fixStore, withNews } from './fixStore.ts';
import type { News, Wanted } from './work.ts';

/** How long typing has to pause, ms. */
export const PAUSE_MS = 150;

/**
 * Runs of more frames keep a processor busy for so long that it is missed where the page is drawn: typing has to pause
 * for longer, and an edit ends what is under way at once.
 */
const LONG_FRAMES = 10_000;
const LONG_PAUSE_MS = 700;

const worker = (): Hand =>
  new Worker(new URL('./fixes.worker.ts', import.meta.url), { type: 'module' }) as unknown as Hand;

const take = (plan: Plan, news: News) => fixStore.setState((state) => withNews(state, plan, news));

const asking = createAsking(worker, take, () => fixStore.setState({ failed: 'missing' }));

let following = false;
let wanted: ReadonlySet<Wanted> = new Set(['ways']);

function ask(): void {
  following = true;
  for (const what of wanted) asking.ask(currentPlan(), what);
}

let pause: ReturnType<typeof setTimeout> | undefined;

function changed(): void {
  const { taken, preview } = fixStore.getState();
  const plan = currentPlan();
  if ((taken && taken.plan !== plan) || preview) fixStore.setState({ taken: null, preview: null });
  clearTimeout(pause);
  const isLong = paceOf(plan).frames > LONG_FRAMES;
  if (isLong) asking.stop();
  pause = setTimeout(() => afterPaint(ask), isLong ? LONG_PAUSE_MS : PAUSE_MS);
}

const begin = () => following || ask();

/** Begins to follow. */
export function follow(): void {
  planStore.subscribe(({ plan }, before) => {
    if (plan !== before.plan) changed();
  });
  afterPaint(begin);
}

/** Works the ladder out as well, from now on, or no longer. */
export function wantLadder(wants: boolean): void {
  wanted = new Set<Wanted>(wants ? ['ladder', 'ways'] : ['ways']);
  if (wants && fixStore.getState().ladder?.plan !== currentPlan()) asking.ask(currentPlan(), 'ladder');
}
