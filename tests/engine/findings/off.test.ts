/** No finding is shown for a feature that is off. */
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import type { FindingId } from '../../../src/engine/findings/types.ts';
import { type Edit, editAll } from '../../../src/engine/plan/paths.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { plans, rigPlans } from '../../property/plans.ts';
import { PATIENCE_MS, settings } from '../../property/settings.ts';
import { axisOf, plainPlan, straight } from '../../reference/plans.ts';
import { BROKEN } from '../fixes/broken-plans.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

/** A feature, how it is put off, and what is then said no more. */
interface Feature {
  name: string;
  off: Edit[];
  silences: FindingId[];
}

const RAMP: FindingId[] = ['shutter-beyond-cycle', 'ramp-step-idle', 'change-does-not-fit', 'interval-grows'];

const BETWEEN: FindingId[] = ['backlash-taken-up', 'not-settled', 'quiet-move'];

const MOVING: FindingId[] = [
  ...BETWEEN,
  'cycle-overrun',
  'keyframe-order',
  'speed',
  'acceleration',
  'stair-stepping',
  'reversal',
  'motion-blur',
  'panning-fast',
];

const FEATURES: Feature[] = [
  {
    name: 'a window',
    off: [['window.used', false]],
    silences: ['no-window', 'outside-window'],
  },
  { name: 'the sun in frame', off: [['view.used', false]], silences: ['sun-in-frame'] },
  { name: 'stars', off: [['view.stars', false]], silences: ['star-trails'] },
  { name: 'the pane', off: [['pane.used', false]], silences: ['sun-on-set'] },
  {
    name: 'a start by the sky',
    off: [['start.tiedTo', 'clock']],
    silences: ['no-start-event'],
  },
  {
    name: 'balance',
    off: [['balance.used', false]],
    silences: ['out-of-balance', 'motor-cannot-hold', 'arm-overloaded', 'support-overloaded', 'tips-over'],
  },
  {
    name: 'a subject',
    off: [['subject.used', false]],
    silences: ['motion-blur', 'panning-fast', 'aim-out-of-limits'],
  },
  { name: 'the aim', off: [['subject.aimed', false]], silences: ['aim-out-of-limits'] },
  { name: 'moves', off: [['move.mode', 'still']], silences: MOVING },
  {
    name: 'moves between exposures',
    off: [['move.mode', 'continuous']],
    silences: [...BETWEEN, 'cycle-overrun'],
  },
  { name: 'a settle by ringing', off: [['move.settleBy', 'time']], silences: ['not-settled', 'quiet-move'] },
  { name: 'a ramp', off: [['exposure.ramp.used', false]], silences: RAMP },
  { name: 'planned light', off: [['light.kind', 'none']], silences: [...RAMP, 'light-out-of-range'] },
  { name: 'lamps', off: [['lamps.mainsHz', 'none']], silences: ['ripple'] },
  { name: 'a shutter angle', off: [['exposure.shutterAngleMaxDeg', null]], silences: ['blur-share'] },
];

const saidOf = (plan: Plan): FindingId[] => schedule(plan).findings.map(({ id }) => id);

describe.each(FEATURES)('without $name', ({ off, silences }) => {
  const shows = BROKEN.filter(({ id }) => silences.includes(id));

  test.each(shows.map((broken) => [broken.id, broken.what, broken] as const))(
    'nothing is said of %s: %s',
    (id, _what, { plan }) => {
      expect(saidOf(plan)).toContain(id);
      expect(saidOf(editAll(plan, off))).not.toContain(id);
    },
  );
});

test('whatever else a plan may be, what is off is silent', () => {
  const all = fc.oneof(plans, rigPlans).map(({ plan }) => plan);
  fc.assert(
    fc.property(all, fc.constantFrom(...FEATURES), (plan, { off, silences }) => {
      const said = saidOf(editAll(plan, off)).filter((id) => silences.includes(id));
      expect(said).toEqual([]);
    }),
    settings(0.3),
  );
});

test('a track that the aim replaces is not judged', () => {
  const beyond = straight('Pan', 0, 5).keyframes.map((keyframe, i) => ({
    ...keyframe,
    at: 'frame' as const,
    frame: i === 0 ? 1 : 50,
  }));
  const plan = (aimed: boolean) =>
    plainPlan(11, 10, {
      rig: {
        axes: [
          axisOf({ name: 'Slide' }),
          axisOf({ name: 'Pan', kind: 'pan', unit: 'deg', unitsPerTurn: 360, travelMin: -90, travelMax: 90 }),
        ],
      },
      subject: { used: true, aimed, forwardMm: 2000, heightMm: 1200 },
      move: {
        mode: 'moveShootMove',
        tracks: [straight('Slide', 0, 300), { axis: 'Pan', thereAndBack: false, keyframes: beyond }],
      },
    });
  expect(saidOf(plan(false))).toContain('keyframe-order');
  expect(saidOf(plan(true))).not.toContain('keyframe-order');
});
