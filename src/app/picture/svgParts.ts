/** A drawing of the page as SVG that stands alone: what the style sheets say is written into it. */

const SVG = 'http://www.w3.org/2000/svg';

/** All that is drawn with; anything else is left out. */
const ELEMENTS =
  'svg g defs pattern clipPath path rect circle ellipse line polyline polygon text tspan'.split(' ');
/** Where a shape is and what it is like; no handlers, no links, no classes. */
const GEOMETRY =
  'id d x y x1 y1 x2 y2 dx dy cx cy r rx ry width height points transform viewBox preserveAspectRatio patternUnits patternTransform clipPathUnits'.split(
    ' ',
  );

/** What is said of a shape, and what holds if nothing is said. */
const SHAPE: Readonly<Record<string, string>> = {
  fill: 'rgb(0, 0, 0)',
  'fill-opacity': '1',
  stroke: 'none',
  'stroke-opacity': '1',
  'stroke-width': '1px',
  'stroke-dasharray': 'none',
  'stroke-linecap': 'butt',
  'stroke-linejoin': 'miter',
  'shape-rendering': 'auto',
  'paint-order': 'normal',
};
const TEXT: Readonly<Record<string, string>> = {
  ...SHAPE,
  'text-anchor': 'start',
  'font-family': '',
  'font-size': '',
  'font-weight': '400',
  'letter-spacing': 'normal',
};
/** What counts for groups too. */
const ANY: Readonly<Record<string, string>> = { opacity: '1', 'clip-path': 'none' };

/** An SVG element with attributes. */
export function element(
  tag: string,
  attributes: Readonly<Record<string, string | number>>,
  ...children: (Node | string)[]
): SVGElement {
  const made = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, String(value));
  made.append(...children);
  return made;
}

/** What the style sheets say of an element, where it is not what holds anyway. */
export function said(
  style: CSSStyleDeclaration,
  asked: Readonly<Record<string, string>>,
): Record<string, string> {
  const found: Record<string, string> = {};
  for (const [name, otherwise] of Object.entries(asked)) {
    const value = style
      .getPropertyValue(name)
      .replaceAll('"', '')
      .replaceAll(/(\d)px/g, '$1');
    if (value !== '' && value !== otherwise && `${value}px` !== otherwise) found[name] = value;
  }
  return found;
}

const isText = (tag: string): boolean => tag === 'text' || tag === 'tspan';

/** What an HTML text needs to look as it does. */
export const saidOfText = (style: CSSStyleDeclaration): Record<string, string> => ({
  ...said(style, { 'font-family': '', 'font-size': '', 'font-weight': '400', 'letter-spacing': 'normal' }),
  fill: style.color,
});

function own(shape: SVGElement): Record<string, string> {
  const style = getComputedStyle(shape);
  const tag = shape.tagName;
  const drawn = isText(tag) ? TEXT : ['svg', 'g', 'defs', 'pattern', 'clipPath'].includes(tag) ? {} : SHAPE;
  const placed = GEOMETRY.flatMap((name) => {
    const value = shape.getAttribute(name);
    return value === null ? [] : [[name, value]];
  });
  return { ...Object.fromEntries(placed), ...said(style, { ...drawn, ...ANY }) };
}

/**
 * A copy of a drawing that needs no style sheet.
 * @param clean - what becomes of its texts
 * @returns null for what is not drawn
 */
export function standingAlone(shape: SVGElement, clean: (text: string) => string): SVGElement | null {
  if (!ELEMENTS.includes(shape.tagName) || getComputedStyle(shape).display === 'none') return null;
  const copy = element(shape.tagName, own(shape));
  for (const child of shape.childNodes) {
    if (child instanceof SVGElement) {
      const inner = standingAlone(child, clean);
      if (inner) copy.append(inner);
    } else if (child instanceof Text && isText(shape.tagName)) copy.append(clean(child.data));
  }
  return copy;
}
