import { expect, test } from 'vitest';
import { inputText, ownerText } from '../../../src/app/compare/inputText.ts';
import { newSource } from '../../../src/engine/plan/parse.ts';
import { type Edit, editAll } from '../../../src/engine/plan/paths.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { differencesOf, type InputDifference } from '../../../src/outputs/compare.ts';
import { testPlan } from '../plan.ts';

const plan = testPlan();

const read = (...edits: Edit[]) => readFrom(testPlan(), ...edits);

/** The one field that differs, as it is read on both sides. */
function readFrom(plan: Plan, ...edits: Edit[]): [owner: string, was: string, now: string] {
  const next = editAll(plan, edits);
  const [input] = differencesOf(plan, schedule(plan), next, schedule(next)).inputs as [InputDifference];
  const plain = (text: string) => text.replaceAll('\u00a0', ' ').replaceAll('\u2212', '-');
  return [
    ownerText(input),
    plain(inputText(plan, input, input.was)),
    plain(inputText(next, input, input.now)),
  ];
}

test('numbers with the units of their fields', () => {
  expect(read(['pacing.eventS', 5400])).toEqual(['Pacing', '1 h', '1:30:00']);
  expect(read(['exposure.shutterS', 0.5])[2]).toBe('0.5 s');
  expect(read(['rig.axes.1.travelMin', -90])).toEqual(['Pan', '-180°', '-90°']);
  expect(read(['move.tracks.0.keyframes.1.position', 250])).toEqual(['Slide, 2', '300 mm', '250 mm']);
  const turning = editAll(plan, [['move.tracks.0.axis', 'Pan']]);
  expect(readFrom(turning, ['move.tracks.0.keyframes.1.position', 90])).toEqual(['Pan, 2', '300°', '90°']);
});

test('words, switches, lists and what is not given', () => {
  expect(read(['pacing.workedOut', 'event'])).toEqual(['Pacing', 'Clip', 'Event']);
  expect(read(['exposure.ramp.used', true])).toEqual(['Exposure', 'no', 'yes']);
  expect(read(['place.latitudeDeg', 43.5])).toEqual(['Place', 'not given', '43.5°']);
  expect(read(['power.sources', [...plan.power.sources, { ...newSource(), name: 'Third' }]])).toEqual([
    'Power',
    '2: Rig pack, Camera pack',
    '3: Rig pack, Camera pack, Third',
  ]);
  expect(read(['move.tracks.0.keyframes.0.ease', { kind: 'linear' }])[2]).toBe('Linear');
  expect(read(['notes', 'By the mole'])).toEqual(['Notes', 'not given', 'By the mole']);
});
