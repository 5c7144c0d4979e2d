/**
 * What the sky says: no window, a run outside its window, the sun in the picture or on the set, stars that trail,
 * a start that goes by an event which does not happen.
 */
import { counted, figure, seconds, withUnit } from '../findings/words.ts';
import type { Plan } from '../plan/schema.ts';
import type { Draft, Run } from '../run.ts';
import { isoIn } from '../time/clock.ts';
import type { NoEvent } from './day.ts';
import { EVENT_WORDS } from './names.ts';
import { LONGEST_DAYS, type SkyRun } from './run.ts';
import type { Span } from './spans.ts';
import { skyStart } from './start.ts';
import { type Lens, leastDeclinationDeg, lensOver, starTrailPx } from './view.ts';

/** A run with its sky; null without a place. */
export type RunUnderSky = Run & { sky: SkyRun | null };

function whyNot(noEvent: NoEvent, event: Plan['start']['event']): string {
  const body = event.startsWith('moon') ? 'moon' : 'sun';
  if (noEvent === 'above all day') return `the ${body} stays above that altitude all day`;
  if (noEvent === 'below all day') return `the ${body} stays below that altitude all day`;
  if (noEvent === 'no such day') return 'the calendar of the place skips that day';
  return 'it falls on the day before or after';
}

function noStart({ plan }: Run): Draft[] {
  if (plan.start.tiedTo !== 'sky') return [];
  const start = skyStart(plan);
  if ('ms' in start) return [];
  const { event, date } = plan.start;
  const name = EVENT_WORDS[event];
  const message =
    start.noEvent === 'no place'
      ? `The start goes by ${name}, but the plan has no latitude and longitude.`
      : `The start goes by ${name}, which does not happen on ${date}: ${whyNot(start.noEvent, event)}.`;
  return [
    {
      id: 'no-start-event',
      severity: 'stop',
      subject: 'place',
      message,
      frame: null,
      values: { event, date, why: start.noEvent },
    },
  ];
}

/** Clock of an instant at the plan's place, with the date where it is not that of the first frame. */
function clockOf({ plan, start }: Run, ms: number): string {
  const iso = (at: number) => isoIn(Math.round(at / 1000) * 1000, plan.place);
  const [text, first] = [iso(ms), iso(start.startMs)];
  const clock = text.slice(11, 19);
  return text.slice(0, 10) === first.slice(0, 10) ? clock : `${text.slice(0, 10)} ${clock}`;
}

const longest = (spans: readonly Span[]): number =>
  spans.reduce((most, { fromMs, toMs }) => Math.max(most, (toMs - fromMs) / 1000), 0);

const nowhere: Draft = {
  id: 'no-window',
  severity: 'warning',
  subject: 'place',
  message: 'The plan asks for a window of the sun, but has no latitude and longitude.',
  frame: null,
  values: { why: 'no place' },
};

function windows(run: RunUnderSky): Draft[] {
  const { sky, plan } = run;
  if (!plan.window.used) return [];
  if (sky === null || sky.windows === null) return [nowhere];
  const runS = run.columns.elapsedS.at(-1) ?? 0;
  const drafts: Draft[] = [];
  if (sky.best === null) {
    const longestS = longest(sky.windows);
    const lack =
      longestS === 0 ? 'there is none' : `the longest lasts ${seconds(longestS)}, the run ${seconds(runS)}`;
    drafts.push({
      id: 'no-window',
      severity: 'warning',
      subject: 'place',
      message: `No window of this day holds the run: ${lack}.`,
      frame: null,
      values: { longestS, runS },
    });
  }
  if (sky.outside === null) return drafts;
  const { frame, frames } = sky.outside;
  const followed = runS * 1000 > sky.run.toMs - sky.run.fromMs ? ` within ${LONGEST_DAYS}\u00A0days` : '';
  const start = sky.best === null ? '' : ` A start at ${clockOf(run, sky.best.startMs)} would fit.`;
  drafts.push({
    id: 'outside-window',
    severity: 'warning',
    subject: 'place',
    message: `${counted(frames, 'frame')} of the run ${frames === 1 ? 'lies' : 'lie'} outside the window${followed}, first frame ${frame}.${start}`,
    frame,
    values: { frames, ...(sky.best === null ? {} : { bestStartMs: Math.round(sky.best.startMs) }) },
  });
  return drafts;
}

function inFrame({ sky }: RunUnderSky): Draft[] {
  const first = sky?.inFrame[0];
  if (!first) return [];
  const frames = sky.inFrame.reduce((sum, { firstFrame, lastFrame }) => sum + lastFrame - firstFrame + 1, 0);
  const nearest = sky.inFrame.reduce((a, b) => (b.nearestDeg < a.nearestDeg ? b : a));
  return [
    {
      id: 'sun-in-frame',
      severity: 'warning',
      subject: 'camera',
      message: `The sun is in the picture from frame ${first.firstFrame}, in ${counted(frames, 'frame')}, as near as ${withUnit(nearest.nearestDeg, 'deg')} to the lens axis. Never look at it through an optical finder; it can harm sensor and shutter too, and a photographic filter is no protection for the eye.`,
      frame: first.firstFrame,
      values: { frames, nearestDeg: nearest.nearestDeg, nearestFrame: nearest.nearestFrame },
    },
  ];
}

/** First frame, counted from 1, that opens within a span; null if none does. */
function frameIn({ columns, start, frameFrom }: Run, { fromMs, toMs }: Span): number | null {
  const frame = frameFrom((fromMs - start.startMs) / 1000);
  const ms = start.startMs + (columns.elapsedS[frame - 1] as number) * 1000;
  return ms >= fromMs && ms < toMs ? frame : null;
}

function onSet(run: RunUnderSky): Draft[] {
  const { plan, sky } = run;
  const first = sky?.setHits[0];
  if (!first) return [];
  const times = sky.setHits.length > 1 ? `, ${counted(sky.setHits.length, 'time')} in all` : '';
  const stopMotion = plan.technique === 'stopMotion';
  const advice = stopMotion ? ' Black out the pane for that time.' : '';
  return [
    {
      id: 'sun-on-set',
      severity: stopMotion ? 'warning' : 'note',
      subject: 'place',
      message: `From ${clockOf(run, first.fromMs)} to ${clockOf(run, first.toMs)} the sun reaches the set through the pane, if the sky is clear${times}.${advice}`,
      frame: frameIn(run, first),
      values: {
        fromMs: Math.round(first.fromMs),
        toMs: Math.round(first.toMs),
        times: sky.setHits.length,
      },
    },
  ];
}

/** Altitude of the sun below which stars show: the end of civil twilight. */
export const STARS_BELOW_DEG = -6;

/** Share of the longest exposure in all exposures of a bracket. */
function longestShare({ exposure: { bracketCount, bracketStops } }: Plan): number {
  let sum = 0;
  for (let i = 0; i < bracketCount; i += 1) sum += 2 ** (-i * bracketStops);
  return 1 / sum;
}

/**
 * Frames at night whose stars trail farther than the plan allows.
 * @param openS - seconds the shutter is open, one entry a frame
 * @param sunAltitudeDeg - one entry a frame; null if it is not known: then every frame counts as night
 */
export function starTrails(
  run: Pick<Run, 'plan' | 'columns'>,
  openS: ArrayLike<number>,
  sunAltitudeDeg: ArrayLike<number> | null,
): Draft[] {
  const { plan, columns } = run;
  const { view, camera, place } = plan;
  if (!view.stars) return [];
  const pitchMm = camera.sensorWidthMm / camera.imageWidthPx;
  const lensAt = lensOver(plan, columns.axes);
  let [frame, frames, worstPx, worstS] = [0, 0, 0, 0];
  let lens: Lens | null = null;
  let declinationDeg = 0;
  for (let k = 0; k < openS.length; k += 1) {
    const openShutterS = openS[k] as number;
    // Nothing trails farther than on the celestial equator: only what trails too far there is looked at closely.
    if (starTrailPx(openShutterS, 0, camera.focalLengthMm, pitchMm) <= view.starTrailMaxPx) continue;
    if (sunAltitudeDeg !== null && (sunAltitudeDeg[k] as number) >= STARS_BELOW_DEG) continue;
    if (view.used && place.latitudeDeg !== null && lens !== lensAt(k)) {
      lens = lensAt(k);
      declinationDeg = leastDeclinationDeg(lens, place.latitudeDeg, camera);
    }
    const px = starTrailPx(openShutterS, declinationDeg, camera.focalLengthMm, pitchMm);
    if (px <= view.starTrailMaxPx) continue;
    frame ||= k + 1;
    frames += 1;
    if (px > worstPx) [worstPx, worstS] = [px, openShutterS];
  }
  if (frames === 0) return [];
  return [
    {
      id: 'star-trails',
      severity: 'warning',
      subject: 'exposure',
      message: `Stars trail by up to ${figure(worstPx)}\u00A0px in ${seconds(worstS)}, ${withUnit(view.starTrailMaxPx, 'px')} are allowed, in ${counted(frames, 'frame')} from frame ${frame}.`,
      frame,
      values: { worstPx, worstS, allowedPx: view.starTrailMaxPx, frames },
    },
  ];
}

function stars(run: RunUnderSky): Draft[] {
  if (!run.plan.view.stars) return [];
  const { exposureS, sky } = run.columns;
  const share = longestShare(run.plan);
  return starTrails(
    run,
    exposureS.map((allS) => allS * share),
    sky?.sunAltitudeDeg ?? null,
  );
}

/** What the sky says of a run. */
export const judgeSky = (run: RunUnderSky): { findings: Draft[]; margins: [] } => ({
  findings: [...noStart(run), ...windows(run), ...inFrame(run), ...onSet(run), ...stars(run)],
  margins: [],
});
