/** How the windows of a day came about: where they begin and end, and what a run has to spare in them. */
import type { Plan } from '../plan/schema.ts';
import { betweenDraft, clockSeconds, type Moment, momentBase, momentDraft } from '../time/moment-working.ts';
import { type Draft, term, type Worked, type Workings, worth } from '../working/make.ts';
import { ofWindow } from '../working/names.ts';
import { readable } from '../working/text.ts';
import { sunAt } from './position.ts';
import type { Span } from './spans.ts';
import { siteOf, windowSpans } from './windows.ts';
import type { DayOfYear } from './year.ts';

const DAY_MS = 86_400_000;

const SOURCE =
  'Spans in which everything holds that the plan asks for: altitudes by root-finding, edges of pane and horizon by looking every minute and halving; positions by suncalc.';

/** What a window asks for, a few words each. */
export function conditionsOf({ window, pane }: Plan): string[] {
  const {
    sunAltitudeMinDeg: least,
    sunAltitudeMaxDeg: most,
    sunAzimuthFromDeg: from,
    sunAzimuthToDeg: to,
  } = window;
  return [
    ...(least === null ? [] : [`sun at ${readable(least, 'deg')} or higher`]),
    ...(most === null ? [] : [`sun at ${readable(most, 'deg')} or lower`]),
    ...(from === null && to === null ? [] : [`sun from azimuth ${from ?? 0}° to ${to ?? 360}°`]),
    ...(window.sunAndHorizon === 'any' ? [] : [`sun ${window.sunAndHorizon} the own horizon`]),
    ...(window.sunOnPane === 'any' || !pane.used
      ? []
      : [window.sunOnPane === 'onSet' ? 'sun through the pane on the set' : 'no sun on the set']),
    ...(window.clockFrom === '' ? [] : [`not before ${window.clockFrom}`]),
    ...(window.clockTo === '' ? [] : [`not after ${window.clockTo}`]),
    ...(window.moon === 'any'
      ? []
      : [window.moon === 'down' ? 'moon down' : `moon down, or lit ${window.moonLitMaxShare} at most`]),
  ];
}

function askedText(plan: Plan): string {
  const asked = conditionsOf(plan);
  return asked.length === 0 ? 'Nothing is asked for: it is always open.' : `Open while: ${asked.join('; ')}.`;
}

/** Where the sun stands at an end of a window, in words. */
function sunText(plan: Plan, ms: number): string {
  const site = siteOf(plan);
  if (!site) return '';
  const { geometricAltitudeDeg: altitude, azimuthDeg } = sunAt(ms, site.latitudeDeg, site.longitudeDeg);
  return `The sun is then at ${readable(Number(altitude.toFixed(2)), 'deg')} (geometric), azimuth ${azimuthDeg.toFixed(1)}°.`;
}

const edge = (plan: Plan, title: string, ms: number): Draft =>
  momentDraft(title, plan.place, ms, { remarks: [askedText(plan), sunText(plan, ms)], source: SOURCE });

/** The whole of a window that the day has a part of, from the day before to the day after. */
function wholes(plan: Plan, { startMs, endMs, windows }: DayOfYear): Span[] {
  const spans = windowSpans(plan, startMs - DAY_MS, endMs + DAY_MS);
  return windows.map(
    (part) => spans.find(({ fromMs, toMs }) => fromMs <= part.fromMs && toMs >= part.fromMs) ?? part,
  );
}

const moment = (ms: number, figure: string | null, words: string): Moment => ({ ms, figure, words });

function oneWindow({ plan }: Worked, day: DayOfYear, w: number, whole: () => Span, runS: number): Workings {
  const { place } = plan;
  const part = day.windows[w] as Span;
  const name = (what: string) => ofWindow(day.date, w, what);
  const title = day.windows.length === 1 ? 'Window' : `Window ${w + 1}`;
  const neededTerm = { text: ' - neededS', term: term('neededS', 'light needed', runS, 's', 'run.neededS') };
  const key = (what: string) => `window.${w + 1}.${what}`;
  const earliestMs = part.fromMs;
  const latestMs = part.toMs - runS * 1000;
  const onDay = (): Draft =>
    betweenDraft(
      `${title}: length`,
      place,
      moment(part.fromMs, null, 'beginning on this day'),
      moment(part.toMs, null, 'end'),
    );
  return {
    [key('from')]: () => edge(plan, `${title}: begins`, whole().fromMs),
    [key('to')]: () => edge(plan, `${title}: ends`, whole().toMs),
    [key('lengthS')]: () => ({
      ...betweenDraft(
        `${title}: light`,
        place,
        moment(whole().fromMs, name('from'), 'its beginning'),
        moment(whole().toMs, name('to'), 'its end'),
      ),
      remarks: [askedText(plan)],
    }),
    [key('countsS')]: () => ({
      ...onDay(),
      remarks: [
        'What a run that starts on this day can have of it: from midnight on, and past the next as far as the run goes.',
      ],
    }),
    [key('spareS')]: () => ({
      title: `${title}: to spare`,
      unit: 's',
      expression: 'countsS - neededS',
      terms: [
        term('countsS', 'window as it counts for this day', worth(onDay()), 's', name('countsS')),
        neededTerm.term,
      ],
      remarks: ['Less than nothing: too short by so much.'],
      source: 'Definition.',
    }),
    ...(latestMs >= earliestMs && {
      [key('earliest')]: () => earliest(plan, title, earliestMs),
      [key('latest')]: () => latest(plan, title, part, runS),
    }),
  };
}

/** The earliest start: where the window begins on the day, up to a whole second. */
function earliest(plan: Plan, title: string, ms: number): Draft {
  const shown = momentBase(plan.place, Math.ceil(ms / 1000) * 1000);
  const up = shown.value === 0 && clockSeconds(plan.place, ms) !== 0 ? ' - 86400' : '';
  return {
    ...shown,
    title: `${title}: earliest start`,
    expression: `ceil(beginsS)${up}`,
    terms: [term('beginsS', 'beginning of the window on this day', clockSeconds(plan.place, ms), 's')],
    remarks: [...shown.remarks, askedText(plan), sunText(plan, ms)],
    source: SOURCE,
  };
}

/** The latest start: the end of the window, less what the run needs. */
function latest({ place }: Plan, title: string, part: Span, runS: number): Draft {
  const atMs = part.toMs - runS * 1000;
  const draft = betweenDraft('', place, moment(atMs, null, ''), moment(part.toMs, null, 'end of the window'));
  const shown = momentDraft(`${title}: latest start`, place, atMs);
  // From the end back: midnights and changes of the clock between stand on the other side.
  const between = draft.terms.slice(2);
  const signs = { days: ' + 86400 * days', changeS: ' - changeS' } as const;
  const text = between.map(({ symbol }) => signs[symbol as keyof typeof signs]).join('');
  return {
    ...shown,
    expression: `endS - neededS${text}`,
    terms: [
      { ...(draft.terms[0] as Draft['terms'][number]), symbol: 'endS' },
      term('neededS', 'light needed', runS, 's', 'run.neededS'),
      ...between,
    ],
  };
}

/** Workings of the windows of a day; names without the `days.DATE.` before them. */
export function windowWorkings(of: Worked, day: DayOfYear, runS: number): Workings {
  let known: Span[] | null = null;
  const whole = (w: number) => (): Span => {
    known ??= wholes(of.plan, day);
    return known[w] as Span;
  };
  return Object.assign({}, ...day.windows.map((_, w) => oneWindow(of, day, w, whole(w), runS)));
}
