import { describe, expect, it } from 'vitest';
import { errorChart } from '../../../src/app/charts/errorChart.ts';
import { exposureChart } from '../../../src/app/charts/exposureChart.ts';
import { runView } from '../../../src/app/charts/runView.ts';
import { defaultPlan } from '../../../src/engine/plan/parse.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import type { ExposureSummary } from '../../../src/engine/schedule-types.ts';
import { columnsOf, exposedColumns, exposureOf, scheduleOf } from './handMade.ts';

// Seven frames at x = 10, 110 ... 610: the light falls by half a stop a frame, then by two.
const rungs = [0, 0, 1, 1, 2, 2, 2];
const wanted = [10, 9.5, 9, 8.5, 8, 7.5, 5.5];

function planOf(kind: Plan['light']['kind'] = 'studio', nightStops = 0, toleranceStops = 0.6): Plan {
  const plan = defaultPlan();
  const ramp = { ...plan.exposure.ramp, used: true, nightStops, toleranceStops };
  return { ...plan, light: { ...plan.light, kind }, exposure: { ...plan.exposure, ramp } };
}

const viewOf = (changed: Partial<ExposureSummary> = {}, widthPx = 620) =>
  runView(
    scheduleOf(columnsOf(7, exposedColumns(rungs, wanted)), { exposure: exposureOf(rungs, changed) }),
    widthPx,
  );

describe('the chart of the exposure', () => {
  const chart = exposureChart(viewOf(), planOf());

  it('draws the settings as steps: across, then down', () => {
    const settings = chart?.traces.find(({ name }) => name === 'Settings');
    expect(settings?.path).toMatch(/^M10 [\d.]+H210V[\d.]+H410V[\d.]+H610$/);
  });

  it('draws what is wanted only where the night is kept darker', () => {
    expect(chart?.traces.map(({ name }) => name)).toEqual(['Scene', 'Settings']);
    expect(exposureChart(viewOf(), planOf('sky', 1))?.traces.map(({ name }) => name)).toEqual([
      'Scene',
      'Wanted',
      'Settings',
    ]);
  });

  it('marks what the hand does and lets the camera have its teeth', () => {
    expect(chart?.teeth).toEqual([210]);
    expect(chart?.marks.filter(({ kind }) => kind === 'change')).toMatchObject([
      { x: 410, label: 'ISO\u00A0100 to 200 by hand' },
    ]);
    // Where a step of the ramp has come to its end.
    expect(chart?.marks.filter(({ kind }) => kind === 'value')).toMatchObject([{ x: 210, label: '1/4' }]);
  });

  it('turns very many changes by hand into wedges', () => {
    const frames = 61;
    const many = Array.from({ length: frames }, (_, k) => 1 + (k % 2));
    const schedule = scheduleOf(
      columnsOf(
        frames,
        exposedColumns(
          many,
          many.map(() => 8.5),
        ),
      ),
      {
        exposure: exposureOf(many),
      },
    );
    const busy = exposureChart(runView(schedule, 620), planOf());
    expect(busy?.wedges).toHaveLength(30);
    expect(busy?.marks.filter(({ kind }) => kind === 'change')).toEqual([]);
  });

  it('shows the ends of the ramp, if the settings follow the light', () => {
    expect(chart?.levels.map(({ value }) => value)).toEqual([10, 8]);
    expect(exposureChart(viewOf({ follows: false }), planOf())?.levels).toEqual([]);
  });

  it('hatches the frames that lie beyond the ramp by more than is allowed', () => {
    expect(chart?.stretches).toMatchObject([{ fromX: 610, toX: 612, label: '' }]);
    const strict = exposureChart(viewOf(), planOf('studio', 0, 0.4));
    expect(strict?.stretches).toMatchObject([{ fromX: 510, toX: 610 }]);
    expect(exposureChart(viewOf({}, 1220), planOf('studio', 0, 0.4))?.stretches?.[0]?.label).toBe(
      'up to 2.5 stops too dark',
    );
  });

  it('reads the settings of the frame, both values, and when they change', () => {
    expect(chart?.read(2)).toMatchObject([
      { name: 'Shutter', value: '1/4', unit: 's' },
      { name: 'Aperture', value: 'f/8' },
      { name: 'ISO', value: '100' },
      { name: 'Settings', value: '9.0', unit: 'EV' },
      { name: 'Scene', value: '9.0', unit: 'EV' },
      { name: 'Next change in', value: '2', unit: 'fr' },
    ]);
    expect(chart?.read(6).map(({ name }) => name)).not.toContain('Next change in');
  });

  it('says it in words and in figures', () => {
    expect(chart?.summary.replaceAll('\u00A0', ' ')).toBe(
      'The scene goes from EV 10.0 to 5.5. The settings go from 1/8, f/8, ISO 100 to 1/4, f/8, ISO 200 in 2 changes, 1 by hand.',
    );
    expect(chart?.table.map(({ cell }) => cell(6).replaceAll('\u00A0', ' '))).toEqual([
      '1/4, f/8, ISO 200',
      '8.0',
      '5.5',
    ]);
  });

  it('is none if the light is not planned', () => {
    const view = runView(scheduleOf(columnsOf(3)), 400);
    expect(exposureChart(view, planOf())).toBeNull();
    expect(errorChart(view, planOf())).toBeNull();
  });
});

describe('the chart of the error', () => {
  const chart = errorChart(viewOf(), planOf());

  it('has what is allowed either side of zero', () => {
    expect(chart?.levels.map(({ value }) => value)).toEqual([0, 0.6, -0.6]);
  });

  it('has an axis that stays while the error is small', () => {
    const small = (by: number) => {
      const columns = exposedColumns([0, 0], [10 + by, 10 - by]);
      const schedule = scheduleOf(columnsOf(2, columns), { exposure: exposureOf([0, 0]) });
      return errorChart(runView(schedule, 620), planOf())?.domain;
    };
    expect(small(0.7)).toEqual(small(0.9));
    expect(small(0.7)).not.toEqual(small(1.7));
  });

  it('reads how far a frame is too bright or too dark', () => {
    expect(chart?.read(1)).toMatchObject([{ name: 'Too dark', value: '0.50', unit: 'stops' }]);
    expect(chart?.read(0)).toMatchObject([{ name: 'Too bright', value: '0.00' }]);
    expect(chart?.summary).toBe(
      'The picture comes out at most 0.0 stops brighter and 2.5 stops darker than wanted.',
    );
  });
});
