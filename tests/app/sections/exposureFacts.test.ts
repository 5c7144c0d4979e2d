/** By APEX: f/8 is Av 6, 1/64 s is Tv 6, ISO 100 takes nothing away (Exif 2.x Annex C, from memory). */
import { expect, test } from 'vitest';
import { exposureFacts } from '../../../src/app/sections/exposureFacts.ts';
import { plainText } from '../../../src/app/working/sentence.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { judgeWorking } from '../../engine/working/judge.ts';
import { planOf } from '../../outputs/plans.ts';

const said = (plan: Plan) =>
  exposureFacts(plan).map((sentence) => plainText(sentence).replaceAll('\u00a0', ' '));
const settings = { shutterS: 1 / 60, apertureF: 8, iso: 100 };

test('the settings are right for the light that their exact values say, the filter counted', () => {
  const bare = planOf({ exposure: settings, camera: { exactStops: true } });
  expect(said(bare)).toEqual(['1/60 s is open for 1/64 s.', 'Right for a scene of 12 EV.']);
  const filtered = planOf({ exposure: { ...settings, filterStops: 6 }, camera: { exactStops: true } });
  expect(said(filtered)[1]).toBe('With the filter, right for a scene of 18 EV.');
  const made = schedule(filtered);
  expect(judgeWorking(filtered, made, 'exposure.ev100').value).toBeCloseTo(18, 12);
  expect(judgeWorking(filtered, made, 'exposure.openS').value).toBe(1 / 64);
});

test('a reading is worked out likewise', () => {
  const light = {
    kind: 'sky',
    metered: true,
    meteredShutterS: 1 / 60,
    meteredApertureF: 8,
    meteredIso: 400,
    meteredFilterStops: 1,
  } as const;
  const plan = planOf({ light, camera: { exactStops: true } });
  // Two stops of speed, one of the filter: 12 - 2 + 1.
  expect(judgeWorking(plan, schedule(plan), 'light.readingEv').value).toBeCloseTo(11, 12);
});
