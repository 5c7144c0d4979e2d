/** Draws a run sheet for paper. */
import type { RunSheet } from '../../outputs/run-sheet/types.ts';
import { make } from './make.ts';
import { bring, changes, clock, labelled, left, rigTables, work } from './runSheetTables.ts';

/** Name of the paper, and of a file that it is printed to. */
export const runSheetName = ({ title }: Pick<RunSheet, 'title'>): string => `${title}: run sheet`;

/** A part with its heading; nothing if it has no content. */
function part(heading: string, className: string, ...content: (Node | null)[]): HTMLElement[] {
  const there = content.filter((node) => node !== null);
  return there.length === 0 ? [] : [make('section', className, make('h2', null, heading), ...there)];
}

const list = (className: string | null, items: readonly (Node | string)[]): HTMLElement | null =>
  items.length === 0 ? null : make('ul', className, ...items.map((item) => make('li', null, item)));

const SEVERITY: Readonly<Record<string, string>> = { stop: 'STOP', warning: 'Warning', note: 'Note' };

function findings({ findings: lines }: RunSheet): HTMLElement | null {
  const items = lines.map(({ severity, text }) =>
    make('span', null, make('b', null, `${SEVERITY[severity] ?? severity}: `), text),
  );
  return list(null, items);
}

function opening(sheet: RunSheet): HTMLElement {
  const { title, facts, sentence, verdict, notes } = sheet;
  const line = make('p', 'p-facts');
  for (const [f, fact] of facts.entries()) line.append(f > 0 ? ' \u00B7 ' : '', make('span', null, fact));
  const said = [sentence, verdict, notes].filter((text) => text !== '');
  return make(
    'header',
    null,
    make('h1', null, title, make('small', null, 'Run sheet')),
    line,
    ...said.map((text, i) => make('p', i === 0 ? 'p-remark p-sentence' : 'p-remark', text)),
    ...left(sheet, 'notes'),
  );
}

const sideBySide = (...sides: HTMLElement[][]): HTMLElement =>
  make('div', 'p-cols', ...sides.map((side) => make('div', null, ...side)));

/** In two columns where the sheet is dense. */
const two = (table: Node | null): Node | null => table && make('div', 'p-two', table);

/** The clock beside what to bring and to set; a long one below. Without a clock these two are side by side. */
function dayOf(sheet: RunSheet, dense: boolean): HTMLElement[] {
  const toBring = part('Bring', 'p-part', bring(sheet.bring));
  const toSet = part('Set before the start', 'p-part', labelled(sheet.dials));
  const table = clock(sheet);
  const toDo = part('Clock', 'p-part', dense ? two(table) : table, ...left(sheet, 'moments', 'sky'));
  if (toDo.length === 0) return [sideBySide(toBring, toSet)];
  return dense ? [sideBySide(toBring, toSet), ...toDo] : [sideBySide(toDo, [...toBring, ...toSet])];
}

/**
 * The whole sheet.
 * @param dense - in small type, and in two columns what is long
 */
export function drawRunSheet(sheet: RunSheet, chart: SVGSVGElement | null, dense = false): HTMLElement {
  const grouped = sheet.changesGrouped ? ' (those by the camera in stretches)' : '';
  const article = make(
    'article',
    dense ? 'print-sheet run-sheet p-dense' : 'print-sheet run-sheet',
    opening(sheet),
    ...part('The run', 'p-part p-drawn', chart),
    ...part('Days', 'p-part', work(sheet), ...left(sheet, 'days')),
    ...part('Shots', 'p-part', labelled(sheet.shots), ...left(sheet, 'shots')),
    ...dayOf(sheet, dense),
    ...part(
      `Changes of the exposure${grouped}`,
      'p-part',
      two(changes(sheet, dense)),
      ...left(sheet, 'changes'),
    ),
    ...part('Rig at the keyframes', 'p-part', ...rigTables(sheet, dense), ...left(sheet, 'keyframes')),
    ...part('Sun and moon', 'p-part', labelled(sheet.sun), ...left(sheet, 'sun')),
    ...part('To know', 'p-part', findings(sheet), ...left(sheet, 'findings')),
    ...part('Cautions', 'p-part', list('p-cautions', sheet.cautions)),
  );
  article.setAttribute('aria-label', runSheetName(sheet));
  return article;
}
