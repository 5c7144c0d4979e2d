/** The carpet as shapes, for a picture that stays sharp on paper: one path a colour. */
import { makeSvg } from '../print/make.ts';
import { type Picture, paintWith } from './paint.ts';

const HATCHING = 'carpet-short';
const rounded = (px: number): number => Math.round(px * 100) / 100;

/** Paths by what they are filled with; what lies below comes first, since no two layers have a colour in common. */
export function pathsOf(picture: Picture): Map<string, string> {
  const paths = new Map<string, string>();
  let fill = '';
  const take = (next: string) => {
    fill = next;
  };
  paintWith(picture, {
    colour: take,
    hatch: () => take(`url(#${HATCHING})`),
    fill: ({ x, y, width, height }) => {
      const [left, top, right, foot] = [x, y, x + width, y + height].map(rounded);
      paths.set(fill, `${paths.get(fill) ?? ''}M${left} ${top}H${right}V${foot}H${left}Z`);
    },
  });
  return paths;
}

/** Thin strokes upwards, as on the canvas. */
const hatching = (): SVGElement =>
  makeSvg(
    'pattern',
    { id: HATCHING, width: 6, height: 6, patternUnits: 'userSpaceOnUse' },
    makeSvg('path', { d: 'M-1 7 7-1M-1 1 1-1M5 7 7 5', fill: 'none', stroke: 'var(--edge)' }),
  );

/** The whole carpet; its colours are those of the theme where it is put. */
export function carpetShapes(picture: Picture): SVGSVGElement {
  const { width, height } = picture.plot;
  const paths = [...pathsOf(picture)].map(([fill, d]) =>
    makeSvg('path', { d, fill, 'shape-rendering': 'crispEdges' }),
  );
  return makeSvg('svg', { width, height }, makeSvg('defs', {}, hatching()), ...paths);
}
