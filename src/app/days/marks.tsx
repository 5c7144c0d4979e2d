/** What stands around and over the painted carpet: hours, months, clock changes, and the rules of single days. */
import { memo } from 'react';
import type { DayOfYear } from '../../engine/sky/year.ts';
import { type Calendar, type ClockChange, stretchesOf } from './calendar.ts';
import type { Picture } from './paint.ts';
import { boxAt, type MonthBlock, middleOf, type Plot } from './plot.ts';
import { jumpText, lengthS, needText, shortDate, shortMonth } from './words.ts';

const HOURS = [0, 3, 6, 9, 12, 15, 18, 21, 24];
const two = (value: number): string => String(value).padStart(2, '0');

/** A line across the carpet from one pixel to another, at a pixel along it. */
function Across({ plot, along, from, to, className }: LineProps) {
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

/** The rule of one day, over carpet and profile. */
function Rule({ plot, day, className }: { plot: Plot; day: number; className: string }) {
  const along = middleOf(plot.rows, day);
  if (along === null) return null;
  const to = plot.profilePx > 0 ? plot.profileAtPx + plot.profilePx : plot.clockPx;
  return (
    <g className={className}>
      <Across plot={plot} along={along} from={-4} to={to} className="under" />
      <Across plot={plot} along={along} from={-4} to={to} className="over" />
    </g>
  );
}

const TAG_PX = { width: 84, height: 24 };

function Tag({ plot, along, text }: { plot: Plot; along: number; text: string }) {
  const { x, y } = boxAt(plot, along, 0, plot.turned ? 4 : 6, 0);
  const left = plot.turned ? Math.max(2, Math.min(x - TAG_PX.width / 2, plot.width - TAG_PX.width - 2)) : x;
  const top = plot.turned ? y : y - TAG_PX.height / 2;
  return (
    <g className="tag">
      <rect x={left} y={top} rx={4} {...TAG_PX} />
      <text x={left + TAG_PX.width / 2} y={top + 16} textAnchor="middle">
        {text}
      </text>
    </g>
  );
}

const WINDOW_PX = 12;

/** The windows of the chosen day that hold the run. */
function ChosenWindows({
  picture,
  calendar,
  light,
  along,
}: RulesProps & { light: DayOfYear; along: number }) {
  const { plot, runS } = picture;
  if (runS === null) return null;
  const hourPx = plot.clockPx / 24;
  return light.windows
    .filter((window) => lengthS(window) >= runS)
    .flatMap((window) => stretchesOf(window, light, calendar.offsets))
    .map(({ fromH, toH }) => (
      <rect
        key={fromH}
        className="chosen-window"
        {...boxAt(plot, along - WINDOW_PX / 2, WINDOW_PX, fromH * hourPx, (toH - fromH) * hourPx)}
      />
    ));
}

interface RulesProps {
  picture: Picture;
  calendar: Calendar;
  light: DayOfYear | undefined;
}

/** Rules of the chosen day, of the plan's day, and of the day that is pointed at. */
export function DayRules(
  props: RulesProps & { day: number; planDay: number | null; pointed: number | null },
) {
  const { picture, calendar, light, day, planDay, pointed } = props;
  const { plot } = picture;
  const along = middleOf(plot.rows, day);
  return (
    <svg width={plot.width} height={plot.height} aria-hidden="true">
      {pointed !== null && <Rule plot={plot} day={pointed} className="rule pointed-rule" />}
      {planDay !== null && planDay !== day && <Rule plot={plot} day={planDay} className="rule plan-rule" />}
      <Rule plot={plot} day={day} className="rule" />
      {along !== null && (
        <>
          {light && <ChosenWindows picture={picture} calendar={calendar} light={light} along={along} />}
          <Tag plot={plot} along={along} text={shortDate(calendar.days[day]?.date ?? '')} />
        </>
      )}
    </svg>
  );
}
