/** Which parts of the page are pictures, and what is drawn in place of what cannot be copied. */

/** One of several charts that share a panel, and its scale of time. */
const ONE_OF_SEVERAL = '.run-row';
const WHOLE = '.chart-panel, .panel, figure';

/** What a picture is taken of. */
export const CHART = `${ONE_OF_SEVERAL}, ${WHOLE}`;

/** The panel of a chart: the chart itself, unless it is one of several. */
export const panelOf = (chart: HTMLElement): HTMLElement =>
  chart.matches(ONE_OF_SEVERAL) ? (chart.closest<HTMLElement>(WHOLE) ?? chart) : chart;

/** Others that share the panel of a chart. */
export const othersOf = (chart: HTMLElement): HTMLElement[] =>
  chart.matches(ONE_OF_SEVERAL)
    ? [...panelOf(chart).querySelectorAll<HTMLElement>(ONE_OF_SEVERAL)].filter((one) => one !== chart)
    : [];

/** Takes the width that it is given: the column where it stands may be too narrow for paper. */
const FLUID = 'figure, .rail > .panel, .day';
const LEAST_PX = 520;

/** How wide the picture of a panel is, pixels: all columns of a grid that scrolls sideways are on it. */
export function widthOf(panel: HTMLElement): number {
  const hidden = [...panel.querySelectorAll('[role=grid]')].reduce(
    (sum, { scrollWidth, clientWidth }) => sum + scrollWidth - clientWidth,
    0,
  );
  return Math.max(panel.offsetWidth + hidden, panel.matches(FLUID) ? LEAST_PX : 0);
}

const drawn = new WeakMap<HTMLCanvasElement, () => SVGSVGElement>();

/** Says how the pixels of a canvas are drawn as shapes, which stay sharp on paper; with colours of the theme. */
export const drawsAs = (canvas: HTMLCanvasElement, draw: () => SVGSVGElement): void => {
  drawn.set(canvas, draw);
};

/** The shapes of a canvas; null if nobody has said. */
export const shapesOf = (canvas: HTMLCanvasElement): SVGSVGElement | null => drawn.get(canvas)?.() ?? null;
