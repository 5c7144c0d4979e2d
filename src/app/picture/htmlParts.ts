/** Text, boxes and rules that stand around a drawing on the page, as SVG. */
import { element, saidOfText, standingAlone } from './svgParts.ts';

/** Where the picture begins on the page, pixels. */
export interface Origin {
  left: number;
  top: number;
}

/** How far the foot of a text stands below the top of its box. */
function ascentOf(style: CSSStyleDeclaration): number {
  const context = document.createElement('canvas').getContext('2d');
  if (!context) return 0;
  context.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
  return context.measureText('x').fontBoundingBoxAscent;
}

/** A line of a text: its words, and the box that they take. */
interface Line {
  text: string;
  left: number;
  right: number;
  top: number;
}

/** The lines into which the browser has broken a text. */
function linesOf(node: Text): Line[] {
  const lines: Line[] = [];
  const range = document.createRange();
  for (const { 0: word, index } of node.data.matchAll(/\S+/g)) {
    range.setStart(node, index);
    range.setEnd(node, index + word.length);
    const box = range.getBoundingClientRect();
    if (box.width === 0) continue;
    const last = lines.at(-1);
    if (last && Math.abs(last.top - box.top) < 2) {
      last.text += ` ${word}`;
      last.right = box.right;
    } else lines.push({ text: word, left: box.left, right: box.right, top: box.top });
  }
  return lines;
}

/** What is left of a line in a box that cuts it off. */
function cut(line: Line, box: HTMLElement): Line {
  const { right } = box.getBoundingClientRect();
  if (getComputedStyle(box).overflowX !== 'hidden' || line.right <= right + 1) return line;
  const share = (right - line.left) / (line.right - line.left);
  const kept = Math.max(0, Math.floor(line.text.length * share) - 1);
  return { ...line, text: `${[...line.text].slice(0, kept).join('')}…`, right };
}

function* texts(node: Text, origin: Origin, clean: (text: string) => string): Generator<SVGElement> {
  const box = node.parentElement;
  if (!box || node.data.trim() === '') return;
  const style = getComputedStyle(box);
  const ascent = ascentOf(style);
  const capital = getComputedStyle(box, '::first-letter').textTransform === 'uppercase';
  for (const line of linesOf(node).map((one) => cut(one, box))) {
    // As wide as it is here, also in a face of another width: nothing runs into its neighbour.
    const place = {
      x: (line.left - origin.left).toFixed(1),
      y: (line.top + ascent - origin.top).toFixed(1),
      textLength: (line.right - line.left).toFixed(1),
      lengthAdjust: 'spacingAndGlyphs',
    };
    const words = capital ? line.text.charAt(0).toUpperCase() + line.text.slice(1) : line.text;
    yield element('text', { ...place, ...saidOfText(style) }, clean(words));
  }
}

const SIDES = ['top', 'right', 'bottom', 'left'] as const;
const CLEAR = /^(transparent|rgba\(.*, 0\))$/;
const DASHES: Readonly<Record<string, string>> = { dashed: '3 3', dotted: '1 2' };

function* boxes(html: HTMLElement, style: CSSStyleDeclaration, origin: Origin): Generator<SVGElement> {
  const { left, top, right, bottom, width, height } = html.getBoundingClientRect();
  const [x1, y1, x2, y2] = [left - origin.left, top - origin.top, right - origin.left, bottom - origin.top];
  if (!CLEAR.test(style.backgroundColor) && width > 0 && height > 0)
    yield element('rect', {
      x: x1,
      y: y1,
      width,
      height,
      rx: parseFloat(style.borderTopLeftRadius) || 0,
      fill: style.backgroundColor,
    });
  const paths = {
    top: `M${x1} ${y1 + 0.5}H${x2}`,
    bottom: `M${x1} ${y2 - 0.5}H${x2}`,
    left: `M${x1 + 0.5} ${y1}V${y2}`,
    right: `M${x2 - 0.5} ${y1}V${y2}`,
  };
  for (const side of SIDES) {
    const line = style.getPropertyValue(`border-${side}-style`);
    if (line === 'none' || style.getPropertyValue(`border-${side}-width`) === '0px') continue;
    const dash: Record<string, string> = DASHES[line] ? { 'stroke-dasharray': DASHES[line] } : {};
    yield element('path', {
      d: paths[side],
      stroke: style.getPropertyValue(`border-${side}-color`),
      fill: 'none',
      ...dash,
    });
  }
}

/** A drawing, put where it stands on the page. */
function* drawing(
  svg: SVGSVGElement,
  origin: Origin,
  clean: (text: string) => string,
): Generator<SVGElement> {
  const box = svg.getBoundingClientRect();
  const copy = standingAlone(svg, clean);
  if (!copy || box.width === 0 || box.height === 0) return;
  copy.setAttribute('x', String(box.left - origin.left));
  copy.setAttribute('y', String(box.top - origin.top));
  copy.setAttribute('width', String(box.width));
  copy.setAttribute('height', String(box.height));
  copy.setAttribute('overflow', 'visible');
  yield copy;
}

/** All that is seen of a part of the page, in the order in which it is painted. */
export function* drawnParts(
  parent: Element,
  origin: Origin,
  clean: (text: string) => string,
): Generator<SVGElement> {
  for (const child of parent.childNodes) {
    if (child instanceof Text) yield* texts(child, origin, clean);
    else if (child instanceof SVGSVGElement) yield* drawing(child, origin, clean);
    else if (child instanceof HTMLElement) {
      const style = getComputedStyle(child);
      if (style.display === 'none' || style.visibility === 'hidden') continue;
      if (style.display !== 'inline') yield* boxes(child, style, origin);
      yield* drawnParts(child, origin, clean);
    }
  }
}
