/** A panel of charts as one SVG that stands alone: light colours on white, whatever the theme. */
import { cleanText } from '../../outputs/clean.ts';
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
const LEFT_OUT =
  'header, button:not(.reading-choice), input, .menu, .run-quantity, .key-layer, .cycle-choice, .chart-table, .vh, .chart-hidden';

const PADDING_PX = 16;
const LINE_PX = 18;
const TITLE_PX = 40;
/** Width of a letter of the caption, on average. */
const LETTER_PX = 6.6;

/** A copy of the panel in the colours of the light theme, laid out outside the window. */
function staged(panel: HTMLElement): { stage: HTMLElement; body: HTMLElement } {
  const stage = document.createElement('div');
  const body = panel.cloneNode(true) as HTMLElement;
  stage.setAttribute('data-theme', 'light');
  stage.inert = true;
  Object.assign(stage.style, {
    position: 'fixed',
    top: '0',
    left: '-20000px',
    width: `${panel.offsetWidth}px`,
    color: 'var(--ink)',
  });
  for (const part of body.querySelectorAll(LEFT_OUT)) part.remove();
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

/** Draws a panel that is on the page. */
export function panelSvg(panel: HTMLElement, words: Words): Picture {
  const { stage, body } = staged(panel);
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
