import { beforeEach, describe, expect, test } from 'vitest';
import { enter, enterText, readField, stepped } from '../../src/app/fields/entry.ts';
import { codecOf } from '../../src/app/format/quantity.ts';
import { draftAt, setDraft } from '../../src/app/store/drafts.ts';
import { fileNameOf, planFor } from '../../src/app/store/files.ts';
import { infoAt } from '../../src/app/store/infos.ts';
import {
  cancelGesture,
  change,
  changeField,
  currentPlan,
  endGesture,
  planStore,
  redo,
  replacePlan,
  startWith,
  undo,
} from '../../src/app/store/plan.ts';
import { hold, scheduleOf } from '../../src/app/store/schedules.ts';
import { keptPlan } from '../../src/app/store/shelf.ts';
import { readPlan } from '../../src/engine/plan/parse.ts';
import { getAt, partsOf, setAt } from '../../src/engine/plan/paths.ts';
import { testPlan } from './plan.ts';

const steps = () => planStore.temporal.getState().pastStates.length;

beforeEach(() => startWith(testPlan()));

describe('paths', () => {
  test('lead to values and set them without touching the rest', () => {
    const plan = testPlan();
    const next = setAt(plan, 'rig.axes.0.maxSpeed', 7);
    expect(getAt(next, 'rig.axes.0.maxSpeed')).toBe(7);
    expect(getAt(plan, 'rig.axes.0.maxSpeed')).toBe(20);
    expect(next.power).toBe(plan.power);
    expect(next.rig.axes[1]).toBe(plan.rig.axes[1]);
    expect(partsOf('rig.axes.0.name')).toEqual(['rig', 'axes', 0, 'name']);
    expect(getAt(plan, 'rig.axes.9.name')).toBeUndefined();
    expect(infoAt('rig.axes.3.maxSpeed')).toBe(infoAt('rig.axes.0.maxSpeed'));
  });
});

describe('undo', () => {
  test('one gesture is one step, however many keys', () => {
    for (const iso of [2, 20, 200]) changeField('exposure.iso', iso);
    endGesture();
    expect(steps()).toBe(1);
    undo();
    expect(currentPlan().exposure.iso).toBe(100);
    redo();
    expect(currentPlan().exposure.iso).toBe(200);
  });

  test('another field, or the same one after leaving it, is another step', () => {
    changeField('exposure.iso', 200);
    changeField('exposure.apertureF', 4);
    endGesture();
    changeField('exposure.apertureF', 5.6);
    expect(steps()).toBe(3);
  });

  test('typing on after an undo is a new step and leaves nothing to redo', () => {
    changeField('exposure.iso', 200);
    undo();
    changeField('exposure.iso', 400);
    expect(steps()).toBe(1);
    redo();
    expect(currentPlan().exposure.iso).toBe(400);
  });

  test('Escape takes a gesture back without a trace', () => {
    changeField('exposure.iso', 200);
    changeField('exposure.iso', 2000);
    cancelGesture('exposure.iso');
    expect(currentPlan().exposure.iso).toBe(100);
    expect(steps()).toBe(0);
    cancelGesture('exposure.iso');
    expect(steps()).toBe(0);
  });

  test('another plan is one step, so that nothing is lost; it takes the drafts with it', () => {
    const before = currentPlan();
    setDraft('exposure.iso', { text: 'x', error: 'Not a number.' });
    replacePlan({ ...testPlan(), title: 'Another' });
    expect(draftAt('exposure.iso')).toBeUndefined();
    undo();
    expect(currentPlan()).toBe(before);
  });

  test('a value that is there already is no step', () => {
    changeField('exposure.iso', 100);
    expect(steps()).toBe(0);
  });

  test('a hundred steps and back', () => {
    const before = currentPlan();
    for (let iso = 200; iso < 300; iso += 1) {
      changeField('exposure.iso', iso);
      endGesture();
    }
    for (let i = 0; i < 100; i += 1) undo();
    expect(currentPlan()).toBe(before);
  });
});

describe('what does not fit', () => {
  test('stays out of the plan, with the reason', () => {
    const before = currentPlan();
    const faults = change({ ...before, start: { ...before.start, date: '2026-02-30' } });
    expect(faults[0]?.path).toBe('start.date');
    expect(currentPlan()).toBe(before);
  });

  test('a field says what is allowed in it', () => {
    const codec = codecOf('cycle.guardS', 's');
    const info = infoAt('cycle.guardS');
    expect(readField('soon', info, codec, 0)).toEqual({
      error: 'Not a length of time. Allowed: 0\u00a0s to 1\u00a0h.',
    });
    expect(readField('2h', info, codec, 0)).toEqual({ error: 'Allowed: 0\u00a0s to 1\u00a0h.' });
    expect(readField('-1', info, codec, 0)).toHaveProperty('error');
    expect(readField('1,5', info, codec, 0)).toEqual({ value: 1.5 });
    expect(readField('2.5', infoAt('exposure.bracketCount'), codecOf('', ''), 1)).toHaveProperty('error');
    expect(readField('', infoAt('move.moveS'), codec, 0)).toEqual({ value: null });
    expect(readField('', info, codec, 0)).toHaveProperty('error');
  });

  test('a fault elsewhere names the other field', () => {
    expect(enter('rig.axes.0.travelMin', 5000)).toMatch(/^Does not fit 'Travel to'/);
    expect(enter('rig.axes.0.travelMin', 10)).toBeNull();
  });

  test('texts are held to their form', () => {
    const put = (path: string) => (plan: ReturnType<typeof currentPlan>, text: string) =>
      setAt(plan, path, text);
    expect(enterText('start.time', '25:00:00', put('start.time'))).toMatch(/24-hour clock/);
    expect(enterText('place.zone', 'Atlantis/Centre', put('place.zone'))).toMatch(/IANA/);
    expect(enterText('clip.frameRate', 'fast', put('clip.frameRate'))).toMatch(/whole number or a ratio/);
    expect(enterText('place.zone', 'Asia/Kathmandu', put('place.zone'))).toBeNull();
  });

  test('steps stay within the range and free of binary dust', () => {
    expect(stepped(0.1, 2, infoAt('cycle.guardS'))).toBe(0.3);
    expect(stepped(0, -1, infoAt('cycle.guardS'))).toBe(0);
    expect(stepped(15, 10, infoAt('exposure.bracketCount'))).toBe(15);
  });
});

test('the schedule of a plan is worked out once', () => {
  expect(scheduleOf(currentPlan())).toBe(scheduleOf(currentPlan()));
});

describe('schedules that are out of date', () => {
  const edit = (intervalS: number) => scheduleOf(setAt(testPlan(), 'pacing.intervalS', intervalS));

  test('give their memory to the next but one, unless they are held', () => {
    // Rooms get their size on their second use.
    for (const intervalS of [8, 9, 10, 11, 12, 13]) edit(intervalS);
    const [first, second, third] = [edit(20), edit(21), edit(22)];
    expect(third.columns.elapsedS.buffer).toBe(first.columns.elapsedS.buffer);
    hold('test', second);
    const kept = structuredClone(second.columns);
    for (const intervalS of [23, 24, 25, 26]) edit(intervalS);
    expect(second.columns).toEqual(kept);
    hold('test', third);
    for (const intervalS of [27, 28, 29, 30]) edit(intervalS);
    expect(second.columns).not.toEqual(kept);
  });

  test('stay as they are until the next has been drawn', () => {
    for (const intervalS of [8, 9, 10, 11]) edit(intervalS);
    const shown = edit(20);
    const kept = structuredClone(shown.columns);
    edit(21);
    expect(shown.columns).toEqual(kept);
  });
});

test('a browser that stores nothing gives no plan, and no error', async () => {
  expect(await keptPlan()).toBeNull();
});

describe('plans in and out', () => {
  test('a new plan takes the day of the browser and holds together', () => {
    const plan = planFor(2400, 12, new Date(2026, 7, 8, 23, 30));
    expect(plan.start.date).toBe('2026-08-08');
    expect(readPlan(plan).ok).toBe(true);
    // By pencil: 300 frames ask for 2400 / 299 = 8.027 s; a dial of whole seconds gives 8 s, and 301 frames fit.
    const { totals } = scheduleOf(plan);
    expect([totals.intervalS, totals.frames]).toEqual([8, 301]);
  });

  test('file names suit every system', () => {
    expect(fileNameOf('Harbour at dusk')).toBe('harbour-at-dusk.json');
    expect(fileNameOf('../..\\ a:b*c?')).toBe('a-b-c.json');
    expect(fileNameOf('')).toBe('plan.json');
    expect(fileNameOf('夕暮れ')).toBe('夕暮れ.json');
  });
});
