/** What stands around the painted carpet: hours, months, clock changes, the scale of lengths. */
import { memo } from 'react';
import type { Calendar, ClockChange } from './calendar.ts';
import type { Picture } from './paint.ts';
import { boxAt, type MonthBlock, type Plot } from './plot.ts';
import { jumpText, needText, shortMonth } from './words.ts';

const HOURS = [0, 3, 6, 9, 12, 15, 18, 21, 24];
const two = (value: number): string => String(value).padStart(2, '0');

/** A line across the carpet from one pixel to another, at a pixel along it. */
export function Across({ plot, along, from, to, className }: LineProps) {
  const { x, y, width, height } = boxAt(plot, along, 0, from, to - from);
  return <line className={className} x1={x} y1={y} x2={x + width} y2={y + height} />;
}

interface LineProps {
  plot: Plot;
  along: number;
  from: number;
  to: number;
  className: string;
}

/** A line along the carpet. */
function Along({ plot, across, className }: Pick<LineProps, 'plot' | 'className'> & { across: number }) {
  const { x, y, width, height } = boxAt(plot, 0, plot.rows.at.at(-1) as number, across, 0);
  return <line className={className} x1={x} y1={y} x2={x + width} y2={y + height} />;
}

function HourMarks({ plot }: { plot: Plot }) {
  const end = plot.rows.at.at(-1) as number;
  return HOURS.map((hour) => {
    const across = (hour / 24) * plot.clockPx;
    const begin = boxAt(plot, 0, 0, across, 0);
    const after = boxAt(plot, end, 0, across, 0);
    const text = two(hour);
    return (
      <g key={hour}>
        <Along plot={plot} across={across} className="hour" />
        {plot.turned ? (
          <text className="m" x={begin.x - 8} y={begin.y + 4} textAnchor="end">
            {text}
          </text>
        ) : (
          <>
            <text className="m" x={begin.x} y={begin.y - 10} textAnchor="middle">
              {text}
            </text>
            <text className="m" x={after.x} y={after.y + 20} textAnchor="middle">
              {text}
            </text>
          </>
        )}
      </g>
    );
  });
}

/** Where a month's name and a clock change in it stand, pixels along the carpet, clear of one another. */
export function namePlaces(
  { first, end, atPx, lengthPx }: MonthBlock,
  changes: readonly ClockChange[],
  rowPx: number,
  clearPx: number,
): { name: number; changes: { atPx: number; byMin: number }[] } {
  const own = changes.filter(({ day }) => day >= first && day < end);
  const places = own.map(({ day, byMin }) => ({ atPx: atPx + (day - first) * rowPx, byMin }));
  const middle = atPx + lengthPx / 2;
  const near = places.find((place) => Math.abs(place.atPx - middle) < clearPx);
  const name = near ? near.atPx + (near.atPx < middle ? clearPx : -clearPx) : middle;
  return { name, changes: places };
}

function MonthMarks({ plot, calendar }: { plot: Plot; calendar: Calendar }) {
  return plot.rows.months.map((block) => {
    const places = namePlaces(block, calendar.changes, plot.rows.rowPx, plot.turned ? 36 : 16);
    const textAt = (along: number) => {
      const { x, y } = boxAt(plot, along, 0, 0, 0);
      return plot.turned
        ? ({ x, y: y - 10, textAnchor: 'middle' } as const)
        : ({ x: x - 10, y: y + 4, textAnchor: 'end' } as const);
    };
    return (
      <g key={block.month}>
        <text className="month" {...textAt(places.name)}>
          {shortMonth(block.month)}
        </text>
        {places.changes.map(({ atPx, byMin }) => (
          <g key={atPx}>
            <text {...textAt(atPx)}>{jumpText(byMin)}</text>
            <Across plot={plot} along={atPx} from={-5} to={0} className="tick" />
            <Across plot={plot} along={atPx} from={plot.clockPx} to={plot.clockPx + 5} className="tick" />
          </g>
        ))}
      </g>
    );
  });
}

/** Months that are still to come. */
const Waiting = ({ plot, months }: { plot: Plot; months: number }) =>
  plot.rows.months
    .filter(({ month }) => month >= months)
    .map(({ month, atPx, lengthPx }) => (
      <rect key={month} className="waiting" {...boxAt(plot, atPx, lengthPx, 0, plot.clockPx)} />
    ));

/** The scale of the windows' lengths, and how long the run is. */
function ProfileMarks({ picture: { plot, profileS, runS } }: { picture: Picture }) {
  if (runS === null) return null;
  const at = (seconds: number) => plot.profileAtPx + (seconds / profileS) * plot.profilePx;
  const end = plot.rows.at.at(-1) as number;
  const label = plot.turned
    ? { x: plot.left + end, y: plot.top + plot.profileAtPx - 8 }
    : { x: plot.left + plot.profileAtPx + plot.profilePx, y: plot.top - 10 };
  return (
    <g>
      {plot.rows.months.map(({ month, atPx, lengthPx }) => (
        <rect
          key={month}
          className="frame"
          {...boxAt(plot, atPx, lengthPx, plot.profileAtPx, plot.profilePx)}
        />
      ))}
      <Along plot={plot} across={at(runS)} className="needed" />
      <text className="act" x={label.x} y={label.y} textAnchor="end">
        {needText(runS)} needed
      </text>
      {[0, 0.5, 1].map((share) => (
        <ScaleFigure key={share} plot={plot} share={share} profileS={profileS} />
      ))}
    </g>
  );
}

function ScaleFigure({ plot, share, profileS }: { plot: Plot; share: number; profileS: number }) {
  const across = plot.profileAtPx + share * plot.profilePx;
  const text = share === 0 ? '0' : needText(share * profileS);
  if (plot.turned) {
    if (share === 0.5) return null;
    const { x, y } = boxAt(plot, 0, 0, across, 0);
    return (
      <text x={x - 6} y={y + (share === 0 ? 8 : 2)} textAnchor="end">
        {text}
      </text>
    );
  }
  const { x, y } = boxAt(plot, plot.rows.at.at(-1) as number, 0, across, 0);
  const textAnchor = share === 0 ? 'start' : share === 1 ? 'end' : 'middle';
  return (
    <text x={x} y={y + 20} textAnchor={textAnchor}>
      {text}
    </text>
  );
}

interface MarksProps {
  calendar: Calendar;
  /** Months that are worked out. */
  months: number;
  picture: Picture;
}

export const CarpetMarks = memo(function CarpetMarks({ calendar, months, picture }: MarksProps) {
  const { plot } = picture;
  return (
    <svg width={plot.width} height={plot.height} aria-hidden="true">
      <HourMarks plot={plot} />
      <MonthMarks plot={plot} calendar={calendar} />
      <ProfileMarks picture={picture} />
      <Waiting plot={plot} months={months} />
    </svg>
  );
});
