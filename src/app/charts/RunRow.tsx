import { type ReactNode, Suspense, useMemo, useState } from 'react';
import { fetched } from '../fetched.tsx';
import { SavePicture } from '../picture/SavePicture.tsx';
import { chooseAxis, useShown } from '../tracks/shown.ts';
import { ChartTable, TableSwitch, tableRows } from './ChartTable.tsx';
import type { ChartModel, TableColumn } from './chart.ts';
import { Readings } from './Readings.tsx';
import { RunPlot } from './RunPlot.tsx';
import type { PlacedTick, RunView } from './runView.ts';
import type { SkyBand } from './skyBand.ts';
import { colourOf } from './trace.ts';

/** Only where a track is drawn that can be edited. */
const Handles = fetched(null, () => import('../tracks/inCharts.ts').then((part) => part.Handles));
const AddHere = fetched(null, () => import('../tracks/inCharts.ts').then((part) => part.AddHere));

interface Props {
  chart: ChartModel;
  view: RunView;
  gutterPx: number;
  /** Title and figures in columns beside the plot, or in a line above it. */
  wide: boolean;
  clock: readonly PlacedTick[];
  sky: SkyBand | null;
  /** Frame under the cursor, counted from 0. */
  index: number;
  /** Frame and clock, before the columns of the chart. */
  leading: TableColumn[];
  /** Above its read-out. */
  children?: ReactNode;
}

/** One chart of the run with its title, its cursor and what it reads there. */
export function RunRow({ chart, view, gutterPx, wide, clock, sky, index, leading, children }: Props) {
  const [asTable, setAsTable] = useState(false);
  const name = `${chart.title} over the run, ${chart.unit}`;
  const choice = useLineChoice(chart);
  // The same ones as long as nothing changes: a table draws only rows that do.
  const columns = useMemo(() => [...leading, ...chart.table], [leading, chart]);
  const rows = useMemo(() => tableRows(view.elapsedS.length), [view]);
  return (
    <div className="run-row">
      <div className="run-plot">
        <h3 className="run-title">
          {chart.title} <small>{chart.unit}</small>
        </h3>
        {asTable ? (
          <ChartTable caption={name} columns={columns} rows={rows} />
        ) : (
          <div className="run-stage">
            <div className="run-drawing" role="img" aria-label={`${name}. ${chart.summary}`}>
              <RunPlot chart={chart} view={view} gutterPx={gutterPx} clock={clock} sky={sky} />
              <CursorLine
                chart={chart}
                x={gutterPx + view.x(Number(view.elapsedS[index]))}
                index={index}
                wide={wide}
              />
            </div>
            {choice?.chosen && (
              <Suspense>
                <Handles {...{ chart, view, gutterPx, index }} axis={choice.chosen} />
              </Suspense>
            )}
          </div>
        )}
      </div>
      <div className="run-readings">
        {children}
        <Readings readings={chart.read(index)} choice={choice} />
        <div className="run-links">
          {choice?.chosen && (
            <Suspense>
              <AddHere axis={choice.chosen} index={index} elapsedS={view.elapsedS} />
            </Suspense>
          )}
          <div className="run-as">
            <TableSwitch of={chart.title} on={asTable} onChange={setAsTable} />
            {!asTable && <SavePicture of={name} small />}
          </div>
        </div>
      </div>
    </div>
  );
}

/** Which axis's keyframes can be taken hold of: the one chosen last, else the first. */
function useLineChoice({ editable }: ChartModel) {
  const axis = useShown((shown) => shown.axis);
  if (!editable) return undefined;
  const { axes: names } = editable;
  const chosen = axis !== null && names.includes(axis) ? axis : (names[0] ?? null);
  return { names, chosen, onChoose: chooseAxis };
}

/** The shared cursor in one chart: a rule and a ring on every line. */
function CursorLine({
  chart,
  x,
  index,
  wide,
}: {
  chart: ChartModel;
  x: number;
  index: number;
  wide: boolean;
}) {
  return (
    <svg className="run-cursor" height={chart.heightPx + (wide ? 1 : 0)} width={x + 8} aria-hidden="true">
      <path d={`M${x} 0V${chart.heightPx + 1}`} stroke="var(--act)" strokeWidth="1.5" />
      {chart.dots(index).map((dot, n) => (
        <circle
          // biome-ignore lint/suspicious/noArrayIndexKey: what moves with an edit is not made anew
          key={n}
          cx={x}
          cy={dot.y}
          r="4"
          fill="var(--surface)"
          stroke={colourOf(dot.tone)}
          strokeWidth="2"
        />
      ))}
    </svg>
  );
}
