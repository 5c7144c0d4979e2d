import { type CycleLayout, type PlacedBar, widthOf } from './cycleLayout.ts';
import type { BarKind, CycleModel } from './cycleModel.ts';
import { secondsText } from './format.ts';

/** Colour of each stretch: fill and border. */
export const BAR_LOOKS: Readonly<Record<Exclude<BarKind, 'guard' | 'spare'>, [fill: string, edge: string]>> =
  {
    lag: ['var(--s-blue)', 'var(--s-blue)'],
    exposure: ['var(--f-blue)', 'var(--s-blue)'],
    dark: ['var(--sunk)', 'var(--s-blue)'],
    write: ['var(--f-blue2)', 'var(--s-blue)'],
    hold: ['var(--surface)', 'var(--edge)'],
    move: ['var(--f-verm)', 'var(--s-verm)'],
    settle: ['var(--f-verm2)', 'var(--s-verm)'],
  };

export function LaneName({ layout, y, name }: { layout: CycleLayout; y: number; name: string }) {
  return (
    <text x="0" y={layout.wide ? y + 25 : y - 8} className="chart-lane">
      {name}
    </text>
  );
}

export function Lane({ bars, y, layout }: { bars: readonly PlacedBar[]; y: number; layout: CycleLayout }) {
  return bars.map((bar) => {
    if (bar.kind === 'guard' || bar.kind === 'spare') return null;
    const [fill, edge] = BAR_LOOKS[bar.kind];
    return (
      <g key={bar.startS}>
        <rect x={bar.x} y={y} width={bar.width} height={layout.laneHeight} fill={fill} stroke={edge} />
        <BarText bar={bar} y={y} layout={layout} />
      </g>
    );
  });
}

interface BarTextProps {
  bar: PlacedBar;
  y: number;
  layout: CycleLayout;
  haloed?: boolean;
}

export function BarText({ bar, y, layout, haloed = false }: BarTextProps) {
  if (bar.shows === 'nothing') return null;
  return (
    <text
      x={bar.x + 8}
      y={y + layout.laneHeight / 2 + 5}
      className={haloed ? 'chart-bar chart-name chart-hatched' : 'chart-bar'}
    >
      {bar.label}
      {bar.shows === 'all' && (
        <>
          <tspan dx="7" className="chart-figure">
            {secondsText(bar.durationS)}
          </tspan>
          <tspan dx="3" className="chart-unit">
            s
          </tspan>
        </>
      )}
    </text>
  );
}

/** A rig lane without stretches of its own. */
export function WholeLane({ word, layout, to }: { word: string; layout: CycleLayout; to: number }) {
  const [fill, edge] = BAR_LOOKS[word === 'Still' ? 'hold' : 'move'];
  return (
    <>
      <rect
        x={layout.left}
        y={layout.rigY}
        width={to - layout.left}
        height={layout.laneHeight}
        fill={fill}
        stroke={edge}
      />
      <text x={layout.left + 8} y={layout.rigY + layout.laneHeight / 2 + 5} className="chart-bar">
        {word}
      </text>
    </>
  );
}

/** The next cycle begins: faint, to the end of the axis. */
export function NextCycle({ layout, x }: { layout: CycleLayout; x: number }) {
  const width = layout.right - x;
  return (
    <g opacity="0.5">
      <rect x={x} y={layout.cameraY} width={width} height={layout.laneHeight} fill="var(--f-blue)" />
      <rect
        x={x}
        y={layout.rigY}
        width={width}
        height={layout.laneHeight}
        fill="var(--surface)"
        stroke="var(--edge)"
        strokeDasharray="3 3"
      />
    </g>
  );
}

/** What does not fit, past the next opening, in both lanes. */
export function Overrun({
  id,
  model,
  layout,
  x,
}: {
  id: string;
  model: CycleModel;
  layout: CycleLayout;
  x: number;
}) {
  const ends = [
    { y: layout.cameraY, bar: layout.camera.at(-1) },
    { y: layout.rigY, bar: layout.rig.at(-1) },
  ];
  return ends.map(({ y, bar }) => {
    const to = bar ? bar.x + bar.width : 0;
    if (to <= x) return null;
    return (
      <g key={y}>
        <rect
          x={x}
          y={y}
          width={to - x}
          height={layout.laneHeight}
          fill={`url(#${id})`}
          stroke="var(--stop)"
        />
        {widthOf(model.rest) < to - x && (
          <text
            x={x + 8}
            y={y + layout.laneHeight / 2 + 5}
            className="chart-bar chart-name chart-hatched chart-short"
          >
            {model.rest}
          </text>
        )}
      </g>
    );
  });
}
