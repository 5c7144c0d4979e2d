/** Where the bars of a cycle lie at one width, and which of them have room for their names. */
import { ofFrame } from '../../engine/working/names.ts';
import type { Bar, BarKind, CycleModel } from './cycleModel.ts';
import { secondsText } from './format.ts';
import { linear, niceStep } from './scale.ts';

/** Narrower drawings put the names of the lanes above them. */
const WIDE_PX = 560;
const NAMES_PX = 72;
const CHARACTER_PX = 7.6;
const INSET_PX = 10;

/** A bar with its place; `shows` says how much of its name stands in it. */
export interface PlacedBar extends Bar {
  x: number;
  width: number;
  shows: 'all' | 'name' | 'nothing';
}

/** A mark of the seconds axis; an empty label is a mark between. */
export interface AxisTick {
  x: number;
  label: string;
}

/** One bar's name for the line below the drawing. */
export interface LegendItem {
  kind: BarKind;
  text: string;
  label: string;
  /** Its times, each with the name of its working; none where there are too many to tell. */
  times: readonly { text: string; of: string }[];
}

/** The drawing of a cycle, pixels. */
export interface CycleLayout {
  wide: boolean;
  height: number;
  /** First and last pixel of the time axis. */
  left: number;
  right: number;
  x(seconds: number): number;
  /** Tops of the lanes, and their height. */
  cameraY: number;
  rigY: number;
  laneHeight: number;
  axisY: number;
  dimensionY: number;
  camera: PlacedBar[];
  rig: PlacedBar[];
  free: PlacedBar[];
  ticks: AxisTick[];
  legend: LegendItem[];
}

const WIDE = { height: 192, cameraY: 38, rigY: 88, laneHeight: 40, axisY: 136, dimensionY: 176 };
const NARROW = { height: 202, cameraY: 46, rigY: 106, laneHeight: 32, axisY: 146, dimensionY: 186 };

/** Lays a cycle out on a drawing of that width. */
export function cycleLayout(model: CycleModel, width: number): CycleLayout {
  const wide = width >= WIDE_PX;
  const left = wide ? NAMES_PX : 0;
  const right = width - 4;
  const endS = Math.max(model.intervalS, model.lanesS + model.guardS) * 1.1;
  const x = linear([0, endS], [left, right]);
  const place = (bar: Bar) => placed(bar, x, model.intervalS);
  const placeFree = (bar: Bar) => placed(bar, x, endS);
  const camera = model.camera.map(place);
  const rig = model.rig.map(place);
  const free = model.free.map(placeFree);
  return {
    wide,
    ...(wide ? WIDE : NARROW),
    left,
    right,
    x,
    camera,
    rig,
    free,
    ticks: secondsAxis(endS, x, right - left),
    legend: legendOf(
      Object.entries({ camera, rig, free }).flatMap(([lane, bars]) =>
        bars.map((bar, n) => ({ ...bar, of: ofFrame(model.frame - 1, `lane.${lane}.${n + 1}.lastsS`) })),
      ),
    ),
  };
}

/** Estimated width of a text of 14 px with some air at its ends. */
export const widthOf = (text: string): number => text.length * 7.1 + 16;

const barText = (bar: Bar) => `${bar.label} ${secondsText(bar.durationS)} s`;

/** A bar with its place. Its name keeps to what lies before `untilS`. */
function placed(bar: Bar, x: (seconds: number) => number, untilS: number): PlacedBar {
  const from = x(bar.startS);
  const width = x(bar.startS + bar.durationS) - from;
  const room = Math.min(width, x(untilS) - from);
  const fits = (text: string) => text.length * CHARACTER_PX + 2 * INSET_PX <= room;
  const shows = fits(barText(bar)) ? 'all' : fits(bar.label) ? 'name' : 'nothing';
  return { ...bar, x: from, width, shows };
}

function secondsAxis(endS: number, x: (seconds: number) => number, widthPx: number): AxisTick[] {
  const step = niceStep((endS * 64) / widthPx);
  const halves = Math.floor((endS / step) * 2 + 1e-9);
  return Array.from({ length: halves + 1 }, (_, n) => ({
    x: x((n * step) / 2),
    label: n % 2 === 0 ? String(Number(((n * step) / 2).toPrecision(6))) : '',
  }));
}

/** Names and times that found no room in their bars; several bars of one kind together. */
function legendOf(bars: readonly (PlacedBar & { of: string })[]): LegendItem[] {
  const homeless = bars.filter((bar) => bar.shows !== 'all');
  const labels = [...new Set(homeless.map((bar) => bar.label))];
  return labels.flatMap((label) => {
    const alike = bars.filter((bar) => bar.label === label);
    const first = alike[0];
    if (!first) return [];
    const times = alike.map(({ durationS, of }) => ({ text: secondsText(durationS), of }));
    return [
      { kind: first.kind, text: `${label} ${timesText(alike)}`, label, times: times.length > 3 ? [] : times },
    ];
  });
}

function timesText(bars: readonly Bar[]): string {
  const times = bars.map((bar) => secondsText(bar.durationS));
  if (times.length <= 3) return `${times.join(' + ')}\u00A0s`;
  const total = bars.reduce((sum, bar) => sum + bar.durationS, 0);
  return `${times.length} times, ${secondsText(total)}\u00A0s in all`;
}
