/** A panel of charts as one SVG that stands alone: light colours on white, whatever the theme. */
import { cleanText } from '../../outputs/clean.ts';
import { othersOf, panelOf, shapesOf, widthOf } from './chart.ts';
import { drawnParts } from './htmlParts.ts';
import { element } from './svgParts.ts';

/** A picture and its size in pixels. */
export interface Picture {
  svg: string;
  width: number;
  height: number;
}

/** What stands above the drawing, and what it says to those who do not see it. */
export interface Words {
  title: string;
  caption: string;
  description: string;
}

/** What one presses, and what is only heard. */
const LEFT_OUT = [
  'header',
  // These stand for a figure, a name or a date.
  'button:not(.reading-choice, .how, .link:not(.more-days), [role=checkbox])',
  'input',
  '.menu',
  '.run-quantity, .key-layer, .cycle-choice, .chart-table, .seasons, .use, .pane-time, .tools-row, .saying',
  '.vh, .chart-hidden',
].join();

const PADDING_PX = 16;
const LINE_PX = 18;
const TITLE_PX = 40;
/** Width of a letter of the caption, on average. */
const LETTER_PX = 6.6;

/** Rows of a grid that scrolls and are not, as a whole, in sight. */
function* outOfSight(panel: HTMLElement): Generator<Element> {
  for (const grid of panel.querySelectorAll('[role=grid]')) {
    const { top, bottom } = grid.getBoundingClientRect();
    const head = grid.querySelector('[role=columnheader]')?.getBoundingClientRect().bottom ?? top;
    for (const row of grid.querySelectorAll('[role=row]:has([role=gridcell])')) {
      const box = row.getBoundingClientRect();
      if (box.top < head - 1 || box.bottom > bottom + 1) yield row;
    }
  }
}

/** A copy of a panel without some of its parts, and with shapes in place of pixels. */
function copied(panel: HTMLElement, without: ReadonlySet<Element>): HTMLElement {
  const body = panel.cloneNode(true) as HTMLElement;
  const copies = body.querySelectorAll('*');
  for (const [n, part] of panel.querySelectorAll('*').entries()) {
    const copy = copies[n];
    if (without.has(part)) copy?.remove();
    else if (part instanceof HTMLCanvasElement) copy?.replaceWith(shapesOf(part) ?? '');
  }
  for (const part of body.querySelectorAll(LEFT_OUT)) part.remove();
  // How tall all rows are, and how far those in sight are moved.
  for (const part of body.querySelectorAll('.rows, .layer')) part.removeAttribute('style');
  return body;
}

/** A copy of a chart in the colours of the light theme, laid out outside the window. */
function staged(chart: HTMLElement): { stage: HTMLElement; body: HTMLElement } {
  const panel = panelOf(chart);
  const stage = document.createElement('div');
  const body = copied(panel, new Set([...othersOf(chart), ...outOfSight(panel)]));
  // The rules of the rail are for what stands in it.
  stage.className = panel.closest('.rail') ? 'picture-stage rail' : 'picture-stage';
  stage.setAttribute('data-theme', 'light');
  stage.inert = true;
  stage.style.width = `${widthOf(panel)}px`;
  stage.append(body);
  return { stage, body };
}

/** Words in lines of at most so many letters; longer words are cut. */
function inLines(text: string, letters: number): string[] {
  const lines: string[] = [];
  for (const word of text
    .split(/\s+/)
    .flatMap((piece) => piece.match(new RegExp(`.{1,${letters}}`, 'gu')) ?? [])) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= letters)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** Title and caption. */
function heading({ title, caption }: Words, width: number): { parts: SVGElement[]; height: number } {
  const family = 'Atkinson Hyperlegible Next, system-ui, sans-serif';
  const lines = inLines(caption, Math.max(20, Math.floor((width - 2 * PADDING_PX) / LETTER_PX)));
  const at = { x: PADDING_PX, 'font-family': family };
  const parts = [
    element('text', { ...at, y: 28, 'font-size': 17, 'font-weight': 650, fill: '#1b2430' }, title),
    ...lines.map((line, n) =>
      element('text', { ...at, y: TITLE_PX + 10 + n * LINE_PX, 'font-size': 13, fill: '#55606e' }, line),
    ),
  ];
  return { parts, height: TITLE_PX + lines.length * LINE_PX + 8 };
}

/** Draws a chart that is on the page. */
export function panelSvg(chart: HTMLElement, words: Words): Picture {
  const { stage, body } = staged(chart);
  const clean: Words = {
    title: cleanText(words.title),
    caption: cleanText(words.caption),
    description: cleanText(words.description),
  };
  document.body.append(stage);
  try {
    const { left, top, width, height: bodyPx } = body.getBoundingClientRect();
    const head = heading(clean, width);
    const height = Math.ceil(head.height + bodyPx);
    const whole = element(
      'svg',
      { width, height, viewBox: `0 0 ${width} ${height}`, role: 'img' },
      element('title', {}, clean.title),
      element('desc', {}, `${clean.caption} ${clean.description}`),
      element('rect', { width, height, fill: '#fff' }),
      ...head.parts,
      ...drawnParts(body, { left, top: top - head.height }, cleanText),
    );
    return { svg: new XMLSerializer().serializeToString(whole), width, height };
  } finally {
    stage.remove();
  }
}
