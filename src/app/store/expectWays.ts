/** Fetches what looks for ways out of findings, once somebody is here. */
import { NoWays } from '../fixes/NoWays.tsx';
import { laterStore } from './later.ts';

const fetchWays = (): Promise<void> =>
  import('../fixes/wayParts.tsx').then(
    ({ WAY_PARTS }) => laterStore.setState(WAY_PARTS),
    () => laterStore.setState({ Head: NoWays }),
  );

/** A page that is only opened does not fetch them, and a second engine: they come with the first sign of somebody, or after this. */
const NOBODY_MS = 3000;
const SIGNS = ['pointermove', 'pointerdown', 'keydown', 'wheel', 'scroll'] as const;

function onceSomebodyIsHere(work: () => void): void {
  const done = new AbortController();
  const start = () => {
    done.abort();
    clearTimeout(late);
    work();
  };
  const late = setTimeout(start, NOBODY_MS);
  for (const sign of SIGNS)
    addEventListener(sign, start, { signal: done.signal, passive: true, capture: true });
}

/** Fetches them once somebody is here. */
export const expectWays = (): void => onceSomebodyIsHere(() => void fetchWays());
