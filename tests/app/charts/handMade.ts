/** Schedules built by hand: every figure in them is known, none comes from the engine. */
import type { Rung } from '../../../src/engine/exposure/ladder.ts';
import type { RampChange } from '../../../src/engine/exposure/ramp.ts';
import { defaultPlan, newAxis, newSource } from '../../../src/engine/plan/parse.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import type {
  AxisColumns,
  Columns,
  ExposureSummary,
  Schedule,
  ScheduleEvent,
  SourceSummary,
} from '../../../src/engine/schedule-types.ts';
import type { SkyRun } from '../../../src/engine/sky/run.ts';
import type { SkyColumns } from '../../../src/engine/sky/track.ts';

/** 2026-08-08 20:31:10 in Central European Summer Time. */
export const START_MS = Date.UTC(2026, 7, 8, 18, 31, 10);

const column = (frames: number, of: (k: number) => number) =>
  Float64Array.from({ length: frames }, (_, k) => of(k));

/** Columns of a rig that stands still, interval 10 s, camera 3 s, spare 6.5 s beside a guard of 0.5 s. */
export function columnsOf(frames: number, changed: Partial<Columns> = {}): Columns {
  return {
    elapsedS: column(frames, (k) => k * 10),
    intervalS: column(frames, () => 10),
    exposureS: column(frames, () => 2),
    holdS: column(frames, () => 2.1),
    cameraS: column(frames, () => 3),
    moveS: column(frames, () => 0),
    settleS: column(frames, () => 0),
    rigS: column(frames, () => 0),
    spareS: column(frames, () => 6.5),
    rung: null,
    evScene: null,
    evError: null,
    sky: null,
    ringPx: null,
    subjectPx: null,
    backgroundPx: null,
    aimMissPx: null,
    axes: [],
    sources: [],
    cardIndex: new Uint8Array(frames),
    cardBytes: column(frames, (k) => (k + 1) * 50e6),
    bufferBytes: column(frames, () => 50e6),
    ...changed,
  };
}

/** A schedule around those columns. */
export function scheduleOf(columns: Columns, changed: Partial<Schedule> = {}): Schedule {
  const frames = columns.elapsedS.length;
  const lastS = columns.elapsedS[frames - 1] ?? 0;
  return {
    columns,
    totals: {
      frames,
      clipFrames: frames,
      frameRate: 25,
      rawIntervalS: 10,
      intervalS: 10,
      dialS: 10,
      eventDurationS: lastS,
      clipLengthS: frames / 25,
      speedUp: 250,
      firstFrameAt: '2026-08-08T20:31:10+02:00',
      lastFrameAt: '',
      shortestIntervalS: 3.5,
      longestCycleFrame: 1,
      tightestSpareS: 6.5,
      tightestFrame: 1,
      frameBytes: 50e6,
      storageBytes: frames * 50e6,
      copiesBytes: frames * 100e6,
      energyWh: 0,
    },
    sources: [],
    cards: [
      { name: 'Card A', usableBytes: 60e9, usedBytes: frames * 50e6, firstFrame: 1, lastFrame: frames },
    ],
    events: [],
    findings: [],
    margins: [],
    exposure: null,
    rig: { path: null, aim: null, image: null, ringing: null, balance: null },
    sky: null,
    startMs: START_MS,
    offsets: [{ fromMs: START_MS, offsetMin: 120 }],
    counts: { stop: 0, warning: 0, note: 0 },
    verdict: '',
    ...changed,
  };
}

/** An event at a frame, counted from 1. */
export const eventAt = (frame: number, kind: ScheduleEvent['kind'] = 'swap'): ScheduleEvent => ({
  kind,
  frame,
  elapsedS: (frame - 1) * 10,
  at: '',
  text: '',
  lostFrames: 0,
});

/** One battery over the run. */
export const battery = (changed: Partial<SourceSummary> = {}): SourceSummary => ({
  name: 'Pack',
  kind: 'battery',
  ratedWh: 20,
  usableWh: 16,
  drawnWh: 0,
  meanW: 0,
  needed: 1,
  brought: 1,
  swapFrames: [],
  shortAtFrame: null,
  flight: 'cabin',
  ...changed,
});

/** A plan with a boom in millimetres and a pan in degrees, moving between exposures. */
export function planWithAxes(): Plan {
  const plan = defaultPlan();
  const boom = { ...newAxis(), name: 'Boom', unit: 'mm' as const, travelMin: 0, travelMax: 750 };
  const pan = { ...newAxis(), name: 'Pan', unit: 'deg' as const, travelMin: -180, travelMax: 180 };
  return { ...plan, rig: { ...plan.rig, axes: [boom, pan] }, move: { ...plan.move, mode: 'moveShootMove' } };
}

/** A plan with one source of 20 Wh, a fifth of it kept, at a temperature at which it has its rated capacity. */
export function planWithSource(name = 'Pack', kind: 'battery' | 'mains' = 'battery'): Plan {
  const plan = defaultPlan();
  const source = { ...newSource(), name, kind, energyWh: 20, reserveShare: 0.2 };
  return { ...plan, power: { ...plan.power, temperatureC: 25, sources: [source], loads: [] } };
}

/** Columns of an axis from its positions. */
export function axisFrom(
  axis: Pick<AxisColumns, 'name' | 'unit' | 'stepsPerUnit' | 'steps' | 'moveS'>,
): AxisColumns {
  const positions = [...axis.steps];
  const moves = positions.slice(1).map((position, i) => Math.abs(position - (positions[i] ?? 0)));
  return {
    ...axis,
    lowestSteps: Math.min(...positions),
    highestSteps: Math.max(...positions),
    largestMoveSteps: Math.max(0, ...moves),
    moves: moves.filter((move) => move > 0).length,
    smallestMoveSteps: Math.min(Math.max(0, ...moves), ...moves.filter((move) => move > 0)),
    repeats: 0,
    firstRepeat: null,
    reversals: 0,
    firstReversal: null,
    takeUps: 0,
    takeUpS: 0,
  };
}

/** The sky's columns, from the altitudes of sun and moon at each frame; the sun stands at 300 degrees. */
export const skyColumns = (sunDeg: readonly number[], moonDeg = sunDeg.map(() => -10)): SkyColumns => ({
  sunAltitudeDeg: Float32Array.from(sunDeg),
  sunAzimuthDeg: new Float32Array(sunDeg.length).fill(300),
  moonAltitudeDeg: Float32Array.from(moonDeg),
});

/** Milliseconds of the epoch so many seconds after the first frame. */
export const msAt = (elapsedS: number): number => START_MS + elapsedS * 1000;

/** The sky of a run of so many seconds: golden, then civil, then nautical, each for a third. */
export function skyRun(runS: number, changed: Partial<SkyRun> = {}): SkyRun {
  const [first, second, end] = [runS / 3, (runS * 2) / 3, runS].map(msAt) as [number, number, number];
  const whole = { fromMs: START_MS, toMs: end };
  return {
    run: whole,
    days: whole,
    events: [
      { name: 'sunset', ms: first, noEvent: null },
      { name: 'civilDusk', ms: second, noEvent: null },
    ],
    bands: [
      { band: 'golden', fromMs: START_MS, toMs: first },
      { band: 'civil', fromMs: first, toMs: second },
      { band: 'nautical', fromMs: second, toMs: end },
    ],
    windows: null,
    best: null,
    outside: null,
    setHits: [],
    inFrame: [],
    ...changed,
  };
}

/** Rungs a whole stop apart from EV 10 down: shutter 1/8, 1/4, then ISO 200 by hand. */
export const RUNGS: readonly Rung[] = [
  rung({ index: 0, shutterS: 1 / 8, shutterMark: '1/8', ev100: 10 }),
  rung({
    index: 1,
    shutterS: 1 / 4,
    shutterMark: '1/4',
    ev100: 9,
    by: 'camera',
    setting: 'shutter',
    stepIndex: 0,
  }),
  rung({
    index: 2,
    shutterS: 1 / 4,
    shutterMark: '1/4',
    iso: 200,
    ev100: 8,
    by: 'hand',
    setting: 'iso',
    stepIndex: 1,
  }),
];

function rung(changed: Partial<Rung>): Rung {
  const settings = { shutterS: 1, shutterMark: '1', apertureF: 8, iso: 100, openS: changed.shutterS ?? 1 };
  return { index: 0, ...settings, ev100: 0, setting: null, by: null, stepIndex: null, ...changed };
}

/** Settings over a run: the rung of every frame, and the light that it should have had. */
export function exposedColumns(rungs: readonly number[], wantedEv: readonly number[]) {
  return {
    rung: Uint16Array.from(rungs),
    evScene: Float32Array.from(wantedEv),
    evError: Float32Array.from(wantedEv, (ev, k) => ev - (RUNGS[rungs[k] ?? 0]?.ev100 ?? 0)),
  };
}

/** The summary that goes with those rungs. */
export function exposureOf(
  rungs: readonly number[],
  changed: Partial<ExposureSummary> = {},
): ExposureSummary {
  const changes = rungs.flatMap((now, k): RampChange[] => {
    const [from, to] = [RUNGS[rungs[k - 1] ?? now], RUNGS[now]];
    if (!from || !to || from === to) return [];
    return [{ frame: k + 1, from, to, by: to.by ?? 'camera' }];
  });
  return {
    follows: true,
    rungs: RUNGS,
    changes,
    ceiling: { cycleS: 10, angleS: Number.POSITIVE_INFINITY, ceilingS: 10, binds: null },
    shortestIntervalS: 10,
    longestIntervalS: 10,
    ...changed,
  };
}
