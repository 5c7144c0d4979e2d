/**
 * Puts the sheet on paper. By the button or its keys it is drawn in slices before the browser prints; by the browser's
 * own menu at once.
 */
import { createStore } from 'zustand/vanilla';
import { sheetedNow } from '../sheet/sheeted.ts';
import { currentPlan } from '../store/plan.ts';
import { hold, workedOut } from '../store/schedules.ts';
import { documentName, type PrintDocument } from './document.ts';
import { drawDocument } from './draw.ts';
import {
  exposureDocument,
  nextDayRange,
  nextShotRange,
  type PrintRange,
  rangeText,
  wholeSheet,
} from './exposureDocument.ts';
import { pagesOf } from './fit.ts';
import { frameDocument } from './frameDocument.ts';
import { type Drawn, printNow, printsInstead } from './paper.ts';
import { atOnce, inSlices } from './slices.ts';

/** More pages than this, and one is asked first. */
const MOST_UNASKED = 50;

/** Something that can be printed, with its pages. */
export interface PrintChoice {
  text: string;
  pages: number;
  document: PrintDocument;
}

interface Printing {
  /** What there is to choose from while one is asked; null if nothing is. */
  asked: readonly PrintChoice[] | null;
  /** Pages that are being drawn; 0 if none are. */
  drawing: number;
}

export const printingStore = createStore<Printing>(() => ({ asked: null, drawing: 0 }));

function choice(text: string, document: PrintDocument): PrintChoice {
  return { text, pages: pagesOf(document), document };
}

function exposureChoices(): PrintChoice[] {
  const of = sheetedNow();
  const { schedule } = workedOut(of.plan);
  const part = (name: string, range: PrintRange | null) =>
    range ? [choice(`${name}, ${rangeText(range)}`, exposureDocument(of, schedule, range))] : [];
  const whole = choice('All of it', exposureDocument(of, schedule, wholeSheet(of)));
  if (whole.pages <= MOST_UNASKED) return [whole];
  return [...part('Next day of work', nextDayRange(of)), ...part('Next shot', nextShotRange(of)), whole];
}

function frameChoices(): PrintChoice[] {
  const { plan, schedule } = workedOut(currentPlan());
  hold('print', schedule);
  return [choice('All of it', frameDocument(plan, schedule))];
}

/** What can be printed of the present plan, the shortest that makes sense first. */
const choices = (): PrintChoice[] =>
  currentPlan().technique === 'stopMotion' ? exposureChoices() : frameChoices();

/** Draws a document and prints it. */
export async function printChoice({ pages, document: of }: PrintChoice): Promise<void> {
  printingStore.setState({ asked: null, drawing: pages });
  const plan = currentPlan();
  const drawn = await inSlices(drawDocument(of));
  printingStore.setState({ drawing: 0 });
  // Edited meanwhile: what was asked for is out of date.
  if (currentPlan() !== plan) return;
  printNow(drawn, documentName(of));
}

/** Prints the sheet; asks first if it is long. */
export function openPrint(): void {
  const { asked, drawing } = printingStore.getState();
  if (asked || drawing > 0) return;
  const all = choices();
  const [only] = all;
  if (only && all.length === 1 && only.pages <= MOST_UNASKED) void printChoice(only);
  else printingStore.setState({ asked: all });
}

export const dropAsk = (): void => printingStore.setState({ asked: null });

/** Draws the first choice at once, for the browser's own menu. */
function firstChoice(): Drawn | null {
  const [first] = choices();
  return first ? { drawn: atOnce(drawDocument(first.document)), name: documentName(first.document) } : null;
}

/** Prints the sheet instead of the page from now on. @returns how to end that */
export const printsSheet = (): (() => void) => printsInstead(firstChoice, openPrint);
