/** What a test frame offers, and what taking it changes. */
import { describe, expect, test } from 'vitest';
import { isTaken, type Offer, offersOf } from '../../../src/app/frame/offers.ts';
import type { TestFrame } from '../../../src/app/frame/testFrame.ts';
import { readPlan } from '../../../src/engine/plan/parse.ts';
import { editAll } from '../../../src/engine/plan/paths.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { testPlan } from '../plan.ts';

const FRAME: TestFrame = {
  fileName: 'frame.nef',
  fileBytes: 52_345_678,
  shutterS: 1 / 60,
  apertureF: 8,
  iso: 100,
  focalLengthMm: 35,
  widthPx: 6048,
  heightPx: 4032,
  taken: { date: '2026-08-08', time: '23:40:05', offset: '+02:00' },
  position: { latitudeDeg: 43.3, longitudeDeg: 6.4 },
};
const NOTHING: TestFrame = {
  ...FRAME,
  shutterS: null,
  focalLengthMm: null,
  widthPx: null,
  taken: null,
  position: null,
};

const offer = (id: Offer['id'], frame = FRAME, plan = testPlan()): Offer => {
  const found = offersOf(frame, plan).find((one) => one.id === id);
  if (!found) throw new Error(`no offer ${id}`);
  return found;
};
const ids = (frame: TestFrame, plan = testPlan()) => offersOf(frame, plan).map(({ id }) => id);
const withLight = (kind: Plan['light']['kind']): Plan => {
  const plan = testPlan();
  return { ...plan, light: { ...plan.light, kind } };
};

describe('offers', () => {
  test('everything that the frame says, and its size in any case', () => {
    expect(ids(FRAME)).toEqual(['sky', 'studio', 'frameSize', 'focalLength', 'imageSize', 'place']);
    expect(ids(NOTHING)).toEqual(['frameSize']);
  });

  test('one reading, if the plan says which light it has', () => {
    expect(ids(FRAME, withLight('sky'))).not.toContain('studio');
    expect(ids(FRAME, withLight('studio'))).not.toContain('sky');
  });

  test('each makes a plan that fits, and only then counts as taken', () => {
    for (const one of offersOf(FRAME, testPlan())) {
      const next = editAll(testPlan(), one.edits);
      expect(readPlan(next).ok, one.id).toBe(true);
      expect(isTaken(one, testPlan()), one.id).toBe(false);
      expect(isTaken(one, next), one.id).toBe(true);
    }
  });
});

describe('the reading', () => {
  test('goes onto the clock of the plan’s place', () => {
    // 23:40:05 at +02:00 is 21:40:05 UTC, 03:25:05 of the next day in Kathmandu at +05:45.
    const plan = testPlan();
    const there = { ...plan, place: { ...plan.place, zone: 'Asia/Kathmandu' } };
    const { light } = editAll(there, offer('sky', FRAME, there).edits);
    expect(light).toMatchObject({
      kind: 'sky',
      metered: true,
      meteredDate: '2026-08-09',
      meteredTime: '03:25:05',
    });
  });

  test('keeps the camera’s clock where it says no offset, and says so', () => {
    const frame = { ...FRAME, taken: { date: '2026-08-08', time: '23:40:05', offset: null } };
    const { light } = editAll(testPlan(), offer('sky', frame).edits);
    expect(light).toMatchObject({ meteredDate: '2026-08-08', meteredTime: '23:40:05' });
    expect(offer('sky', frame).note).toMatch(/own clock/);
  });

  test('leaves the time alone where there is none, and says so', () => {
    const frame = { ...FRAME, taken: null };
    const before = testPlan().light;
    expect(editAll(testPlan(), offer('sky', frame).edits).light).toMatchObject({
      meteredDate: before.meteredDate,
      meteredTime: before.meteredTime,
    });
    expect(offer('sky', frame).note).toMatch(/Read at/);
  });

  // f/8 at the exact 1/64 s is 6 + 6 = EV 12. Source: ISO 2721 as quoted in Ray, The Manual of Photography, from memory.
  test('as studio light is its exposure value', () => {
    expect(editAll(testPlan(), offer('studio').edits).light).toMatchObject({ kind: 'studio', studioEv: 12 });
  });
});
