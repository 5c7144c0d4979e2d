import { describe, expect, it } from 'vitest';
import { runView } from '../../../src/app/charts/runView.ts';
import { skyBand } from '../../../src/app/charts/skyBand.ts';
import { columnsOf, msAt, scheduleOf, skyRun } from './handMade.ts';

// 31 frames every 10 s: 300 s, from x = 10 to x = 310 at one pixel a second.
const viewOf = (sky: Parameters<typeof skyRun>[1] = {}) =>
  runView(scheduleOf(columnsOf(31), { sky: skyRun(300, sky) }), 320);

describe('the light behind the charts', () => {
  it('lies at its place and reaches to the edges', () => {
    expect(skyBand(viewOf())?.bands).toMatchObject([
      { band: 'golden', x: 0, width: 110, name: 'Golden hour' },
      { band: 'civil', x: 110, width: 100 },
      { band: 'nautical', x: 210, width: 110 },
    ]);
  });

  it('names what the sun does by the local clock', () => {
    // 100 s after 20:31:10 it is 20:32:50.
    expect(skyBand(viewOf())?.events).toMatchObject([
      { name: 'Sunset', clock: '20:32', x: 110, body: 'sun', altitudeDeg: -0.8333 },
      { name: 'Civil dusk', clock: '20:34', x: 210, altitudeDeg: -6 },
    ]);
  });

  it('leaves out what does not happen', () => {
    const events = [{ name: 'sunset' as const, ms: null, noEvent: 'above all day' as const }];
    expect(skyBand(viewOf({ events }))?.events).toEqual([]);
  });

  it('cuts the windows to the plot and leaves out those beside it', () => {
    const windows = [
      { fromMs: msAt(-900), toMs: msAt(-600) },
      { fromMs: msAt(-60), toMs: msAt(50) },
      { fromMs: msAt(200), toMs: msAt(7200) },
    ];
    expect(skyBand(viewOf({ windows }))?.windows).toEqual([
      { fromX: 0, toX: 60, words: 'Window 20:30 to 20:32' },
      { fromX: 210, toX: 320, words: 'Window 20:34 to 22:31' },
    ]);
    expect(skyBand(viewOf())?.windows).toBeNull();
    expect(skyBand(viewOf({ windows: [] }))?.windows).toEqual([]);
  });

  it('has the sun on the set and in the picture by the clock', () => {
    const setHits = [{ fromMs: msAt(20), toMs: msAt(140) }];
    const inFrame = [{ firstFrame: 4, lastFrame: 11, nearestDeg: 3, nearestFrame: 8 }];
    expect(skyBand(viewOf({ setHits, inFrame }))).toMatchObject({
      setHits: [{ fromX: 30, toX: 150, words: 'Sun on the set 20:31 to 20:33' }],
      // Frames 4 and 11 open 30 s and 100 s after the first.
      inFrame: [{ fromX: 40, toX: 110, words: 'Sun in frame 20:31 to 20:32' }],
    });
    const once = [{ firstFrame: 4, lastFrame: 4, nearestDeg: 3, nearestFrame: 4 }];
    expect(skyBand(viewOf({ inFrame: once }))?.inFrame).toEqual([
      { fromX: 40, toX: 40, words: 'Sun in frame at 20:31' },
    ]);
  });

  it('is none without a place', () => {
    expect(skyBand(runView(scheduleOf(columnsOf(31)), 320))).toBeNull();
  });

  it('shows no bands where a day is a few pixels wide, nor where the schedule knows the beginning only', () => {
    const frames = 40;
    const daily = Float64Array.from({ length: frames }, (_, k) => k * 86_400);
    const runS = (frames - 1) * 86_400;
    const long = scheduleOf(columnsOf(frames, { elapsedS: daily }), { sky: skyRun(runS) });
    expect(skyBand(runView(long, 300))?.bands).toEqual([]);
    expect(skyBand(runView(long, 1000))?.bands).toHaveLength(3);
    expect(skyBand(runView(long, 1000))?.events).toEqual([]);
    const cut = scheduleOf(columnsOf(frames, { elapsedS: daily }), { sky: skyRun(runS * 0.8) });
    expect(skyBand(runView(cut, 1000))?.bands).toEqual([]);
  });
});
