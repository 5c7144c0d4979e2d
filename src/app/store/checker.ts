/**
 * The checker of plans and entries comes after the figures: what this very program kept needs none to be shown.
 * Whatever is typed before it is here waits for it, in its turn.
 */
import { setDraft } from './drafts.ts';

/** What the checker can do. */
export type Checks = typeof import('./checks.ts');

let present: Checks | null = null;
let coming: Promise<Checks> | null = null;

/**
 * The checker, fetched once; after a failure it is fetched anew.
 * @throws whatever the browser says if it cannot be fetched
 */
export function fetchChecks(): Promise<Checks> {
  coming ??= import('./checks.ts').then(
    (checks) => {
      present = checks;
      return checks;
    },
    (error) => {
      coming = null;
      throw error;
    },
  );
  return coming;
}

/**
 * The checker where it is here already: parts of the page that change the plan come with it (see `fetched.tsx`).
 * @throws Error if it is not
 */
export function checksNow(): Checks {
  if (!present) throw new Error('the checker has not come yet');
  return present;
}

/**
 * Does something with the checker: at once if it is here, else as soon as it has come, in the order of asking.
 * @param missing - what is done instead if it cannot be fetched
 */
export function withChecks(work: (checks: Checks) => void, missing: () => void = () => {}): void {
  if (present) work(present);
  else void fetchChecks().then(work, missing);
}

/**
 * Keeps what was typed into a field of the plan, and puts it into the plan.
 * @param take - puts it there, and gives why it does not fit, or null
 */
export function takeTyped(name: string, text: string, take: (checks: Checks) => string | null): void {
  setDraft(name, { text, error: null });
  withChecks(
    (checks) => setDraft(name, { text, error: take(checks) }),
    () => setDraft(name, { text, error: 'Not taken: a part of the page could not be fetched.' }),
  );
}
