import type { DayOfYear } from '../../engine/sky/year.ts';
import { type Calendar, stretchesOf } from './calendar.ts';
import { Across } from './marks.tsx';
import type { Picture } from './paint.ts';
import { boxAt, middleOf, type Plot } from './plot.ts';
import { lengthS, shortDate } from './words.ts';

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
