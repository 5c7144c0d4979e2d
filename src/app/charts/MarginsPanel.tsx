import { type ComponentType, lazy, Suspense, useId } from 'react';
import type { Schedule } from '../../engine/schedule-types.ts';
import { StandingTag } from '../icons.tsx';
import { useWayParts } from '../store/later.ts';
import { How } from '../working/How.tsx';
import { Pieces } from '../working/Pieces.tsx';
import { Hatch } from './Hatch.tsx';
import { type MarginRow, marginRow } from './marginModel.ts';
import { useWidth } from './useWidth.ts';
import './charts.css';

interface PictureProps {
  of: string;
  sentence: string;
}
// Not with the checker, as other parts: it changes nothing.
const SavePicture = lazy(() =>
  import('../picture/SavePicture.tsx')
    .then(({ SavePicture: part }): ComponentType<PictureProps> => part)
    .catch((): ComponentType<PictureProps> => () => null)
    .then((part) => ({ default: part })),
);

const SENTENCE =
  'Solid is used, hatched is left. The upright mark is where the reserve you asked for begins.';

/** How far every resource is from running out. */
export function MarginsPanel({ schedule }: { schedule: Schedule }) {
  const { Head, Slip } = useWayParts();
  return (
    <section className="chart-panel margins-panel" aria-labelledby="margins-heading">
      <header>
        <h2 id="margins-heading">Margins</h2>
        <p>{SENTENCE}</p>
        <Suspense>
          <SavePicture of="Margins" sentence={SENTENCE} />
        </Suspense>
      </header>
      <ul className="margins">
        {schedule.margins.map(marginRow).map((row) => (
          <MarginLine key={row.id} row={row} />
        ))}
        {!Head && schedule.sky && <li className="margin" />}
        {Slip && <Slip />}
      </ul>
    </section>
  );
}

export function MarginLine({ row }: { row: MarginRow }) {
  return (
    <li className={`margin ${row.standing}`}>
      <div className="margin-what">
        <b>{row.label}</b>
        <span>
          <Pieces pieces={row.usedOf} about={row.label} />
        </span>
      </div>
      <MarginBar row={row} />
      <div className="margin-left">
        <How of={`margins.${row.id}.left`} what={`${row.left}${row.leftUnit}, ${row.label}`}>
          <span className="chart-figure">{row.left}</span>
          <small>{row.leftUnit}</small>
        </How>
      </div>
      <div className="margin-when">
        {row.standing !== 'fine' && <StandingTag standing={row.standing} />}
        <span>
          <Pieces pieces={row.when} about={row.label} />
        </span>
      </div>
    </li>
  );
}

const COLOURS = {
  fine: { used: 'var(--used)', edge: 'var(--edge)', hatch: 'left' },
  warning: { used: 'var(--used-warn)', edge: 'var(--warn)', hatch: 'warning' },
  stop: { used: 'var(--stop)', edge: 'var(--stop)', hatch: 'stop' },
} as const;

/** Room for the point of a bar that runs past its end. */
const POINT_PX = 8;

function MarginBar({ row }: { row: MarginRow }) {
  const id = useId();
  const [ref, whole] = useWidth<HTMLDivElement>();
  const width = Math.max(0, whole - POINT_PX);
  const { used, edge, hatch } = COLOURS[row.standing];
  const usedPx = row.usedShare * width;
  const reserveX = row.reserveShare === null ? null : row.reserveShare * width;
  return (
    <div ref={ref} className="margin-bar">
      <svg width={whole} height="24" role="img" aria-label={row.summary}>
        <defs>
          <Hatch id={id} kind={hatch} />
        </defs>
        <rect x=".5" y="4.5" width={Math.max(0, width - 1)} height="15" fill={`url(#${id})`} stroke={edge} />
        <rect x="0" y="4" width={usedPx} height="16" fill={used} />
        {row.standing === 'stop' && (
          <path d={`M${width - 1} 1l7 11-7 11`} fill="none" stroke={edge} strokeWidth="2" />
        )}
        {reserveX !== null && (
          <>
            <path d={`M${reserveX} 0v24`} stroke="var(--surface)" strokeWidth="5" />
            <path d={`M${reserveX} 0v24`} stroke="var(--ink)" strokeWidth="1.8" />
          </>
        )}
      </svg>
    </div>
  );
}
