/** The demo of the harbour, broken in a dozen ways: in each an offered fix makes it shootable again. */
import { describe, expect, test, vi } from 'vitest';
import type { FindingId } from '../../../src/engine/findings/types.ts';
import { remediesOf } from '../../../src/engine/fixes/remedies.ts';
import { withChanges } from '../../../src/engine/plan/changes.ts';
import { parsePlan, serialisePlan } from '../../../src/engine/plan/parse.ts';
import type { Edit } from '../../../src/engine/plan/paths.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import { PATIENCE_MS } from '../../property/settings.ts';
import { HARBOUR, harbour } from './broken-plans.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

/** What goes wrong, the stop that it brings, and one of the ways out. */
const BREAKS: { what: string; id: FindingId; edits: Edit[]; out: RegExp }[] = [
  {
    what: 'clip: handles for an editor who wants ten seconds more at each end',
    id: 'no-clip',
    edits: [['clip.handlesFrames', 200]],
    out: /^Interval to /,
  },
  {
    what: 'trigger: one that only goes in steps of 5 s',
    id: 'interval-not-settable',
    edits: [['trigger.stepS', 5]],
    out: /^Interval to 15.s/,
  },
  {
    what: 'cycle: 12 s of settle after every move',
    id: 'cycle-overrun',
    edits: [
      ['move.settleBy', 'time'],
      ['move.settleS', 12],
    ],
    out: /^Settle until the ring is below 0\.2.px$/,
  },
  {
    what: 'camera: a card so slow that writing takes 15 s',
    id: 'camera-not-ready',
    edits: [['camera.writeS', 15]],
    out: /^Interval to /,
  },
  {
    what: 'light: a ramp that ends at 1 s and ISO 200',
    id: 'light-out-of-range',
    edits: [
      [
        'exposure.ramp.steps',
        [
          { setting: 'shutter', to: 1, step: 'third', by: 'camera' },
          { setting: 'iso', to: 200, step: 'third', by: 'camera' },
        ],
      ],
    ],
    out: /^Ramp: shutter to .*ISO to /,
  },
  {
    what: 'travel: the boom raised beyond its end',
    id: 'travel',
    edits: [['move.tracks.0.keyframes.1.position', 800]],
    out: /^End Boom’s move at its limits$/,
  },
  {
    what: 'motors: every move in 1 s',
    id: 'acceleration',
    edits: [['move.moveS', 1]],
    out: /^Move/,
  },
  {
    what: 'power: a rig pack of 300 mAh',
    id: 'source-short',
    edits: [['power.sources.1.capacityMah', 300]],
    out: /^2.packs more of Rig pack$/,
  },
  {
    what: 'storage: a card of 16 GB',
    id: 'card-full',
    edits: [['storage.cards.0.cardBytes', 16e9]],
    out: /^1.card more of 16.GB$/,
  },
  {
    what: 'buffer: a card that takes 3 MB a second',
    id: 'buffer-fills',
    edits: [['storage.cards.0.writeBytesPerS', 3e6]],
    out: /^Interval to /,
  },
  {
    what: 'balance: a camera too heavy for the arm',
    id: 'arm-overloaded',
    edits: [['balance.payloadKg', 3.4]],
    out: /^Arm of /,
  },
  {
    what: 'support: too much hung from it',
    id: 'support-overloaded',
    edits: [['balance.ballastKg', 30]],
    out: /^Weigh it down with /,
  },
  {
    what: 'sky: midsummer beyond the polar circle, where the sun does not set',
    id: 'no-start-event',
    edits: [
      ['place.latitudeDeg', 69.6],
      ['start.date', '2026-06-20'],
    ],
    out: /^(On 2026-|Start by the clock)/,
  },
];

const isShootable = (plan: Plan): boolean => schedule(plan).counts.stop === 0;

test('the demo itself can be shot', () => {
  expect(isShootable(HARBOUR)).toBe(true);
  expect(BREAKS.length).toBeGreaterThanOrEqual(10);
});

describe.each(BREAKS)('$what', ({ id, edits, out }) => {
  const plan = harbour(...edits);
  const made = schedule(plan);

  test('is a plan that cannot be shot', () => {
    expect(parsePlan(serialisePlan(plan)).ok).toBe(true);
    expect(made.findings.find((finding) => finding.id === id)?.severity).toBe('stop');
  });

  test('is shootable again with a fix that is offered, or it is said why none can', () => {
    const remedies = [...remediesOf(plan, made)];
    const fixes = remedies.flatMap((remedy) => remedy.fixes);
    const labels = fixes
      .filter(({ changes }) => isShootable(withChanges(plan, changes)))
      .map(({ label }) => label);
    expect(labels, JSON.stringify(remedies.map(({ whyNone }) => whyNone))).not.toEqual([]);
    expect(
      labels.filter((label) => out.test(label)),
      labels.join(' | '),
    ).not.toEqual([]);
  });
});
