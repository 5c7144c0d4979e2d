import { describe, expect, test } from 'vitest';
import { schedule } from '../../src/engine/schedule.ts';
import { scheduleJson } from '../../src/outputs/schedule-json.ts';
import { planOf } from './plans.ts';

const plan = planOf({
  title: 'Two sources',
  power: { sources: [{ name: 'Pack' }, { name: 'Wall', kind: 'mains' }], loads: [] },
});
const worked = schedule(plan);
const printed = JSON.parse(scheduleJson(plan, worked, null));

describe('the schedule as JSON', () => {
  test('has the single figures, each a number or an ISO time with its offset', () => {
    const numbers = [
      'frames',
      'intervalS',
      'dialS',
      'eventDurationS',
      'clipLengthS',
      'shortestIntervalS',
      'tightestSpareS',
      'storageBytes',
    ];
    for (const name of numbers) expect(printed.totals[name], name).toBeTypeOf('number');
    for (const name of ['firstFrameAt', 'lastFrameAt']) {
      expect(printed.totals[name]).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?[+-]\d\d:\d\d$/);
    }
  });

  test('says the same as the schedule', () => {
    for (const part of ['totals', 'sources', 'cards', 'events', 'findings', 'margins'] as const) {
      expect(printed[part], part).toEqual(worked[part]);
    }
    expect(printed.title).toBe('Two sources');
  });

  test('has null for the energy of the mains, and refuses other figures that JSON cannot hold', () => {
    expect(printed.sources[1]).toMatchObject({ kind: 'mains', ratedWh: null, usableWh: null });
    const endless = { ...worked, totals: { ...worked.totals, energyWh: Number.POSITIVE_INFINITY } };
    expect(() => scheduleJson(plan, endless, null)).toThrow('energyWh is Infinity');
  });
});
