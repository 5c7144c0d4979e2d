import { describe, expect, test } from 'vitest';
import { spanOf } from '../../../src/app/store/keyframes.ts';
import {
  handlesOf,
  nearestHandle,
  nudgedTo,
  type Plot,
  pulledTo,
  snapped,
  snapStep,
} from '../../../src/app/tracks/handles.ts';
import { lineAt } from '../../../src/app/tracks/useDoubleClick.ts';
import { newKeyframe } from '../../../src/engine/plan/parse.ts';
import type { Track } from '../../../src/engine/plan/schema.ts';

const spaced = (text: string) => text.replaceAll('\u00a0', ' ');

// 301 frames 12 s apart on 600 pixels, two to a frame; 2 mm a pixel, 0 at the foot of 200 pixels.
const span = spanOf(
  Float64Array.from({ length: 301 }, (_, k) => k * 12),
  false,
);
const plot: Plot = {
  x: (elapsedS) => elapsedS / 6,
  momentAt: (px) => px * 6,
  y: (position) => 200 - position / 2,
  unitsPerPx: 2,
  unit: 'mm',
};
const track: Track = {
  axis: 'Boom',
  keyframes: [
    newKeyframe({ share: 0, position: 0 }),
    newKeyframe({ at: 'frame', frame: 193, position: 310 }),
    newKeyframe({ at: 'time', timeS: 3600, position: 20 }),
  ],
  thereAndBack: false,
};
const none = { dx: 0, dy: 0, shiftKey: false, altKey: false };
const from = { index: 192, position: 310 };

describe('handles', () => {
  test('stand on the curve and say what they are', () => {
    const handles = handlesOf(track, span, plot, 0);
    expect(handles.map(({ x, y }) => [x, y])).toEqual([
      [0, 200],
      [384, 45],
      [600, 190],
    ]);
    expect(spaced(handles[1]?.label ?? '')).toBe('Boom, keyframe 2 of 3: frame 193, 310 mm');
    expect(handlesOf(track, span, { ...plot, unit: 'deg' }, 0)[1]?.label).toMatch(/310°$/);
  });

  test('a place between two frames is said', () => {
    const even = spanOf(
      Float64Array.from({ length: 386 }, (_, k) => k * 14),
      true,
    );
    expect(handlesOf(track, even, plot, 0)[0]?.figures).toMatch(/^frame 1,/);
    const turn = { ...track, keyframes: [newKeyframe({ share: 1, position: 5 })] };
    expect(handlesOf(turn, even, plot, 0)[0]?.figures).toMatch(/^frame 193.5,/);
  });

  test('of keyframes beyond the run there are none', () => {
    const beyond = {
      ...track,
      keyframes: [...track.keyframes, newKeyframe({ at: 'frame', frame: 400, position: 1 })],
    };
    expect(handlesOf(beyond, span, plot, 0).map(({ k }) => k)).toEqual([0, 1, 2]);
  });

  test('of a long track there are those around the cursor, far enough apart', () => {
    const keyframes = Array.from({ length: 1000 }, (_, k) =>
      newKeyframe({ share: k / 999, position: k % 2 }),
    );
    const long = { ...track, keyframes };
    const around = (index: number) => handlesOf(long, span, plot, index);
    // 0.6 pixels apart, so that each 27th is 16 pixels from the one before; 20 to each side.
    expect(around(150).map(({ k }) => k)).toEqual([...Array(37).keys()].map((n) => 500 + (n - 18) * 27));
    expect(around(0)[0]?.k).toBe(0);
    expect(around(0)).toHaveLength(21);
    expect(around(300).at(-1)?.k).toBe(999);
    const xs = around(77).map(({ x }) => x);
    expect(xs.every((x, i) => i === 0 || x - Number(xs[i - 1]) >= 16)).toBe(true);
  });

  test('as many as can be passed with Tab are shown however near they are', () => {
    const keyframes = Array.from({ length: 40 }, (_, k) => newKeyframe({ share: k / 999, position: 0 }));
    expect(handlesOf({ ...track, keyframes }, span, plot, 0)).toHaveLength(40);
  });

  test('the nearest is taken hold of', () => {
    const handles = handlesOf(track, span, plot, 0);
    expect(nearestHandle(handles, 380, 60)?.k).toBe(1);
    expect(nearestHandle([], 380, 60)).toBeNull();
  });
});

describe('pulling', () => {
  test('goes by the frames of the run and by round positions', () => {
    expect(snapStep(plot)).toBe(5);
    expect(pulledTo(from, { ...none, dx: 20, dy: -33 }, plot, span)).toEqual({ index: 202, position: 375 });
  });

  test('what has hardly moved stays', () => {
    expect(pulledTo(from, { ...none, dx: 2, dy: 3 }, plot, span)).toEqual({});
    expect(pulledTo(from, { ...none, dx: 2, dy: 10 }, plot, span)).toEqual({ position: 290 });
  });

  test('with Shift in one direction, with Alt by a tenth', () => {
    expect(pulledTo(from, { ...none, dx: 20, dy: -18, shiftKey: true }, plot, span)).toEqual({ index: 202 });
    expect(pulledTo(from, { ...none, dx: 20, dy: -23, shiftKey: true }, plot, span)).toEqual({
      position: 355,
    });
    expect(pulledTo(from, { ...none, dy: -8.2, altKey: true }, plot, span)).toEqual({ position: 326.5 });
  });

  test('steps are round on any scale, and free of binary dust', () => {
    expect(snapStep({ unitsPerPx: 0.07 })).toBe(0.2);
    expect(snapped(0.61, 0.2)).toBe(0.6);
    expect(snapped(-1.29, 0.1)).toBe(-1.3);
  });
});

describe('nudging', () => {
  const keys = { shiftKey: false, altKey: false };
  test('arrows go one frame or one step, with Shift ten, with Alt a tenth of a step', () => {
    expect(nudgedTo(from, { key: 'ArrowRight', ...keys }, plot)).toEqual({ index: 193 });
    expect(nudgedTo(from, { key: 'ArrowLeft', ...keys, shiftKey: true }, plot)).toEqual({ index: 182 });
    expect(nudgedTo(from, { key: 'ArrowUp', ...keys }, plot)).toEqual({ position: 315 });
    expect(nudgedTo(from, { key: 'ArrowDown', ...keys, shiftKey: true }, plot)).toEqual({ position: 260 });
    expect(nudgedTo(from, { key: 'ArrowUp', ...keys, altKey: true }, plot)).toEqual({ position: 310.5 });
    expect(nudgedTo(from, { key: 'a', ...keys }, plot)).toBeNull();
  });
});

describe('a double click', () => {
  const line = (name: string, ys: number[]) =>
    ({ name, tone: 'verm', dash: '', xs: [0, 100], ys, path: '', area: '' }) as const;
  const traces = [line('Boom', [0, 100]), line('Slide', [60, 60])].map((one) => ({
    ...one,
    xs: [...one.xs],
  }));

  test('is on a line or on none; the chosen one goes first', () => {
    expect(lineAt(traces, 20, 25, 'Slide')).toBe('Boom');
    expect(lineAt(traces, 60, 62, 'Slide')).toBe('Slide');
    expect(lineAt(traces, 60, 62, 'Boom')).toBe('Boom');
    expect(lineAt(traces, 20, 95, 'Boom')).toBeNull();
    expect(lineAt(traces, 120, 60, 'Boom')).toBeNull();
  });
});
