import { describe, expect, it } from 'vitest';
import { placeMarks } from '../../../src/app/charts/marks.ts';
import { boxOf, placeNames, textWidth } from '../../../src/app/charts/names.ts';
import { runView } from '../../../src/app/charts/runView.ts';
import { lineStyle, type Series, type Trace, traceOf } from '../../../src/app/charts/trace.ts';
import { columnsOf, scheduleOf } from './handMade.ts';

const view = runView(scheduleOf(columnsOf(5)), 420);
const series = (values: number[], breaks: number[] = [], filled = false): Series => ({
  name: 'One',
  values,
  factor: 2,
  breaks,
  filled,
  tone: 'blue',
  dash: '',
});
const down = (value: number) => 100 - value;

describe('a trace', () => {
  it('runs through every frame at its place', () => {
    const trace = traceOf(view, series([0, 10, 20, 10, 0]), down, 100);
    expect(trace.path).toBe('M10 100L110 80L210 60L310 80L410 100');
    expect(trace.area).toBe('');
  });

  it('starts anew at a break, and closes each area by itself', () => {
    const trace = traceOf(view, series([0, 10, 0, 10, 20], [2], true), down, 100);
    expect(trace.path).toBe('M10 100L110 80M210 100L310 80L410 60');
    expect(trace.area).toBe('M10 100L110 80V100H10ZM210 100L310 80L410 60V100H210Z');
  });

  it('goes across and then up or down, if it is stepped', () => {
    const trace = traceOf(view, { ...series([0, 0, 10, 10, 5]), stepped: true }, down, 100);
    expect(trace.path).toBe('M10 100H210V80H410V90');
    const still = traceOf(view, { ...series([3, 3, 3, 3, 3]), stepped: true }, down, 100);
    expect(still.path).toBe('M10 94H410');
  });

  it('leaves out what is too low and begins anew behind it', () => {
    const trace = traceOf(view, { ...series([5, 4, -1, 4, 5]), from: 0 }, down, 100);
    expect(trace.path).toBe('M10 90L110 92M310 92L410 90');
  });

  it('draws what a frame stands for, where the values only choose the frames', () => {
    const trace = traceOf(view, { ...series([0, 1, 2, 1, 0]), at: (index) => index * 10 }, down, 100);
    expect(trace.ys).toEqual([100, 90, 80, 70, 60]);
  });

  it('starts anew even where the frame of the break is thinned away', () => {
    const frames = 4000;
    const long = runView(scheduleOf(columnsOf(frames)), 40);
    // A saw: down by one each frame, up to the top at 2000.
    const values = Array.from({ length: frames }, (_, k) => -(k % 2000));
    const path = traceOf(long, { ...series(values, [2000]), factor: 1 }, down, 0).path;
    expect(path.match(/M/g)).toHaveLength(2);
  });

  it('is nothing where there is nothing', () => {
    const trace = traceOf(view, series([Number.POSITIVE_INFINITY]), down, 100);
    expect(trace).toMatchObject({ path: '', xs: [], ys: [] });
  });
});

describe('line styles', () => {
  it('differ in colour or dash for twenty-five lines, and in dash for neighbours', () => {
    const all = Array.from({ length: 25 }, (_, n) => lineStyle(n));
    expect(new Set(all.map((style) => `${style.tone} ${style.dash}`)).size).toBe(25);
    expect(all.slice(1, 5).every((style, n) => style.dash !== all[n]?.dash)).toBe(true);
  });
});

const level = (name: string, y: number): Trace => ({
  name,
  tone: 'blue',
  dash: '',
  xs: [0, 400],
  ys: [y, y],
  path: '',
  area: '',
});

describe('names of lines', () => {
  it('stand on the side that has room', () => {
    const [upper, lower] = placeNames([level('Upper', 40), level('Lower', 46)], [], {
      widthPx: 400,
      heightPx: 100,
    });
    expect(upper?.y).toBeLessThan(40);
    expect(lower?.y).toBeGreaterThan(46 + 10);
  });

  it('are left out where there is none', () => {
    const lines = [10, 20, 30, 40, 50].map((y) => level(`At ${y}`, y));
    expect(placeNames(lines, [], { widthPx: 400, heightPx: 60 })).toEqual([]);
  });

  it('keep clear of what already stands there', () => {
    const taken = [boxOf(200, 30, 400)];
    const [name] = placeNames([level('Line', 40)], taken, { widthPx: 400, heightPx: 100 });
    expect(name?.y).toBeGreaterThan(40);
  });
});

describe('marks', () => {
  const around = { traces: [], widthPx: 400, heightPx: 100 };
  it('have their label on the right, or on the left at the end', () => {
    const [first, last] = placeMarks(
      [
        { x: 20, kind: 'change', label: 'Swap' },
        { x: 390, kind: 'end', label: 'Empty' },
      ],
      around,
    );
    expect(first?.labelX).toBeGreaterThan(20);
    expect(last?.labelX).toBeLessThan(390);
  });

  it('leave out labels that would run into the next moment, never the marks', () => {
    const moments = Array.from({ length: 20 }, (_, n) => ({
      x: 20 * n,
      kind: 'change' as const,
      label: 'Swap pack',
    }));
    const marks = placeMarks(moments, around);
    expect(marks).toHaveLength(20);
    const width = textWidth('Swap pack');
    const shown = marks.filter((mark) => mark.label !== '');
    expect(shown.every((mark) => moments.every(({ x }) => Math.abs(x - mark.labelX) > width / 2))).toBe(true);
  });

  it('are drawn once where they fall together', () => {
    const together = [50, 50.5, 51].map((x) => ({ x, kind: 'change' as const, label: 'Swap' }));
    expect(placeMarks(together, around)).toHaveLength(1);
  });

  it('say it shorter where the whole label would lie on a line', () => {
    const wall = [20, 40, 60, 80].map((y) => ({ ...level('Wall', y), xs: [100, 400] }));
    const moment = { x: 60, kind: 'change' as const, label: 'A label that is long', short: 'a' };
    expect(placeMarks([moment], { ...around, traces: wall })[0]?.label).toBe('a');
    expect(placeMarks([moment], around)[0]?.label).toBe('A label that is long');
  });
});
