/** `schedule()` against a kernel that only fills as many columns with one multiply. */
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import type { Columns } from '../../src/engine/schedule-types.ts';
import { benchPlan } from './plans.ts';
import { type Figure, median, quantile } from './report.ts';

type Column = Float64Array | Int32Array | Uint8Array;

/** All typed arrays of a schedule, those of axes and sources too. */
export function columnsOf(columns: Columns): Column[] {
  const found = (value: unknown): Column[] => {
    if (ArrayBuffer.isView(value)) return [value as Column];
    return value !== null && typeof value === 'object' ? Object.values(value).flatMap(found) : [];
  };
  return found(columns);
}

/** Makes arrays of the same number, kinds and lengths, and fills each with one multiply an entry. */
function kernel(like: readonly Column[]): Column[] {
  return like.map((column, i) => {
    const Kind = column.constructor as new (length: number) => Column;
    const filled = new Kind(column.length);
    fill(filled, i + 0.5);
    return filled;
  });
}

function fill(column: Column, factor: number): void {
  for (let k = 0; k < column.length; k += 1) column[k] = k * factor;
}

function timed(work: () => unknown): number {
  const started = performance.now();
  work();
  return performance.now() - started;
}

/** Milliseconds of both, taken in turn, so that what slows one slows the other. */
function sideBySide(plan: Plan, runs: number): { scheduleMs: number[]; kernelMs: number[]; bytes: number } {
  const columns = columnsOf(schedule(plan).columns);
  const scheduleMs: number[] = [];
  const kernelMs: number[] = [];
  for (let run = 0; run < runs; run += 1) {
    kernelMs.push(timed(() => kernel(columns)));
    scheduleMs.push(timed(() => schedule(plan)));
  }
  return { scheduleMs, kernelMs, bytes: columns.reduce((sum, { byteLength }) => sum + byteLength, 0) };
}

const DAY = 86_400;
const MILLION = 1_000_000;
// The first runs are the compiler's, not the engine's.
const WARM_UP = 10;

/** Time, growth and memory of the engine. */
export function engineFigures(): Figure[] {
  sideBySide(benchPlan(DAY), WARM_UP);
  const day = sideBySide(benchPlan(DAY), 60);
  const long = sideBySide(benchPlan(MILLION), 12);
  const growth = (ms: 'scheduleMs' | 'kernelMs') => (median(long[ms]) / MILLION) * (DAY / median(day[ms]));
  return [
    {
      what: 'schedule(), 86,400 frames, 5 axes, 4 sources: median',
      value: median(day.scheduleMs),
      unit: 'ms',
      budget: 16.7,
    },
    { what: '  95th percentile', value: quantile(day.scheduleMs, 0.95), unit: 'ms' },
    { what: '  kernel that fills the same columns: median', value: median(day.kernelMs), unit: 'ms' },
    {
      what: '  schedule() / kernel',
      value: median(day.scheduleMs) / median(day.kernelMs),
      unit: '×',
      budget: 3,
    },
    { what: 'schedule(), 1,000,000 frames: median', value: median(long.scheduleMs), unit: 'ms' },
    { what: '  schedule() / kernel', value: median(long.scheduleMs) / median(long.kernelMs), unit: '×' },
    {
      what: '  time a frame, 1,000,000 / 86,400 frames: schedule()',
      value: growth('scheduleMs'),
      unit: '×',
      budget: 1.5,
    },
    { what: '  the same of the kernel: what fresh memory costs', value: growth('kernelMs'), unit: '×' },
    {
      what: '  growth of schedule() / growth of the kernel',
      value: growth('scheduleMs') / growth('kernelMs'),
      unit: '×',
    },
    { what: '  memory of the columns', value: long.bytes / MILLION, unit: 'bytes a frame', budget: 400 },
  ];
}
