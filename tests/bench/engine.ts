/** `schedule()` against a kernel that only fills as many columns with one multiply. */
import type { Plan } from '../../src/engine/plan/schema.ts';
import { Room } from '../../src/engine/room.ts';
import { schedule } from '../../src/engine/schedule.ts';
import type { Columns } from '../../src/engine/schedule-types.ts';
import { benchPlan } from './plans.ts';
import { type Figure, median, quantile } from './report.ts';

type Column = Float64Array | Float32Array | Int32Array | Uint16Array | Uint8Array;

/** All typed arrays of a schedule, those of axes and sources too. */
export function columnsOf(columns: Columns): Column[] {
  const found = (value: unknown): Column[] => {
    if (ArrayBuffer.isView(value)) return [value as Column];
    return value !== null && typeof value === 'object' ? Object.values(value).flatMap(found) : [];
  };
  return found(columns);
}

/** Makes arrays of the same number, kinds and lengths. */
const alike = (columns: readonly Column[]): Column[] =>
  columns.map((column) => new (column.constructor as new (length: number) => Column)(column.length));

/** The kernel: each array filled with one multiply an entry. */
function kernel(columns: readonly Column[]): void {
  for (const [i, column] of columns.entries()) fill(column, i + 0.5);
}

// One loop for each kind of array: a loop that meets five kinds is compiled for none.
const FILL = {
  Float64Array: (column: Float64Array, factor: number): void => {
    for (let k = 0; k < column.length; k += 1) column[k] = k * factor;
  },
  Float32Array: (column: Float32Array, factor: number): void => {
    for (let k = 0; k < column.length; k += 1) column[k] = k * factor;
  },
  Int32Array: (column: Int32Array, factor: number): void => {
    for (let k = 0; k < column.length; k += 1) column[k] = k * factor;
  },
  Uint16Array: (column: Uint16Array, factor: number): void => {
    for (let k = 0; k < column.length; k += 1) column[k] = k * factor;
  },
  Uint8Array: (column: Uint8Array, factor: number): void => {
    for (let k = 0; k < column.length; k += 1) column[k] = k * factor;
  },
};

function fill(column: Column, factor: number): void {
  const kind = column.constructor.name as keyof typeof FILL;
  FILL[kind](column as never, factor);
}

function timed(work: () => unknown): number {
  const started = performance.now();
  work();
  return performance.now() - started;
}

/** Milliseconds of filling the columns; each kind of memory with its kernel in turn, so that what slows one slows both. */
interface Timed {
  /** Into memory used before, as every edit in the page but the first is worked out, and as a kernel would. */
  scheduleMs: number[];
  kernelMs: number[];
  /** Into new memory, as at the prompt: there nothing of an earlier run waits to be collected. */
  freshScheduleMs: number[];
  freshKernelMs: number[];
  /** Into new memory, run after run, whatever the collector does meanwhile. */
  litteredMs: number[];
  bytes: number;
}

/** Collects what earlier runs left behind, where that can be asked for (`node --expose-gc`). */
const collect = (): void => globalThis.gc?.({ type: 'minor' });

function sideBySide(plan: Plan, runs: number): Timed {
  const columns = columnsOf(schedule(plan).columns);
  const kept = alike(columns);
  const room = new Room();
  const times: Timed = {
    scheduleMs: [],
    kernelMs: [],
    freshScheduleMs: [],
    freshKernelMs: [],
    litteredMs: [],
    bytes: columns.reduce((sum, { byteLength }) => sum + byteLength, 0),
  };
  // A room has its size from its second use on.
  for (let use = 0; use < 2; use += 1) schedule(plan, { room });
  for (let run = 0; run < runs; run += 1) {
    times.kernelMs.push(timed(() => kernel(kept)));
    times.scheduleMs.push(timed(() => schedule(plan, { room })));
  }
  for (let run = 0; run < runs; run += 1) {
    collect();
    times.freshKernelMs.push(timed(() => kernel(alike(columns))));
    collect();
    times.freshScheduleMs.push(timed(() => schedule(plan)));
  }
  for (let run = 0; run < runs; run += 1) times.litteredMs.push(timed(() => schedule(plan)));
  return times;
}

const DAY = 86_400;
const MILLION = 1_000_000;
// The first runs are the compiler's, not the engine's.
const WARM_UP = 10;

type Way = Exclude<keyof Timed, 'bytes'>;

const figure =
  (unit: string) =>
  (what: string, value: number, budget?: number): Figure =>
    budget === undefined ? { what, value, unit } : { what, value, unit, budget };
const ms = figure('ms');
const ratio = figure('×');

const KINDS = [
  { what: '', lit: false, rigged: false },
  { what: ', day-to-night ramp', lit: true, rigged: false },
  { what: ', aim and ringing', lit: false, rigged: true },
] as const;

type Kind = (typeof KINDS)[number];

/** A day of frames, side by side with the kernel, once the compiler is done. */
function dayOf({ lit, rigged }: Kind): Timed {
  sideBySide(benchPlan(DAY, lit, rigged), WARM_UP);
  return sideBySide(benchPlan(DAY, lit, rigged), 60);
}

/** Time of a day of frames. */
const dayFigures = (what: string, day: Timed): Figure[] => [
  ms(`schedule(), 86,400 frames, 5 axes, 4 sources${what}: median`, median(day.freshScheduleMs), 16.7),
  ms('  95th percentile', quantile(day.freshScheduleMs, 0.95)),
  ms('  kernel that fills the same columns: median', median(day.freshKernelMs)),
  ratio('  schedule() / kernel', median(day.freshScheduleMs) / median(day.freshKernelMs), 3),
  ms('  with what earlier runs left still to be collected: median', median(day.litteredMs)),
  ms('  into memory used before: median', median(day.scheduleMs), 16.7),
  ms('    kernel', median(day.kernelMs)),
];

/** How time grows with the frames, and memory. */
function longFigures({ lit, rigged }: Kind, day: Timed): Figure[] {
  const long = sideBySide(benchPlan(MILLION, lit, rigged), 12);
  const growth = (way: Way) => (median(long[way]) / MILLION) * (DAY / median(day[way]));
  return [
    ms('  1,000,000 frames, into memory used before: median', median(long.scheduleMs)),
    ratio('    time a frame against 86,400 frames', growth('scheduleMs'), 1.5),
    ratio('    the same of the kernel', growth('kernelMs')),
    ms('  1,000,000 frames, into new memory: median', median(long.freshScheduleMs)),
    ratio('    schedule() / kernel', median(long.freshScheduleMs) / median(long.freshKernelMs)),
    ratio('    time a frame against 86,400 frames', growth('freshScheduleMs')),
    ratio('    the same of the kernel: what new memory costs', growth('freshKernelMs')),
    { what: '  memory of the columns', value: long.bytes / MILLION, unit: 'bytes a frame', budget: 400 },
  ];
}

/** Time, growth and memory of the engine, with and without a ramp, and with aim and ringing. */
export const engineFigures = (): Figure[] =>
  KINDS.flatMap((kind) => {
    const day = dayOf(kind);
    return [...dayFigures(kind.what, day), ...longFigures(kind, day)];
  });

/** The times of a day of frames alone, each kind of plan named with where they are measured. */
export const dayFiguresIn = (where: string): Figure[] =>
  KINDS.flatMap((kind) => dayFigures(`${kind.what}, ${where}`, dayOf(kind)));
