/** The year's light: one line a day, with its windows and how long they are; a day is chosen in it. */
import {
  type KeyboardEvent,
  memo,
  type PointerEvent,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import type { DayOfYear } from '../../engine/sky/year.ts';
import { useWidth } from '../charts/useWidth.ts';
import { drawsAs } from '../picture/chart.ts';
import { type Calendar, monthStarts } from './calendar.ts';
import { DayRules } from './DayRules.tsx';
import { afterKey } from './keys.ts';
import { CarpetMarks } from './marks.tsx';
import { type Picture, paint } from './paint.ts';
import { dayAtPx, middleOf, type Plot, plotOf } from './plot.ts';
import { Seasons } from './Seasons.tsx';
import { carpetShapes } from './shapes.ts';
import { useDevicePixels, useThemeName } from './useScreenPixels.ts';
import type { YearKnown } from './useYear.ts';
import { carpetSummary, longDate, minuteAt, shortDate, verdictText, windowsText } from './words.ts';

interface CarpetProps {
  calendar: Calendar;
  known: YearKnown;
  /** First shutter opening to the last closing, seconds; null if no window is asked for. */
  runS: number | null;
  /** Place in the year of the chosen day, and of the plan's if it is in this year. */
  day: number;
  planDay: number | null;
  onDay: (day: number) => void;
  /** Enter was pressed on the chosen day. */
  onUse: () => void;
}

const CarpetCanvas = memo(function CarpetCanvas({ picture, theme }: { picture: Picture; theme: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the colours come from the theme in force
  useLayoutEffect(() => {
    if (!canvas.current) return;
    paint(canvas.current, picture);
    drawsAs(canvas.current, () => carpetShapes(picture));
  }, [picture, theme]);
  const { width, height } = picture.plot;
  return <canvas ref={canvas} style={{ width, height }} />;
});

const HOUR_S = 3600;
const FULL_SCALES_H = [1, 2, 3, 4, 6, 8, 12, 16, 24, 48, 96, 192, 384];

/** A round length that the longest window and the run have room in, seconds. */
export function fullScaleS(days: readonly (DayOfYear | undefined)[], runS: number): number {
  const longest = days.reduce(
    (most, day) => Math.max(most, day?.longest ? (day.longest.toMs - day.longest.fromMs) / 1000 : 0),
    runS * 1.1,
  );
  return (FULL_SCALES_H.find((hours) => hours * HOUR_S >= longest) ?? 10_000) * HOUR_S;
}

interface Pointed {
  day: number;
  x: number;
  y: number;
}

/** What the day under the pointer is about. */
function PointedFlag({
  pointed,
  widthPx,
  children,
}: {
  pointed: Pointed;
  widthPx: number;
  children: string[];
}) {
  const width = Math.min(300, widthPx);
  const left = Math.max(0, Math.min(pointed.x + 16, widthPx - width));
  return (
    <div className="pointed" style={{ left, top: pointed.y + 18, maxWidth: width }} aria-hidden="true">
      {children.map((line) => (
        <div key={line}>{line}</div>
      ))}
    </div>
  );
}

function pointedText({ calendar, known, runS }: CarpetProps, day: number): string[] {
  const light = known.days[day];
  const date = shortDate(calendar.days[day]?.date ?? '');
  if (!light) return [date];
  const at = (name: string) => light.events.find((event) => event.name === name)?.ms;
  const [rise, set] = [at('sunrise'), at('sunset')];
  const clock = (ms: number) => minuteAt(ms, calendar.offsets);
  const sun = [rise && `sun up ${clock(rise)}`, set && `down ${clock(set)}`].filter(Boolean).join(', ');
  const first = `${date}${sun ? `: ${sun}` : ''}`;
  if (runS === null || day >= (monthStarts(calendar.year)[known.months] ?? 0)) return [first];
  const windows = windowsText(light, calendar.offsets);
  return [first, ...(windows ? [`Window ${windows}`] : []), verdictText(light, runS)];
}

/** What the pointer and the keys do over the carpet. */
function usePointing(plot: Plot, onDay: (day: number) => void) {
  const [pointed, setPointed] = useState<Pointed | null>(null);
  const pointAt = ({ nativeEvent: { offsetX: x, offsetY: y } }: PointerEvent): Pointed => ({
    day: dayAtPx(plot.rows, plot.turned ? x - plot.left : y - plot.top),
    x,
    y,
  });
  const handlers = {
    onPointerMove: (event: PointerEvent) => setPointed(pointAt(event)),
    onPointerDown: (event: PointerEvent) => setPointed(pointAt(event)),
    onPointerLeave: () => setPointed(null),
    onPointerCancel: () => setPointed(null),
    onPointerUp: (event: PointerEvent) => {
      onDay(pointAt(event).day);
      if (event.pointerType !== 'mouse') setPointed(null);
    },
  };
  return [pointed, handlers] as const;
}

function Drawn(props: CarpetProps & { widthPx: number }) {
  const { calendar, known, runS, day, planDay, widthPx, onDay, onUse } = props;
  const devicePx = useDevicePixels();
  const theme = useThemeName();
  const starts = useMemo(() => monthStarts(calendar.year), [calendar.year]);
  const profile = runS !== null;
  const season = Math.floor((starts.findIndex((start) => start > day) - 1) / 3);
  const plot = useMemo(
    () => plotOf({ widthPx, devicePx, starts, season, profile }),
    [widthPx, devicePx, starts, season, profile],
  );
  const windowsTo = starts[known.months] ?? 0;
  const picture = useMemo((): Picture => {
    const { days } = known;
    const profileS = fullScaleS(days, runS ?? 0);
    return { plot, days, offsets: calendar.offsets, windowsTo, runS, profileS, devicePx };
  }, [plot, known, calendar.offsets, windowsTo, runS, devicePx]);
  const [pointed, handlers] = usePointing(plot, onDay);
  const light = day < windowsTo ? known.days[day] : undefined;
  const date = calendar.days[day]?.date ?? '';
  const onKeyDown = (event: KeyboardEvent) => {
    const to = afterKey(event, day, starts);
    if (to === null && event.key !== 'Enter') return;
    event.preventDefault();
    if (to === null) onUse();
    else onDay(to);
  };
  const summary = useMemo(() => {
    const whole = known.days.filter((one) => one !== undefined);
    return carpetSummary(calendar.year, whole, profile);
  }, [calendar.year, known.days, profile]);
  const onSeason = (to: number) => onDay(starts[to * 3] ?? 0);
  return (
    <>
      {plot.turned && <Seasons season={season} onSeason={onSeason} />}
      <div className={`carpet${plot.turned ? ' turned' : ''}`} style={{ height: plot.height }}>
        <div role="img" aria-label={summary}>
          <CarpetCanvas picture={picture} theme={theme} />
          <CarpetMarks calendar={calendar} months={known.months} picture={picture} />
        </div>
        <DayRules
          picture={picture}
          calendar={calendar}
          light={light}
          day={day}
          planDay={planDay}
          pointed={pointed?.day ?? null}
        />
        <div
          className="choose"
          role="slider"
          tabIndex={0}
          aria-label="Day"
          aria-orientation={plot.turned ? 'horizontal' : 'vertical'}
          aria-valuemin={1}
          aria-valuemax={calendar.days.length}
          aria-valuenow={day + 1}
          aria-valuetext={`${longDate(date)}${light && runS !== null ? `. ${verdictText(light, runS)}` : ''}`}
          onKeyDown={onKeyDown}
          {...handlers}
        />
        {pointed && middleOf(plot.rows, pointed.day) !== null && (
          <PointedFlag pointed={pointed} widthPx={widthPx}>
            {pointedText(props, pointed.day)}
          </PointedFlag>
        )}
      </div>
    </>
  );
}

export function Carpet(props: CarpetProps) {
  const [ref, widthPx] = useWidth<HTMLDivElement>();
  return (
    <div ref={ref} className="carpet-room">
      {widthPx > 0 && <Drawn {...props} widthPx={widthPx} />}
    </div>
  );
}
