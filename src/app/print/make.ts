/** Elements, made and filled in one expression: what is drawn for paper is drawn without React. */

/** An element of a class, with its parts. */
export function make<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  className: string | null,
  ...parts: (Node | string)[]
): HTMLElementTagNameMap[Tag] {
  const element = document.createElement(tag);
  if (className) element.className = className;
  element.append(...parts);
  return element;
}

const SVG = 'http://www.w3.org/2000/svg';

/** A part of a drawing, with its attributes and parts. */
export function makeSvg<Tag extends keyof SVGElementTagNameMap>(
  tag: Tag,
  attributes: Readonly<Record<string, string | number>>,
  ...parts: (Node | string)[]
): SVGElementTagNameMap[Tag] {
  const element = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, String(value));
  element.append(...parts);
  return element;
}
