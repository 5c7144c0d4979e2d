import { Fragment, useId, useMemo, useState } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { ofFrame } from '../../engine/working/names.ts';
import { StandingTag } from '../icons.tsx';
import { SavePicture } from '../picture/SavePicture.tsx';
import { How } from '../working/How.tsx';
import { ChartTable, TableSwitch } from './ChartTable.tsx';
import { BAR_LOOKS } from './CycleBars.tsx';
import { CycleDrawing } from './CycleDrawing.tsx';
import type { TableColumn } from './chart.ts';
import { cycleLayout, type LegendItem } from './cycleLayout.ts';
import { type Bar, type CycleModel, cycleModel } from './cycleModel.ts';
import { FrameChoice } from './FrameChoice.tsx';
import { fixed } from './format.ts';
import { Hatch } from './Hatch.tsx';
import { useWidth } from './useWidth.ts';
import './charts.css';

interface Props {
  schedule: Schedule;
  plan: Plan;
  /** Frame shown, counted from 0. */
  frameIndex: number;
  onFrame: (index: number) => void;
}

/** What happens within one interval: camera and rig, against the seconds. */
export function CyclePanel({ schedule, plan, frameIndex, onFrame }: Props) {
  const [asTable, setAsTable] = useState(false);
  const [ref, width] = useWidth<HTMLDivElement>();
  const model = useMemo(() => cycleModel(schedule, plan, frameIndex), [schedule, plan, frameIndex]);
  return (
    <section className="chart-panel cycle-panel" aria-labelledby="cycle-heading">
      <header>
        <h2 id="cycle-heading">Cycle</h2>
        <p>
          <Headline sentence={model.sentence} frameIndex={frameIndex} />
        </p>
        <TableSwitch of="Cycle" on={asTable} onChange={setAsTable} />
        {!asTable && <SavePicture of="Cycle" sentence={model.sentence} />}
      </header>
      <div className="cycle-body">
        <div ref={ref}>
          {asTable ? <CycleTable model={model} /> : width > 0 && <Drawn model={model} width={width} />}
          <CycleFigures schedule={schedule} frameIndex={frameIndex} />
        </div>
        <FrameChoice schedule={schedule} frameIndex={frameIndex} onFrame={onFrame} />
      </div>
    </section>
  );
}

/** What the cycle says of itself; the time of the move opens its working. */
function Headline({ sentence, frameIndex }: { sentence: string; frameIndex: number }) {
  const [before, moved, after] = sentence.split(/(?<=, move )([\d.,]+\u00A0s)/);
  return moved === undefined ? (
    sentence
  ) : (
    <>
      {before}
      <span className="unbroken">
        <How of={ofFrame(frameIndex, 'moveS')} what={`${moved}, move`}>
          {moved}
        </How>
        {after}
      </span>
    </>
  );
}

/** The lanes and what they leave, each with its working. */
function CycleFigures({
  schedule: { columns, totals },
  frameIndex: k,
}: Pick<Props, 'schedule' | 'frameIndex'>) {
  const figures = [
    { what: 'Camera lane', of: 'cameraS', valueS: columns.cameraS[k] ?? 0 },
    { what: 'Rig lane', of: 'rigS', valueS: columns.rigS[k] ?? 0 },
    { what: 'Spare', of: 'spareS', valueS: columns.spareS[k] ?? 0 },
  ].map((figure) => ({ ...figure, of: `frame.${k + 1}.${figure.of}` }));
  const shortest = {
    what: 'Shortest interval',
    of: 'totals.shortestIntervalS',
    valueS: totals.shortestIntervalS,
  };
  return (
    <ul className="cycle-figures">
      {[...figures, shortest]
        .filter(({ what, valueS }) => what !== 'Rig lane' || valueS > 0)
        .map(({ what, of, valueS }) => (
          <li key={of}>
            {what}{' '}
            <How of={of} what={`${fixed(valueS, 2)} s, ${what}`}>
              <span className="chart-figure">{fixed(valueS, 2)}</span> <small>s</small>
            </How>
          </li>
        ))}
    </ul>
  );
}

/** The drawing, and below it what found no room in it. */
function Drawn({ model, width }: { model: CycleModel; width: number }) {
  const { legend } = cycleLayout(model, width);
  return (
    <>
      <CycleDrawing model={model} width={width} />
      {model.standing !== 'fine' && (
        <p className="cycle-rest">
          <StandingTag standing={model.standing} />
          <span>{restSentence(model)}</span>
        </p>
      )}
      {legend.length > 0 && (
        <ul className="cycle-legend">
          {legend.map((item) => (
            <li key={item.text}>
              <Swatch item={item} /> <Times item={item} />
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

/** A bar's name and its times, each with its working. */
function Times({ item: { text, label, times } }: { item: LegendItem }) {
  if (times.length === 0) return text;
  return (
    <span>
      {label}{' '}
      {times.map((time, n) => (
        <Fragment key={time.of}>
          {n > 0 && ' + '}
          <How of={time.of} what={`${time.text} s, ${label}`}>
            {time.text}
            {n === times.length - 1 && '\u00A0s'}
          </How>
        </Fragment>
      ))}
    </span>
  );
}

const restSentence = ({ standing, rest }: CycleModel) =>
  standing === 'stop'
    ? `The interval is ${rest}: the next shutter opens before this cycle is over.`
    : `${rest}.`;

function Swatch({ item }: { item: LegendItem }) {
  const id = useId();
  const { kind } = item;
  const hatched = kind === 'guard' || kind === 'spare';
  const [fill, edge] = hatched ? [`url(#${id})`, 'var(--edge)'] : BAR_LOOKS[kind];
  return (
    <svg width="11" height="11" aria-hidden="true">
      {hatched && (
        <defs>
          <Hatch id={id} kind={kind === 'guard' ? 'guard' : 'left'} />
        </defs>
      )}
      <rect x=".5" y=".5" width="10" height="10" fill={fill} stroke={edge} />
    </svg>
  );
}

/** The bars of all lanes as rows of a table. */
export function cycleColumns({ frame, camera, rig, free, longer }: CycleModel): {
  columns: TableColumn[];
  rows: number[];
} {
  const lane = (name: string, id: string, bars: readonly Bar[]) =>
    bars.map((bar, n) => ({ ...bar, lane: name, of: ofFrame(frame - 1, `lane.${id}.${n + 1}`) }));
  const bars = [
    ...lane('Camera', 'camera', camera),
    ...lane('Rig', 'rig', rig),
    ...lane(longer === 'rig' ? 'Rig' : 'Camera', 'free', free),
  ];
  const words = (heading: string, cell: (bar: (typeof bars)[number]) => string): TableColumn => ({
    heading,
    cell: (index) => (bars[index] ? cell(bars[index]) : ''),
  });
  const seconds = (heading: string, what: string, ofBar: (bar: Bar) => number): TableColumn => ({
    ...words(heading, (bar) => fixed(ofBar(bar), 3)),
    of: (index) => (bars[index] ? `${bars[index].of}.${what}` : null),
  });
  return {
    columns: [
      words('Lane', (bar) => bar.lane),
      words('What', (bar) => bar.label),
      seconds('Starts, s', 'startS', (bar) => bar.startS),
      seconds('Lasts, s', 'lastsS', (bar) => bar.durationS),
      seconds('Ends, s', 'endS', (bar) => bar.startS + bar.durationS),
    ],
    rows: bars.map((_, index) => index),
  };
}

const CycleTable = ({ model }: { model: CycleModel }) => (
  <ChartTable caption={`Cycle of frame ${model.frame}`} {...cycleColumns(model)} />
);
