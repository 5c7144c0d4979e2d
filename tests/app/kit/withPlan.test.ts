import { describe, expect, test } from 'vitest';
import { figuresIn, planWith } from '../../../src/app/kit/entry.ts';
import { KINDS, KIT_KINDS } from '../../../src/app/kit/kinds.ts';
import {
  adding,
  allGearIn,
  differencesFrom,
  gearIn,
  isIn,
  placeOf,
  replacing,
} from '../../../src/app/kit/withPlan.ts';
import { readPlan } from '../../../src/engine/plan/parse.ts';
import { type Edit, editAll, getAt } from '../../../src/engine/plan/paths.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { testPlan } from '../plan.ts';
import { gear } from './gear.ts';

/** The plan with edits made, which must hold together. */
function made(edits: readonly Edit[], plan = testPlan()): Plan {
  const read = readPlan(editAll(plan, edits));
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.plan;
}

describe('what a plan has', () => {
  test('is kept with all its figures', () => {
    expect(allGearIn(testPlan(), 'axis').map(({ name }) => name)).toEqual(['Slide', 'Pan']);
    expect(allGearIn(testPlan(), 'card').map(({ name }) => name)).toEqual(['A', 'B']);
    const { name, ...rest } = testPlan().rig.axes[1] ?? { name: '' };
    expect(gearIn(testPlan(), 'axis', 1)).toEqual({ kind: 'axis', name, figures: rest });
    expect(gearIn(testPlan(), 'lens')).toMatchObject({ name: '24\u00a0mm', figures: { focalLengthMm: 24 } });
    expect(gearIn(testPlan(), 'arm').figures).toMatchObject({ lengthMm: 1000, armKg: 1, frequencyHz: 5 });
  });

  test.each(KIT_KINDS)('a %s is in the plan it was kept from, until a figure changes', (kind) => {
    expect(isIn(testPlan(), gear(kind))).toBe(true);
    const field = KINDS[kind].fields.find((path) => typeof getAt(testPlan(), path) === 'number') ?? '';
    const changed = editAll(testPlan(), [[field, Number(getAt(testPlan(), field)) / 2]]);
    expect(isIn(changed, gear(kind))).toBe(false);
    expect(differencesFrom(changed, gear(kind))).toHaveLength(1);
  });

  test.each(KIT_KINDS)('a %s is edited in a plan of its own that holds together', (kind) => {
    const plan = planWith(gear(kind), ['Rig pack', 'Other']);
    expect(readPlan(plan)).toMatchObject({ ok: true });
    expect(figuresIn(plan, kind)).toEqual(gear(kind).figures);
  });
});

describe('taken into a plan', () => {
  test('a camera replaces the camera, and leaves the lens', () => {
    const figures = { ...gear('camera').figures, writeS: 2.5 };
    const plan = made(replacing(testPlan(), gear('camera', { name: 'Second body', figures })));
    expect(plan.camera).toEqual({ ...testPlan().camera, name: 'Second body', writeS: 2.5 });
    expect(isIn(plan, gear('camera', { name: 'Second body', figures }))).toBe(true);
  });

  test('an axis gives its letter in part programs up if another has it', () => {
    const figures = { ...gear('axis').figures, word: 'Y' };
    const kept = gear('axis', { name: 'Second slide', figures });
    const plan = made(adding(made(adding(testPlan(), kept)), kept));
    expect(plan.rig.axes.slice(-2).map(({ word }) => word)).toEqual(['Y', 'auto']);
    expect(made(replacing(plan, kept, 2)).rig.axes[2]?.word).toBe('Y');
    expect(made(replacing(plan, kept, 1)).rig.axes[1]?.word).toBe('auto');
  });

  test('a lens brings its focal length, and no name', () => {
    const plan = made(replacing(testPlan(), gear('lens', { name: 'Long', figures: { focalLengthMm: 135 } })));
    expect(plan.camera).toEqual({ ...testPlan().camera, focalLengthMm: 135 });
  });

  test('an arm brings its own figures; payload, support and tolerance stay', () => {
    const base = testPlan();
    const before: Plan = {
      ...base,
      balance: { ...base.balance, payloadKg: 3, supportKg: 9 },
      ringing: { ...base.ringing, tolerancePx: 1 },
    };
    const arm = gear('arm', {
      figures: { ...gear('arm').figures, lengthMm: 1500, armKg: 2, frequencyHz: 3 },
    });
    const plan = made(replacing(before, arm), before);
    expect(plan.rig.arm.lengthMm).toBe(1500);
    expect(plan.balance).toEqual({ ...before.balance, armKg: 2 });
    expect(plan.ringing).toEqual({ ...before.ringing, frequencyHz: 3 });
  });

  test('an axis of a taken name is added beside it, and the tracks stay where they were', () => {
    const plan = made(adding(testPlan(), gear('axis')));
    expect(plan.rig.axes.map(({ name }) => name)).toEqual(['Slide', 'Pan', 'Slide 2']);
    expect(plan.move).toEqual(testPlan().move);
  });

  test('or replaces it under its name, and its track goes on', () => {
    const slide = gear('axis', { figures: { ...gear('axis').figures, maxSpeed: 7 } });
    expect(placeOf(testPlan(), slide)).toBe(0);
    const plan = made(replacing(testPlan(), slide, 0));
    expect(plan.rig.axes[0]).toEqual({ ...testPlan().rig.axes[0], maxSpeed: 7 });
    expect(plan.move).toEqual(testPlan().move);
  });

  test('an axis is fed by the source of that name, or by none', () => {
    const fed = (source: string) =>
      gear('axis', { name: 'New', figures: { ...gear('axis').figures, source } });
    expect(made(adding(testPlan(), fed('Rig pack'))).rig.axes[2]?.source).toBe('Rig pack');
    const plan = made(adding(testPlan(), fed('Pack at home')));
    expect(plan.rig.axes[2]?.source).toBeNull();
    expect(isIn(plan, fed('Pack at home'))).toBe(true);
  });

  test('a source replaced under its name feeds what it fed', () => {
    const pack = gear('source', { figures: { ...gear('source').figures, capacityMah: 99 } });
    const plan = made(replacing(testPlan(), pack, 0));
    expect(plan.power.sources[0]?.capacityMah).toBe(99);
    expect(plan.rig.axes[0]?.source).toBe('Rig pack');
    expect(plan.power.loads).toEqual(testPlan().power.loads);
  });

  test('a full list is refused, with the field named', () => {
    let plan = testPlan();
    for (let n = 2; n < 12; n += 1) plan = made(adding(plan, gear('axis')), plan);
    const read = readPlan(editAll(plan, adding(plan, gear('axis'))));
    expect(read.ok ? [] : read.faults.map(({ path }) => path)).toEqual(['rig.axes']);
  });
});
