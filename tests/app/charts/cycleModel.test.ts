import { describe, expect, it } from 'vitest';
import { alikeAround, shortestCycle } from '../../../src/app/charts/cycleFrames.ts';
import { cycleLayout } from '../../../src/app/charts/cycleLayout.ts';
import { type Bar, cycleModel } from '../../../src/app/charts/cycleModel.ts';
import { cycleInWords } from '../../../src/app/charts/cycleWords.ts';
import { defaultPlan } from '../../../src/engine/plan/parse.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import type { Columns } from '../../../src/engine/schedule-types.ts';
import { axisFrom, columnsOf, exposedColumns, exposureOf, planWithAxes, scheduleOf } from './handMade.ts';

/** Lag 0.1, exposure 2, write 0.9: a camera lane of 3 s, kept by the trigger so that marked is exact. */
function plan(changed: Partial<Plan> = {}): Plan {
  const base = planWithAxes();
  return {
    ...base,
    camera: { ...base.camera, shutterLagS: 0.1, writeS: 0.9, noiseReduction: false },
    exposure: { ...base.exposure, shutterS: 2, timedBy: 'trigger' },
    cycle: { ...base.cycle, guardS: 0.5 },
    ...changed,
  };
}

/** Frames that hold for 2.1 s, move, and settle for 1 s after moving. */
function moving(moveS: number[], intervalS = 10): Columns {
  const lanes = moveS.map((move) => 2.1 + move + (move > 0 ? 1 : 0));
  return columnsOf(moveS.length, {
    intervalS: Float64Array.from(moveS, () => intervalS),
    moveS: Float64Array.from(moveS),
    settleS: Float64Array.from(moveS, (move) => (move > 0 ? 1 : 0)),
    rigS: Float64Array.from(lanes),
    spareS: Float64Array.from(lanes, (lane) => intervalS - 0.5 - Math.max(3, lane)),
  });
}

function scheduleFor(columns: Columns, longestCycleFrame: number) {
  const schedule = scheduleOf(columns);
  const longestS = Math.max(...columns.rigS, ...columns.cameraS);
  return {
    ...schedule,
    totals: { ...schedule.totals, longestCycleFrame, shortestIntervalS: longestS + 0.5 },
  };
}

const shape = (bars: readonly Bar[]) =>
  bars.map((bar) => [bar.label, Number(bar.startS.toFixed(6)), Number(bar.durationS.toFixed(6))]);

describe('the cycle of a frame', () => {
  const schedule = scheduleFor(moving([1, 4, 4.02, 2, 0]), 3);
  const model = cycleModel(schedule, plan(), 2);

  it('has the camera lane of the engine', () => {
    expect(shape(model.camera)).toEqual([
      ['Shutter lag', 0, 0.1],
      ['Exposure', 0.1, 2],
      ['Write', 2.1, 0.9],
    ]);
  });

  it('has the rig hold, move and settle, then the guard and the spare time', () => {
    expect(shape(model.rig)).toEqual([
      ['Hold still', 0, 2.1],
      ['Move', 2.1, 4.02],
      ['Settle', 6.12, 1],
    ]);
    expect(shape(model.free)).toEqual([
      ['Guard', 7.12, 0.5],
      ['Spare', 7.62, 2.38],
    ]);
    expect(model).toMatchObject({ longer: 'rig', standing: 'fine', rigWord: null });
  });

  it('says which frames share it', () => {
    expect(alikeAround(schedule, 2)).toEqual([1, 2]);
    expect(model.sentence).toBe('Longest cycle, frames 2 to 3. Shutter 2\u00A0s, move 4.0\u00A0s.');
    expect(cycleModel(schedule, plan(), 0).sentence).toBe(
      'Cycle, frame 1. Shutter 2\u00A0s, move 1.0\u00A0s.',
    );
    expect(shortestCycle(schedule)).toBe(4);
    expect(cycleModel(schedule, plan(), 4).sentence).toBe('Shortest cycle, frame 5. Shutter 2\u00A0s.');
  });

  it('says what the interval has to be', () => {
    expect(model).toMatchObject({
      needs: 'Shortest possible interval 7.62\u00A0s',
      rest: '2.38\u00A0s spare',
    });
    expect(cycleModel(schedule, plan(), 0).needs).toBe('This frame needs 4.6\u00A0s');
    expect(cycleInWords(model)).toBe(
      'Cycle of frame 3. Camera: shutter lag 0.1 s, exposure 2.0 s, write 0.9 s. ' +
        'Rig: hold still 2.1 s, move 4.0 s, settle 1.0 s. Interval 10.0 s: 2.38\u00A0s spare.',
    );
  });

  it('rounds what is needed up, never down', () => {
    expect(cycleModel(scheduleFor(moving([4.0212]), 1), plan(), 0).needs).toBe(
      'Shortest possible interval 7.63\u00A0s',
    );
    expect(cycleModel(scheduleFor(moving([4]), 1), plan(), 0).atLeast).toBe('At least 7.6\u00A0s');
  });

  it('follows the camera where the rig is done sooner', () => {
    const last = cycleModel(schedule, plan(), 4);
    expect(last.longer).toBe('camera');
    expect(shape(last.rig)).toEqual([['Hold still', 0, 2.1]]);
    expect(shape(last.free)[0]).toEqual(['Guard', 3, 0.5]);
  });

  it('shows axes that move in turn one by one', () => {
    const columns = moving([3]);
    const axis = (name: string, moveS: number) =>
      axisFrom({
        name,
        unit: 'mm',
        stepsPerUnit: 1,
        steps: new Int32Array(1),
        moveS: Float64Array.of(moveS),
      });
    columns.axes = [axis('Boom', 2), axis('Slide', 0), axis('Pan', 1)];
    const base = plan();
    const inTurn = cycleModel(
      scheduleFor(columns, 1),
      { ...base, move: { ...base.move, order: 'inTurn' } },
      0,
    );
    expect(shape(inTurn.rig).slice(1)).toEqual([
      ['Boom', 2.1, 2],
      ['Pan', 4.1, 1],
      ['Settle', 5.1, 1],
    ]);
  });

  it('has one word for a rig that stands or moves all the time', () => {
    const standing = scheduleFor(columnsOf(2), 1);
    const still = { ...plan(), move: { ...plan().move, mode: 'still' as const } };
    expect(cycleModel(standing, still, 0)).toMatchObject({ rig: [], rigWord: 'Still', longer: 'camera' });
    const always = { ...plan(), move: { ...plan().move, mode: 'continuous' as const } };
    const columns = columnsOf(2, { moveS: Float64Array.of(10, 0) });
    expect(cycleModel(scheduleFor(columns, 1), always, 0).rigWord).toBe('Moving all the time');
    expect(cycleModel(scheduleFor(columns, 1), always, 1).rigWord).toBe('Still');
    expect(cycleModel(standing, still, 0).sentence).toBe(
      'Every cycle alike, frames 1 to 2. Shutter 2\u00A0s.',
    );
  });

  it('says how much of the guard is used, and by how much it overruns', () => {
    const tight = cycleModel(scheduleFor(moving([4], 7.4), 1), plan(), 0);
    expect(tight).toMatchObject({
      standing: 'warning',
      rest: '0.2\u00A0s of the guard of 0.5\u00A0s is used',
    });
    expect(shape(tight.free)).toEqual([['Guard', 7.1, 0.5]]);
    const over = cycleModel(scheduleFor(moving([4], 6), 1), plan(), 0);
    expect(over).toMatchObject({ standing: 'stop', rest: '1.1\u00A0s too short' });
  });

  it('shows every exposure of a bracket', () => {
    const base = plan();
    const bracket = { ...base, exposure: { ...base.exposure, bracketCount: 3, bracketStops: 1 } };
    const { camera } = cycleModel(scheduleFor(columnsOf(1), 1), bracket, 0);
    expect(camera.filter((bar) => bar.kind === 'exposure').map((bar) => bar.durationS)).toEqual([1, 2, 4]);
    expect(cycleModel(scheduleFor(columnsOf(1), 1), bracket, 0).sentence).toContain(
      '3 exposures around 2\u00A0s',
    );
  });
});

describe('its layout', () => {
  const model = cycleModel(scheduleFor(moving([4]), 1), plan(), 0);

  it('keeps names in bars that are wide enough, and lists the others', () => {
    const wide = cycleLayout(model, 950);
    expect(wide.camera.map((bar) => bar.shows)).toEqual(['nothing', 'all', 'name']);
    expect(wide.legend.map((item) => item.text)).toEqual([
      'Shutter lag 0.1\u00A0s',
      'Write 0.9\u00A0s',
      'Settle 1.0\u00A0s',
      'Guard 0.5\u00A0s',
    ]);
  });

  it('lists every time that does not stand in the drawing at any width', () => {
    for (const width of [280, 324, 560, 700, 954, 1600]) {
      const layout = cycleLayout(model, width);
      const bars = [...layout.camera, ...layout.rig, ...layout.free];
      for (const bar of bars.filter((one) => one.shows !== 'all')) {
        expect(layout.legend.some((item) => item.text.startsWith(bar.label))).toBe(true);
      }
    }
  });

  it('keeps the whole cycle and the next opening inside', () => {
    for (const width of [280, 950]) {
      for (const intervalS of [10, 6]) {
        const layout = cycleLayout(cycleModel(scheduleFor(moving([4], intervalS), 1), plan(), 0), width);
        expect(layout.x(intervalS)).toBeLessThan(layout.right);
        const ends = [...layout.camera, ...layout.rig, ...layout.free].map((bar) => bar.x + bar.width);
        expect(Math.max(...ends)).toBeLessThan(layout.right);
      }
    }
  });

  it('marks whole steps of seconds', () => {
    const labels = cycleLayout(model, 950).ticks.filter((tick) => tick.label !== '');
    expect(labels.map((tick) => tick.label)).toEqual([
      '0',
      '1',
      '2',
      '3',
      '4',
      '5',
      '6',
      '7',
      '8',
      '9',
      '10',
      '11',
    ]);
    expect(labels[4]?.x).toBeCloseTo(cycleLayout(model, 950).x(4), 6);
  });

  it('sums up many exposures of one kind', () => {
    const base = defaultPlan();
    const many = {
      ...base,
      exposure: { ...base.exposure, bracketCount: 9, bracketStops: 0.5, shutterS: 0.01 },
    };
    const layout = cycleLayout(cycleModel(scheduleFor(columnsOf(1), 1), many, 0), 324);
    expect(layout.legend.find((item) => item.kind === 'exposure')?.text).toMatch(
      /^Exposure 9 times, .* in all$/,
    );
  });
});

describe('the cycle of a frame whose settings follow the light', () => {
  const rungs = [0, 1, 1];
  const columns = columnsOf(3, exposedColumns(rungs, [10, 9, 9]));
  const schedule = scheduleOf(columns, { exposure: exposureOf(rungs) });

  it('has the exposure of that frame', () => {
    const exposure = (index: number) =>
      cycleModel(schedule, plan(), index).camera.find(({ kind }) => kind === 'exposure')?.durationS;
    expect(exposure(0)).toBe(1 / 8);
    expect(exposure(2)).toBe(1 / 4);
  });

  it('says which shutter times the frames have that are alike', () => {
    expect(cycleModel(schedule, plan(), 0).sentence).toBe(
      'Every cycle alike, frames 1 to 3. Shutter 1/8\u00A0s to 1/4\u00A0s.',
    );
    const cameraS = Float64Array.of(3, 3.2, 3.2);
    const apart = scheduleOf({ ...columns, cameraS }, { exposure: exposureOf(rungs) });
    expect(
      cycleModel({ ...apart, totals: { ...apart.totals, longestCycleFrame: 2 } }, plan(), 1).sentence,
    ).toBe('Longest cycle, frames 2 to 3. Shutter 1/4\u00A0s.');
  });
});
