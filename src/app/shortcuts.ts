/** Keys and drops that count anywhere on the page. */
import { singleKeysOn } from './singleKeys.ts';
import { draftAt, setDraft } from './store/drafts.ts';
import { openFile, saveFile } from './store/files.ts';
import { goTo } from './store/goTo.ts';
import { inGesture, redo, undo } from './store/plan.ts';
import { screenNow } from './store/screen.ts';
import { showDialog } from './store/view.ts';

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.matches('input:not([type=checkbox]), textarea, select');

/** Text that could not be used goes first; what came into the plan is undone. */
function undoHere(): void {
  const path = document.activeElement?.getAttribute('data-path') ?? '';
  if (draftAt(path)?.error && !inGesture(path)) setDraft(path, null);
  else undo();
}

function goToNeighbour(step: 1 | -1): void {
  const all = [...document.querySelectorAll<HTMLElement>('[id^=finding-]')];
  const at = all.indexOf(document.activeElement as HTMLElement);
  const next = all[at < 0 ? (step > 0 ? 0 : all.length - 1) : (at + step + all.length) % all.length];
  if (next) goTo(next.id);
}

/** Goes to a view as its tab would, and leaves the focus there: what had it is no longer on screen. */
function goToView(place: number): void {
  const tab = document.querySelectorAll<HTMLElement>('.views a')[place];
  tab?.focus({ preventScroll: true });
  tab?.click();
}

/** Prints the run sheet of the plan; without a network the page as it is. */
const printPlan = (): void =>
  void import('./print/runSheetPrint.ts').then(
    (part) => part.printRunSheet(),
    () => print(),
  );

function onKeyDown(event: KeyboardEvent): void {
  if (document.querySelector('dialog[open]')) return;
  const key = event.key.toLowerCase();
  // AltGr, which some keyboards need for a bracket, comes as Ctrl with Alt.
  const altGraph = event.getModifierState('AltGraph');
  const commands: Record<string, () => void> =
    (event.ctrlKey || event.metaKey) && !altGraph
      ? {
          z: event.shiftKey ? redo : undoHere,
          y: redo,
          s: saveFile,
          ...(screenNow() === 'plan' && !event.shiftKey && { p: printPlan }),
          o: () => document.querySelector<HTMLInputElement>('input[type=file]')?.click(),
        }
      : !singleKeysOn() || isTyping(event.target) || (event.altKey && !altGraph)
        ? {}
        : {
            '[': () => goToNeighbour(-1),
            ']': () => goToNeighbour(1),
            c: () => showDialog('compare'),
            1: () => goToView(0),
            2: () => goToView(1),
            3: () => goToView(2),
            4: () => goToView(3),
            p: () => showDialog('plans'),
          };
  const command = commands[key];
  if (!command) return;
  event.preventDefault();
  command();
}

/** Files only: text that is dragged into a field is the browser's business. */
function onDrop(event: DragEvent): void {
  const [file] = event.dataTransfer?.files ?? [];
  if (!file) return;
  event.preventDefault();
  void openFile(file);
}

function onDragOver(event: DragEvent): void {
  if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
}

/**
 * From now on keys count anywhere on the page, and a plan file dropped on it is opened.
 * @param early - keys pressed before
 */
export function listenEverywhere(early: readonly KeyboardEvent[]): void {
  early.forEach(onKeyDown);
  document.addEventListener('keydown', onKeyDown);
  document.addEventListener('dragover', onDragOver);
  document.addEventListener('drop', onDrop);
}
