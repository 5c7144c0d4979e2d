/** Draws a run sheet for paper. */
import type { RunSheet } from '../../outputs/run-sheet/types.ts';
import { make } from './make.ts';
import { bring, changes, clock, labelled, rigTables, work } from './runSheetTables.ts';

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

function opening({ title, facts, sentence, verdict, notes }: RunSheet): HTMLElement {
  const line = make('p', 'p-facts');
  for (const [f, fact] of facts.entries()) line.append(f > 0 ? ' \u00B7 ' : '', make('span', null, fact));
  const said = [sentence, verdict, notes].filter((text) => text !== '');
  return make(
    'header',
    null,
    make('h1', null, title, make('small', null, 'Run sheet')),
    line,
    ...said.map((text, i) => make('p', i === 0 ? 'p-remark p-sentence' : 'p-remark', text)),
  );
}

/** The clock beside what to bring and to set; without a clock these two side by side. */
function columns(sheet: RunSheet): HTMLElement {
  const toBring = part('Bring', 'p-part', bring(sheet.bring));
  const toSet = part('Set before the start', 'p-part', labelled(sheet.dials));
  const toDo = part('Clock', 'p-part', clock(sheet));
  const sides = toDo.length > 0 ? [toDo, [...toBring, ...toSet]] : [toBring, toSet];
  return make('div', 'p-cols', ...sides.map((side) => make('div', null, ...side)));
}

/** The whole sheet. */
export function drawRunSheet(sheet: RunSheet, chart: SVGSVGElement | null): HTMLElement {
  const grouped = sheet.changesGrouped ? ' (those by the camera in stretches)' : '';
  const article = make(
    'article',
    'print-sheet run-sheet',
    opening(sheet),
    ...part('The run', 'p-part p-drawn', chart),
    ...part('Days', 'p-part', work(sheet)),
    ...part('Shots', 'p-part', labelled(sheet.shots)),
    columns(sheet),
    ...part(`Changes of the exposure${grouped}`, 'p-part', changes(sheet)),
    ...part('Rig at the keyframes', 'p-part', ...(sheet.rig ? rigTables(sheet.rig) : [])),
    ...part('Sun and moon', 'p-part', labelled(sheet.sun)),
    ...part('To know', 'p-part', findings(sheet)),
    ...part('Cautions', 'p-part', list('p-cautions', sheet.cautions)),
  );
  article.setAttribute('aria-label', runSheetName(sheet));
  return article;
}
