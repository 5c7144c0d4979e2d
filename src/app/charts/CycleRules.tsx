import { type CycleLayout, widthOf } from './cycleLayout.ts';
import type { CycleModel } from './cycleModel.ts';

const STANDING_COLOURS = { fine: 'var(--ink)', warning: 'var(--warn)', stop: 'var(--stop)' } as const;

export function NextOpening({ layout, x }: { layout: CycleLayout; x: number }) {
  const top = layout.wide ? 10 : 4;
  const before = x - layout.left > OPENING_PX;
  return (
    <g fill="var(--act)">
      <path d={`M${x} ${top}V${layout.axisY}`} stroke="var(--act)" strokeWidth="2" />
      <path d={`M${x - 6} ${top}h12l-6 9z`} />
      <text
        x={x + (before ? -10 : 10)}
        y={top + 10}
        textAnchor={before ? 'end' : 'start'}
        className="chart-next"
      >
        Next shutter opens
      </text>
    </g>
  );
}

/** Room for the words beside the next opening. */
const OPENING_PX = 130;

export function SecondsAxis({ layout }: { layout: CycleLayout }) {
  const { axisY, left, right, ticks } = layout;
  return (
    <>
      <path
        d={`M${left} ${axisY}H${right}${ticks.map((tick) => `M${tick.x} ${axisY}v${tick.label === '' ? 4 : 7}`).join('')}`}
        stroke="var(--edge)"
        fill="none"
      />
      {ticks.map(
        (tick) =>
          tick.label !== '' &&
          tick.x < right - 24 && (
            <text
              key={tick.x}
              x={tick.x}
              y={axisY + 21}
              textAnchor={tick.x === 0 ? 'start' : 'middle'}
              className="chart-figure"
            >
              {tick.label}
            </text>
          ),
      )}
      <text x={right} y={axisY + 21} textAnchor="end">
        s
      </text>
    </>
  );
}

/** The dimension line: what the interval has to be, and what is left of it. */
export function Dimension({
  model,
  layout,
  nextX,
}: {
  model: CycleModel;
  layout: CycleLayout;
  nextX: number;
}) {
  const y = layout.dimensionY;
  const needX = layout.x(model.lanesS + model.guardS);
  // Past the next opening the bars themselves say what is missing.
  const endX = model.standing === 'stop' ? needX : Math.min(needX, nextX);
  const restEndX = model.standing === 'stop' ? needX : Math.max(needX, nextX);
  const colour = STANDING_COLOURS[model.standing];
  const span = (from: number, to: number) => `M${from} ${y - 4}v8M${to} ${y - 4}v8M${from} ${y}H${to}`;
  const needs = widthOf(model.needs) < endX - layout.left ? model.needs : model.atLeast;
  const needsEndX = Math.max((layout.left + endX + widthOf(needs)) / 2, layout.left + widthOf(needs));
  const rest = restPlace(widthOf(model.rest), Math.max(endX, needsEndX), restEndX, layout.right);
  return (
    <g fill="none">
      <path d={span(layout.left, endX)} stroke="var(--ink)" />
      {restEndX - endX > 1 && <path d={span(endX, restEndX)} stroke={colour} />}
      <text
        x={needsEndX - widthOf(needs) / 2}
        y={y + 5}
        textAnchor="middle"
        className="chart-bar chart-name chart-dimension"
      >
        {needs}
      </text>
      {restEndX > endX && rest !== null && (
        <text
          x={rest}
          y={y + 5}
          textAnchor="middle"
          className="chart-bar chart-name chart-dimension chart-strong"
          style={{ fill: colour }}
        >
          {model.rest}
        </text>
      )}
    </g>
  );
}

/** Middle of a text within a stretch, or behind it; null if it fits neither. */
function restPlace(width: number, from: number, to: number, rightmost: number): number | null {
  if (width <= to - from) return (from + to) / 2;
  return to + width <= rightmost + 8 && from <= to ? to + width / 2 : null;
}
