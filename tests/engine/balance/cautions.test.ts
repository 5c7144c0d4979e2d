/** The cautions for an arm: which end drops when what is off, and in which order to work. */
import { expect, test } from 'vitest';
import { balanceCautions } from '../../../src/engine/balance/cautions.ts';
import type { Axis } from '../../../src/engine/plan/schema.ts';
import { balanced, rigOf } from '../../reference/balance/rigs.ts';
import type { Some } from '../../reference/plans.ts';

const cautions = (axis: Some<Axis>) =>
  balanceCautions(
    balanced(
      rigOf(
        { boom: [0, 0], axis: { gearRatio: 50, driveEfficiencyShare: 1, ...axis } },
        {
          rig: { arm: { lengthMm: 1000 } },
          balance: { payloadKg: 2, armKg: 1, armCentreMm: 100, counterweightKg: 7, workedOut: 'place' },
        },
      ),
    ),
  );

const textOf = (id: string, axis: Some<Axis> = {}) =>
  cautions(axis)
    .find((caution) => caution.id === id)
    ?.text.replaceAll('\u00A0', ' ');

test('camera on first and off last, so that the heavy end is the one that rests', () => {
  expect(textOf('order')).toMatch(
    /On: first the camera, then the weights.*Off: first the weights.*camera last/,
  );
});

test('with the camera off the counterweight drops, with the counterweight off the camera', () => {
  // 7 kg balance 2100 kg mm. Without the camera 2000 of them are missing: 19.61 N m; without the weight all 2100 drop.
  expect(textOf('loose')).toMatch(
    /camera off, the counterweight’s end drops with 19\.61 N m; .* the camera’s end drops with 20\.59 N m/,
  );
});

test('a motor that cannot hold that is not to be counted on, nor one of unknown torque', () => {
  // 20.59 N m through 50:1.
  expect(textOf('loose', { torqueNm: 0.41 })).toMatch(/Do not count on the motor .* 0\.412 N m/);
  expect(textOf('loose', {})).toMatch(/Do not count on the motor/);
  expect(textOf('loose', { torqueNm: 0.42 })).not.toMatch(/Do not count/);
});

test('all that can hurt is there, the maker has the last word, and ids do not repeat', () => {
  const ids = cautions({}).map(({ id }) => id);
  expect(ids).toEqual(expect.arrayContaining(['overhead', 'pinch', 'tether', 'weigh-down', 'hold', 'order']));
  expect(ids[0]).toBe('order');
  expect(ids.at(-1)).toBe('maker');
  expect(new Set(ids).size).toBe(ids.length);
});

test('without an arm: what stands on the feet only', () => {
  const ids = balanceCautions(balanced(rigOf({ slide: [0, 0] }, {}))).map(({ id }) => id);
  expect(ids).toEqual(['weigh-down', 'maker']);
});
