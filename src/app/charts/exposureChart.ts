/** What light the scene gives and what light the settings take, as exposure values, with every change of settings. */
import { rungWords } from '../../engine/exposure/ramp-words.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { ExposureSummary } from '../../engine/schedule-types.ts';
import { ofFrame } from '../../engine/working/names.ts';
import { plural } from '../format/numbers.ts';
import {
  type ChartModel,
  dotsOf,
  heightFor,
  type Level,
  paddedDomain,
  type Reading,
  STRETCH_FOOT_PX,
  type Stretch,
  yScale,
} from './chart.ts';
import { type Exposed, exposedRun, outOfRange } from './exposed.ts';
import { type Limit, limitsOf, MOST_MARKS, momentsOf, namesOf, placesOf } from './exposureMarks.ts';
import { fixed } from './format.ts';
import { markBoxes, placeMarks } from './marks.ts';
import { type Box, boxOf, textWidth } from './names.ts';
import type { RunView } from './runView.ts';
import { type Domain, extent, labelledTicks } from './scale.ts';
import { keptOf, type Series, type Trace, traceOf, valueAt } from './trace.ts';

const USUAL_HEIGHT_PX = 168;
const TITLE_PX = 26;

interface Lines {
  scene: Series;
  /** What the picture should have; null if that is the scene itself. */
  wanted: Series | null;
  settings: Series;
}

/** The lines on their axis. */
interface Drawn {
  lines: Lines;
  series: Series[];
  limits: Limit[];
  domain: Domain;
  heightPx: number;
  traces: Trace[];
  y(ev100: number): number;
}

/** The chart of scene and settings; null if the light is not planned. */
export function exposureChart(view: RunView, plan: Plan): ChartModel | null {
  const run = exposedRun(view.schedule);
  if (run === null) return null;
  const { lines, series, limits, domain, heightPx, traces, y } = drawnLines(view, run, plan);
  const { byHand, byCamera } = changesOf(run.exposure);
  const size = { widthPx: view.widthPx, heightPx };
  const marks = placeMarks(momentsOf(view, run, byHand, y), { traces, ...size });
  const teeth = placesOf(view, byCamera, 2);
  const stretches = outOfRange(view, run, plan);
  const taken = [...markBoxes(marks), ...stretches.map((one) => stretchBox(one, heightPx))];
  return {
    id: 'exposure',
    title: 'Exposure',
    unit: 'EV',
    heightPx,
    domain: paddedDomain(domain, heightPx),
    // Beside the title there is no room for figures.
    ticks: labelledTicks(domain, 6, 0).filter(({ value }) => y(value) > TITLE_PX),
    traces,
    names: namesOf(traces, limits, teeth, taken, { ...size, y }),
    bands: [],
    levels: limits.map(limitLevel),
    marks,
    teeth,
    wedges: byHand.length > MOST_MARKS ? placesOf(view, byHand, 5) : [],
    stretches,
    summary: exposureInWords(run, lines),
    note: null,
    read: (index) => readExposure(run, lines, index),
    dots: (index) => dotsOf(series, y, index),
    table: [
      { heading: 'Settings', cell: (index) => rungWords(run.rungAt(index)), of: how('evSettings') },
      {
        heading: 'Settings, EV',
        cell: (index) => fixed(valueAt(lines.settings, index), 1),
        of: how('evSettings'),
      },
      { heading: 'Scene, EV', cell: (index) => fixed(valueAt(lines.scene, index), 1), of: how('evScene') },
    ],
  };
}

const how = (what: string) => (index: number) => ofFrame(index, what);

/** Where the words of a stretch stand. */
const stretchBox = ({ fromX, toX, label }: Stretch, heightPx: number): Box =>
  boxOf((fromX + toX) / 2, heightPx - STRETCH_FOOT_PX, textWidth(label));

const changesOf = ({ changes }: ExposureSummary) => ({
  byHand: changes.filter(({ by }) => by === 'hand'),
  byCamera: changes.filter(({ by }) => by === 'camera'),
});

function drawnLines(view: RunView, run: Exposed, plan: Plan): Drawn {
  const lines = linesOf(run, plan);
  const series = [lines.scene, ...(lines.wanted ? [lines.wanted] : []), lines.settings];
  const kept = series.map((one) => keptOf(view, one));
  const spans = series.flatMap((one, n) => extent((kept[n] ?? []).map((i) => valueAt(one, i))) ?? []);
  const limits = limitsOf(run.exposure, extent(spans) ?? [0, 0], view.widthPx);
  const domain = evDomain([...spans, ...limits.map(({ ev100 }) => ev100)]);
  // Below the lines' own readings stand the three settings, and how long they last.
  const heightPx = heightFor(USUAL_HEIGHT_PX, series.length + 4);
  const y = yScale(domain, heightPx);
  const traces = series.map((one, n) => traceOf(view, one, y, heightPx, kept[n]));
  return { lines, series, limits, domain, heightPx, traces, y };
}

function linesOf({ evScene, rung, wantedAt, rungAt }: Exposed, plan: Plan): Lines {
  const plain = { factor: 1, breaks: [], filled: false };
  const isNight = plan.light.kind === 'sky' && plan.exposure.ramp.nightStops > 0;
  return {
    scene: { ...plain, name: 'Scene', values: evScene, tone: 'ink', dash: '1 4' },
    wanted: isNight
      ? { ...plain, name: 'Wanted', values: evScene, at: wantedAt, tone: 'amber', dash: '7 4' }
      : null,
    settings: {
      ...plain,
      name: 'Settings',
      values: rung,
      at: (index) => rungAt(index).ev100,
      stepped: true,
      tone: 'blue',
      dash: '',
    },
  };
}

/** Whole numbers two apart, so that the axis does not change with every edit; above, room for the teeth. */
function evDomain(values: readonly number[]): Domain {
  const [low, high] = extent(values) ?? [0, 0];
  const from = Math.floor(low / 2) * 2;
  return [from, Math.ceil((high + 1) / 2) * 2];
}

const limitLevel = ({ ev100 }: Limit): Level => ({ value: ev100, fromX: null, toX: null, kind: 'limit' });

function readExposure(
  { exposure, rungAt }: Exposed,
  { scene, wanted, settings }: Lines,
  index: number,
): Reading[] {
  const rung = rungAt(index);
  const ev = (line: Series, of?: string): Reading => ({
    style: line,
    name: line.name,
    value: fixed(valueAt(line, index), 1),
    unit: 'EV',
    ...(of && { of: ofFrame(index, of) }),
  });
  return [
    { style: null, name: 'Shutter', value: rung.shutterMark, unit: 's', of: ofFrame(index, 'openS') },
    {
      style: null,
      name: 'Aperture',
      value: `f/${rung.apertureF}`,
      unit: '',
      of: ofFrame(index, 'apertureF'),
    },
    { style: null, name: 'ISO', value: String(rung.iso), unit: '', of: ofFrame(index, 'iso') },
    ev(settings, 'evSettings'),
    ...(wanted ? [ev(wanted, 'evWanted')] : []),
    ev(scene, 'evScene'),
    ...nextChange(exposure, index),
  ];
}

/** Frames until the settings change again. */
function nextChange({ changes }: ExposureSummary, index: number): Reading[] {
  const next = changes.find(({ frame }) => frame > index + 1);
  return next
    ? [
        {
          style: null,
          name: 'Next change in',
          value: String(next.frame - 1 - index),
          unit: 'fr',
          of: ofFrame(index, 'toChange'),
        },
      ]
    : [];
}

function exposureInWords({ exposure, rungAt, evScene }: Exposed, { scene }: Lines): string {
  const last = evScene.length - 1;
  const light = `The scene goes from EV ${fixed(valueAt(scene, 0), 1)} to ${fixed(valueAt(scene, last), 1)}.`;
  const { changes } = exposure;
  if (changes.length === 0) return `${light} The settings stay at ${rungWords(rungAt(0))}.`;
  const hands = changes.filter(({ by }) => by === 'hand').length;
  const how = `${plural(changes.length, 'change')}, ${hands === 0 ? 'all by the camera' : `${hands} by hand`}`;
  return `${light} The settings go from ${rungWords(rungAt(0))} to ${rungWords(rungAt(last))} in ${how}.`;
}
