/** Which view of the plan is on screen. It stands in the address, so that reload and back work. */
import { useSyncExternalStore } from 'react';
import { flushSync } from 'react-dom';

/** The views, in the order of their keys. */
export const SCREENS = [
  { id: 'plan', title: 'Plan' },
  { id: 'days', title: 'Days' },
  { id: 'sheet', title: 'Sheet' },
  { id: 'onset', title: 'On set' },
] as const;
export type Screen = (typeof SCREENS)[number]['id'];

export const screenNow = (): Screen => SCREENS.find(({ id }) => location.hash === `#${id}`)?.id ?? 'plan';

function subscribe(changed: () => void): () => void {
  addEventListener('hashchange', changed);
  return () => removeEventListener('hashchange', changed);
}

/** The view on screen. */
export const useScreen = (): Screen => useSyncExternalStore(subscribe, screenNow);

/** Goes to a view; it is on the page when this returns. */
export function showScreen(screen: Screen): void {
  location.hash = screen;
  flushSync(() => dispatchEvent(new Event('hashchange')));
}
