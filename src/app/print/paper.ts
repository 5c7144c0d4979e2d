/**
 * Paper instead of the page: what is printed is drawn beside the page and shown in print only, in place of it.
 */

/** Something drawn for paper, and what it is called. */
export interface Drawn {
  drawn: HTMLElement;
  name: string;
}

let sheet: HTMLElement | null = null;
/** Drawn already for what the browser is about to print. */
let ready = false;
let titleBefore: string | null = null;

const CLASS = 'prints-sheet';

function put({ drawn, name }: Drawn): void {
  takeAway();
  sheet = drawn;
  document.body.append(drawn);
  document.documentElement.classList.add(CLASS);
  document.documentElement.style.setProperty('--print-title', JSON.stringify(name));
  // Names the file that one prints to, and the pages where a browser has its own heads.
  titleBefore = document.title;
  document.title = name;
}

function restoreTitle(): void {
  if (titleBefore !== null) document.title = titleBefore;
  titleBefore = null;
}

/** Takes what was drawn out of the page. */
export function takeAway(): void {
  restoreTitle();
  sheet?.remove();
  sheet = null;
  ready = false;
  document.documentElement.classList.remove(CLASS);
}

/** CSS pixels of a millimetre (CSS Values and Units 3, section 6.2). */
const PX_A_MM = 96 / 25.4;

/** How tall something drawn for paper gets on one endless page, millimetres. */
export function heightMm(drawn: HTMLElement): number {
  drawn.classList.add('measured');
  document.body.append(drawn);
  const { height } = drawn.getBoundingClientRect();
  drawn.remove();
  drawn.classList.remove('measured');
  return height / PX_A_MM;
}

/** Prints what has been drawn. */
export function printNow(drawn: HTMLElement, name: string): void {
  put({ drawn, name });
  ready = true;
  print();
}

const isPrintKey = ({ key, ctrlKey, metaKey, altKey, shiftKey }: KeyboardEvent): boolean =>
  key.toLowerCase() === 'p' && (ctrlKey || metaKey) && !altKey && !shiftKey;

/**
 * Prints something else instead of the page from now on.
 * @param draw - draws it at once, for the browser's own menu; null for nothing
 * @param open - prints it by the keys
 * @returns how to end that
 */
export function printsInstead(draw: () => Drawn | null, open: () => void): () => void {
  const beforePrint = () => {
    if (ready) return;
    const drawn = draw();
    if (drawn) put(drawn);
  };
  const afterPrint = () => {
    ready = false;
    restoreTitle();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (!isPrintKey(event)) return;
    event.preventDefault();
    open();
  };
  addEventListener('beforeprint', beforePrint);
  addEventListener('afterprint', afterPrint);
  addEventListener('keydown', onKeyDown);
  return () => {
    removeEventListener('beforeprint', beforePrint);
    removeEventListener('afterprint', afterPrint);
    removeEventListener('keydown', onKeyDown);
    takeAway();
  };
}
