/** Going somewhere on the page: to a field of a section, to a finding, to the run. */
import { flushSync } from 'react-dom';
import { showScreen } from './screen.ts';
import { type SectionId, setCursor, setCycleFrame, setOpen } from './view.ts';

const still = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

/** Brings an element into view and gives it the focus. What is on no view but the plan's is shown there. */
export function goTo(id: string, focus = true): void {
  const element = document.getElementById(id);
  if (element?.offsetParent === null) showScreen('plan');
  element?.scrollIntoView({ block: 'center', behavior: still() ? 'auto' : 'smooth' });
  if (focus) element?.focus({ preventScroll: true });
}

/** Opens a section and goes to one of its fields. */
export function goToField(section: SectionId, id: string): void {
  flushSync(() => setOpen(section, true));
  goTo(id);
}

/** Moves run cursor and cycle to a frame, counted from 1, and shows the run. */
export function goToFrame(frame: number): void {
  setCursor(frame - 1);
  setCycleFrame(frame - 1);
  goTo('run', false);
}
