/** Plans that show each kind of finding, most of them a job of an ordinary day gone wrong. */
import { readFileSync } from 'node:fs';
import type { FindingId } from '../../../src/engine/findings/types.ts';
import { parsePlan } from '../../../src/engine/plan/parse.ts';
import { type Edit, editAll } from '../../../src/engine/plan/paths.ts';
import type { Plan, RampStep } from '../../../src/engine/plan/schema.ts';
import { rigOf } from '../../reference/balance/rigs.ts';
import { axisOf, cardOf, loadOf, plainPlan, type Some, sourceOf, straight } from '../../reference/plans.ts';

/** A plan with a finding. */
export interface Broken {
  id: FindingId;
  what: string;
  plan: Plan;
  nowMs?: number;
  /** Kinds of ways of which each, tried, is to be offered. */
  offers?: readonly string[];
  /** Why nothing helps, where nothing does. */
  none?: RegExp;
}

const example = parsePlan(readFileSync('public/examples/harbour-at-dusk.json', 'utf8'));
if (!example.ok) throw new Error('The demo is not a plan.');

/** The demo of the harbour, which can be shot as it is. */
export const HARBOUR: Plan = example.plan;

/** The demo with other values at some paths. */
export const harbour = (...edits: Edit[]): Plan => editAll(HARBOUR, edits);

/** 101 frames every 10 s. */
const plain = (change: Some<Plan> = {}): Plan =>
  plainPlan(101, 10, { ...change, trigger: { stepS: 0.5, minS: 0.5, ...change.trigger } });

/** The same with the event held. */
const event = (change: Some<Plan> = {}): Plan =>
  plain({ ...change, pacing: { workedOut: 'clip', eventS: 1000, ...change.pacing } });

/** A slide that goes 5 mm after each frame. */
const slide = (to: number, move: Some<Plan['move']> = {}, axis = {}): Some<Plan> => ({
  rig: { axes: [axisOf({ name: 'Slide', ...axis })] },
  move: { mode: 'moveShootMove', settleS: 1, tracks: [straight('Slide', 0, to)], ...move },
});

/** 36 W: a tenth of a watt-hour in each interval of 10 s. */
const power = (energyWh: number, count: number, swapS = 0): Some<Plan> => ({
  power: {
    temperatureC: 25,
    sources: [
      sourceOf({ name: 'Pack', energyWh, count, swapS, reserveShare: 0 }),
      sourceOf({ name: 'Wall', kind: 'mains' }),
    ],
    loads: [loadOf({ name: 'Load', source: 'Pack', alwaysOnW: 36 })],
  },
});

const cards = (sizes: number[], cardChangeS = 0): Some<Plan> => ({
  camera: { frameBytes: 100e6 },
  storage: {
    cardChangeS,
    cards: sizes.map((cardBytes, i) => cardOf({ name: `Card ${'AB'[i]}`, cardBytes, reserveShare: 0 })),
  },
});

const step = (setting: RampStep['setting'], to: number, change: Partial<RampStep> = {}): RampStep => ({
  setting,
  to,
  step: 'third',
  by: 'camera',
  ...change,
});

/** Steady light of so many EV; f/8 at 1/60 s, ISO 100 is right for 12. */
const studio = (studioEv: number, exposure: Some<Plan['exposure']> = {}, change: Some<Plan> = {}): Plan =>
  plain({
    light: { kind: 'studio', studioEv },
    camera: { exactStops: true },
    exposure: { shutterS: 1 / 60, apertureF: 8, iso: 100, timedBy: 'camera', ...exposure },
    ...change,
  });

/** Two hours over a sunset on the equator. */
const dusk = (steps: RampStep[], change: Some<Plan> = {}, exposure: Some<Plan['exposure']> = {}): Plan =>
  plainPlan(720, 10, {
    start: { date: '2026-03-20', time: '17:10' },
    place: { latitudeDeg: 0, longitudeDeg: 0, zone: 'Etc/UTC' },
    light: { kind: 'sky' },
    camera: { exactStops: true },
    exposure: {
      shutterS: 1 / 125,
      apertureF: 8,
      iso: 100,
      timedBy: 'camera',
      ...exposure,
      ramp: { used: true, steps, ...exposure.ramp },
    },
    ...change,
  });

const LISBON = { zone: 'Europe/Lisbon', latitudeDeg: 38.7, longitudeDeg: -9.14 };

/** An hour and a half of an evening in Lisbon. */
const lisbon = (change: Some<Plan>): Plan =>
  plainPlan(541, 10, { place: LISBON, start: { date: '2026-08-08', time: '20:00:00' }, ...change });

const DUSK_WINDOW = { used: true, sunAltitudeMinDeg: -18, sunAltitudeMaxDeg: 6 } as const;

/** 2 kg at a metre, against a counterweight on a rear arm of half a metre; feet at half a metre. */
const arm = (
  balance: Some<Plan['balance']>,
  axis = {},
  change: {
    boom?: readonly [number, number];
    slide?: readonly [number, number];
    rig?: Some<Plan['rig']>;
  } = {},
): Plan =>
  rigOf(
    { boom: change.boom ?? [-20, 20], ...(change.slide && { slide: change.slide }), axis },
    {
      rig: { arm: { lengthMm: 1000 }, ...change.rig },
      balance: {
        payloadKg: 2,
        armKg: 0,
        counterweightKg: 5,
        counterweightMaxMm: 500,
        baseKg: 1,
        supportKg: 4,
        ...balance,
      },
    },
  );

const turning = (kind: 'pan' | 'tilt', travelMin: number, travelMax: number) =>
  axisOf({ name: kind, kind, unit: 'deg', gearRatio: 360, unitsPerTurn: 360, travelMin, travelMax });

/** A pan that goes on all the time, and something to look at. */
const panning = (change: Some<Plan> = {}): Plan =>
  plain({
    clip: { frameRate: '25' },
    pacing: { workedOut: 'event', intervalS: 10, clipLengthS: 4 },
    camera: { imageWidthPx: 6000, imageHeightPx: 4000, sensorWidthMm: 36, focalLengthMm: 50 },
    rig: { axes: [turning('pan', -180, 180)], pivotHeightMm: 1000 },
    subject: { used: true, rightMm: 0, forwardMm: 2000, heightMm: 1000 },
    move: { mode: 'continuous', tracks: [straight('pan', -5, 5)] },
    ...change,
  });

const PACING: Broken[] = [
  {
    id: 'no-clip',
    what: 'handles that take all frames',
    plan: event({ clip: { handlesFrames: 60 } }),
    offers: ['handles-fewer', 'run-longer', 'interval-shorter'],
  },
  {
    id: 'interval-not-settable',
    what: 'a trigger in steps of 4 s, asked for 10',
    plan: plain({ trigger: { stepS: 4 } }),
    offers: ['interval-shorter', 'interval-longer'],
  },
  {
    id: 'interval-not-settable',
    what: 'an interval worked out below what the trigger has',
    plan: plain({ pacing: { workedOut: 'interval', eventS: 60 }, trigger: { stepS: 1, minS: 1 } }),
    offers: ['interval-longer', 'run-slower'],
  },
  {
    id: 'interval-stretched',
    what: 'a trigger that waits for the shutter',
    plan: plain({ trigger: { counts: 'endToStart', stepS: 1 } }),
    offers: ['interval-as-made'],
  },
];

const CYCLE: Broken[] = [
  {
    id: 'cycle-overrun',
    what: 'a settle as long as the interval, the event held',
    plan: event(slide(500, { settleS: 9.5 })),
    offers: ['interval-longer', 'run-slower'],
  },
  {
    id: 'cycle-overrun',
    what: 'moves of a fixed time',
    plan: plain(slide(500, { settleS: 1, moveS: 9 })),
    offers: ['moves-by-motors', 'moves-faster', 'run-slower'],
  },
  {
    id: 'cycle-overrun',
    what: 'an interval that is worked out',
    plan: plain({
      ...slide(500, { settleS: 9.5 }),
      pacing: { workedOut: 'interval', eventS: 1000 },
      trigger: { stepS: 1, minS: 1 },
    }),
    offers: ['interval-longer', 'run-slower'],
  },
  {
    id: 'cycle-overrun',
    what: 'the harbour at 4 s',
    plan: harbour(['pacing.intervalS', 4]),
    offers: ['interval-longer'],
  },
  {
    id: 'camera-not-ready',
    what: 'dark frames after 8 s',
    plan: plain({
      camera: { noiseReduction: true },
      exposure: { shutterS: 8, timedBy: 'trigger' },
    }),
    offers: ['noise-reduction-off', 'shutter-shorter-iso'],
  },
  {
    id: 'camera-not-ready',
    what: 'a bracket of seven',
    plan: plain({ camera: { writeS: 1 }, exposure: { bracketCount: 7, shutterS: 0.5, timedBy: 'trigger' } }),
    offers: ['bracket-fewer'],
  },
  {
    id: 'guard-used',
    what: 'a slow card',
    plan: event({ camera: { writeS: 9 }, cycle: { guardS: 0.6 } }),
    offers: ['interval-longer'],
  },
];

const EXPOSURE: Broken[] = [
  {
    id: 'shutter-marked-exact',
    what: '15 s by the mark, which the interval would hold',
    plan: plainPlan(11, 15.5, {
      camera: { exactStops: true },
      exposure: { shutterS: 15, timedBy: 'camera' },
    }),
    offers: ['timed-by-trigger'],
  },
  {
    id: 'light-out-of-range',
    what: 'lamps too dim for the settings',
    plan: studio(10),
    offers: ['iso-higher', 'shutter-longer', 'ramp-on'],
  },
  {
    id: 'light-out-of-range',
    what: 'lamps too bright for the settings',
    plan: studio(14),
    offers: ['shutter-shorter', 'filter-stronger'],
  },
  {
    id: 'light-out-of-range',
    what: 'a dusk that a ramp to 1 s does not follow',
    plan: dusk([step('shutter', 1)]),
    offers: ['start-earlier', 'run-shorter'],
  },
  {
    id: 'light-out-of-range',
    what: 'the harbour with an ISO of 1600 at most',
    plan: harbour(['exposure.ramp.steps.3.to', 1600]),
    offers: ['ramp-iso-further', 'ramp-further', 'night-darker'],
  },
  {
    id: 'light-out-of-range',
    what: 'the harbour with a ramp to 1 s and ISO 200',
    plan: harbour(['exposure.ramp.steps', [step('shutter', 1), step('iso', 200)]]),
    offers: ['ramp-further'],
  },
  {
    id: 'light-out-of-range',
    what: 'a strong filter left on at dusk',
    plan: harbour(['exposure.filterStops', 6]),
    offers: ['filter-weaker'],
  },
  {
    id: 'shutter-beyond-cycle',
    what: 'a ramp to 15 s every 10',
    plan: dusk([step('shutter', 15), step('iso', 6400), step('aperture', 2)]),
    offers: ['ramp-iso-for-shutter:1', 'run-slower'],
  },
  {
    id: 'shutter-beyond-cycle',
    what: 'a shutter angle of 180',
    plan: dusk([step('shutter', 8), step('iso', 6400), step('aperture', 2)], {}, { shutterAngleMaxDeg: 180 }),
    offers: ['shutter-angle', 'ramp-iso-for-shutter:1'],
  },
  {
    id: 'ramp-step-idle',
    what: 'steps that lead nowhere',
    plan: dusk([step('shutter', 4), step('iso', 100), step('iso', 6000), step('aperture', 2)]),
    offers: ['ramp-tidied'],
  },
  {
    id: 'change-does-not-fit',
    what: 'changes by hand that take 25 s',
    plan: dusk(
      [step('shutter', 4), step('iso', 6400, { step: 'full', by: 'hand' }), step('aperture', 2)],
      {},
      { ramp: { changeS: 25 } },
    ),
    offers: ['ramp-by-camera', 'interval-longer'],
  },
  {
    id: 'interval-grows',
    what: 'a trigger that waits for a shutter that gets longer',
    plan: dusk([step('shutter', 8), step('iso', 6400), step('aperture', 2)], {
      trigger: { counts: 'endToStart', stepS: 0.5, minS: 1 },
    }),
    none: /counts from closing to opening/,
  },
  {
    id: 'blur-share',
    what: 'settings that blur more than was asked for',
    plan: studio(2, { shutterS: 6, shutterAngleMaxDeg: 180 }),
    offers: ['shutter-shorter-iso', 'shutter-angle'],
  },
  {
    id: 'ripple',
    what: 'lamps on 60 Hz at 1/60',
    plan: studio(
      12,
      { iso: 400 },
      { lamps: { mainsHz: '60', depthShare: 1, limitShare: 0.01 }, light: { kind: 'none' } },
    ),
    offers: ['shutter-for-lamps'],
  },
];

const MOTION: Broken[] = [
  {
    id: 'keyframe-order',
    what: 'a keyframe beyond the run',
    plan: plain({
      ...slide(500),
      move: {
        mode: 'moveShootMove',
        tracks: [
          {
            axis: 'Slide',
            thereAndBack: false,
            keyframes: straight('Slide', 0, 500).keyframes.map((keyframe, i) => ({
              ...keyframe,
              at: 'frame' as const,
              frame: i === 0 ? 1 : 150,
            })),
          },
        ],
      },
    }),
    offers: ['keyframes-fitted:Slide', 'run-longer'],
  },
  {
    id: 'travel',
    what: 'a slide that is too short',
    plan: plain(slide(1100)),
    offers: ['track-clamped:Slide', 'track-smaller:Slide'],
  },
  {
    id: 'travel',
    what: 'a move that fits elsewhere',
    plan: plain(slide(500, { tracks: [straight('Slide', -40, 460)] })),
    offers: ['track-shifted:Slide'],
  },
  {
    id: 'travel',
    what: 'the boom of the harbour raised too far',
    plan: harbour(['move.tracks.0.keyframes.1.position', 800]),
    offers: ['track-clamped:Boom', 'track-smaller:Boom'],
  },
  {
    id: 'speed',
    what: 'a slide in motion all the time',
    plan: plain(slide(900, { mode: 'continuous' }, { maxSpeed: 0.8 })),
    offers: ['run-slower', 'track-smaller:Slide'],
  },
  {
    id: 'speed',
    what: 'moves of a fixed time',
    plan: plain(slide(900, { moveS: 1 }, { maxSpeed: 8 })),
    offers: ['moves-by-motors', 'moves-slower'],
  },
  {
    id: 'acceleration',
    what: 'moves of a fixed time',
    plan: plain(slide(900, { moveS: 0.5 })),
    offers: ['moves-by-motors', 'moves-slower'],
  },
  {
    id: 'acceleration',
    what: 'a turn at once in motion all the time',
    plan: plain(
      slide(
        900,
        { mode: 'continuous', tracks: [{ ...straight('Slide', 0, 900), thereAndBack: true }] },
        { maxAccel: 0.2 },
      ),
    ),
    offers: ['ease-gentler:Slide', 'run-slower'],
  },
  {
    id: 'stair-stepping',
    what: 'a slide that creeps',
    plan: plain(slide(3, {}, { microsteps: 1, unitsPerTurn: 40 })),
    offers: ['run-shorter'],
  },
  {
    id: 'reversal',
    what: 'backlash in motion all the time',
    plan: plain(
      slide(
        400,
        { mode: 'continuous', tracks: [{ ...straight('Slide', 0, 400), thereAndBack: true }] },
        { backlash: 0.5 },
      ),
    ),
    offers: ['move-between-exposures'],
  },
  {
    id: 'backlash-taken-up',
    what: 'a turn on the way',
    plan: plain(
      slide(400, { tracks: [{ ...straight('Slide', 0, 400), thereAndBack: true }] }, { backlash: 0.5 }),
    ),
    none: /counted in/,
  },
  {
    id: 'motion-blur',
    what: 'a pan in motion all the time',
    plan: panning({ exposure: { shutterS: 5, timedBy: 'trigger' } }),
    offers: ['shutter-shorter-iso', 'move-between-exposures'],
  },
  {
    id: 'panning-fast',
    what: 'a pan over 50 degrees in 4 s',
    plan: panning({ move: { mode: 'moveShootMove', tracks: [straight('pan', -25, 25)] } }),
    offers: ['run-longer', 'track-smaller:pan'],
  },
  {
    id: 'aim-out-of-limits',
    what: 'a subject that the head cannot follow',
    plan: plain({
      rig: {
        axes: [axisOf({ name: 'Slide', travelMax: 2000 }), turning('pan', -30, 30), turning('tilt', -90, 90)],
      },
      subject: { used: true, aimed: true, rightMm: 0, forwardMm: 2000, heightMm: 1200 },
      move: { mode: 'moveShootMove', tracks: [straight('Slide', 0, 1500)] },
    }),
    offers: ['track-smaller:Slide'],
  },
];

const RINGING: Broken[] = [
  {
    id: 'not-settled',
    what: 'a settle measured after a shorter move',
    plan: harbour(['ringing.measuredSettleS', 0.5]),
    offers: ['settle-until-still', 'settle-longer'],
  },
  { id: 'quiet-move', what: 'the harbour as it is', plan: harbour(), offers: ['quiet-moves'] },
];

const BALANCE: Broken[] = [
  {
    id: 'out-of-balance',
    what: 'a counterweight too near',
    plan: arm({ workedOut: 'residual', counterweightKg: 4.8, counterweightMm: 400 }),
    offers: ['counterweight-place', 'counterweight-mass'],
  },
  {
    id: 'out-of-balance',
    what: 'too few plates for the rear arm',
    plan: arm({ workedOut: 'place', counterweightKg: 3 }),
    offers: ['counterweight-heavier'],
  },
  {
    id: 'out-of-balance',
    what: 'a place beyond the rear arm',
    plan: arm({ workedOut: 'mass', counterweightMm: 600 }),
    offers: ['counterweight-place'],
  },
  {
    id: 'out-of-balance',
    what: 'an arm that is heavier behind',
    plan: arm({ workedOut: 'residual', armKg: 5, armCentreMm: -500 }),
    none: /./,
  },
  {
    id: 'motor-cannot-hold',
    what: 'a weak motor and an arm out of balance',
    plan: arm({ workedOut: 'residual', counterweightKg: 3, counterweightMm: 400 }, { torqueNm: 0.1 }),
    offers: ['counterweight-mass'],
  },
  {
    id: 'arm-overloaded',
    what: 'a heavy camera on a long arm',
    plan: arm({ ratedKg: 1.5, ratedMm: 1000 }),
    offers: ['arm-shorter'],
  },
  {
    id: 'support-overloaded',
    what: 'too much hung from a small support',
    plan: arm({ supportRatedKg: 12, ballastKg: 10 }),
    offers: ['weigh-down-less'],
  },
  {
    id: 'support-overloaded',
    what: 'a counterweight that is heavier than it need be',
    plan: arm({ supportRatedKg: 7.5, workedOut: 'mass', counterweightMm: 400 }),
    offers: ['counterweight-farther'],
  },
  {
    id: 'tips-over',
    what: 'an arm out of balance on narrow feet',
    plan: arm({ workedOut: 'residual', counterweightKg: 0, counterweightMm: 400, feetRadiusMm: 300 }),
    offers: ['weigh-down-more', 'feet-wider', 'counterweight-mass'],
  },
];

const ENERGY: Broken[] = [
  {
    id: 'source-short',
    what: 'too few packs',
    plan: plain(power(2, 3)),
    offers: ['packs:Pack', 'feed:Pack>Wall'],
  },
  {
    id: 'source-short',
    what: 'the rig pack of the harbour left half empty',
    plan: harbour(['power.sources.1.capacityMah', 300]),
    offers: ['packs:Rig pack'],
  },
  {
    id: 'swap-does-not-fit',
    what: 'a swap of 20 s every 10',
    plan: plain(power(6, 3, 20)),
    offers: ['feed:Pack>Wall', 'run-shorter'],
  },
  { id: 'flight-limit', what: 'a large pack', plan: plain(power(120, 1)), none: /smaller packs/ },
  {
    id: 'card-full',
    what: 'one small card',
    plan: event(cards([4e9])),
    offers: ['cards-more', 'run-shorter'],
  },
  {
    id: 'card-full',
    what: 'the harbour on a card of 16 GB',
    plan: harbour(['storage.cards.0.cardBytes', 16e9]),
    offers: ['cards-more', 'interval-longer'],
  },
  {
    id: 'card-change-does-not-fit',
    what: 'a change of 30 s every 10',
    plan: event(cards([8e9, 8e9], 30)),
    offers: ['run-shorter', 'run-slower'],
  },
  {
    id: 'buffer-fills',
    what: 'a slow card',
    plan: event({
      camera: { frameBytes: 100e6, bufferBytes: 190e6 },
      storage: { cards: [cardOf({ writeBytesPerS: 8e6 })] },
    }),
    offers: ['interval-longer', 'run-slower'],
  },
];

const SKY: Broken[] = [
  {
    id: 'no-start-event',
    what: 'a sunset that does not come',
    plan: lisbon({
      place: { zone: 'Europe/Oslo', latitudeDeg: 69.65, longitudeDeg: 18.96 },
      start: { tiedTo: 'sky', event: 'sunset', date: '2026-06-21' },
    }),
    offers: ['start-by-clock', 'day-later', 'day-earlier'],
  },
  {
    id: 'no-window',
    what: 'a dusk that is too short',
    plan: lisbon({
      window: { ...DUSK_WINDOW, sunAltitudeMaxDeg: -6 },
      start: { date: '2026-08-08', time: '21:10:00' },
    }),
    offers: ['run-shorter'],
  },
  {
    id: 'no-window',
    what: 'a sun that gets so high in summer only',
    plan: lisbon({
      window: { used: true, sunAltitudeMinDeg: 65 },
      start: { date: '2026-04-08', time: '13:00:00' },
    }),
    offers: ['day-later'],
  },
  {
    id: 'no-window',
    what: 'a plan without a place',
    plan: lisbon({ place: { latitudeDeg: null }, window: DUSK_WINDOW }),
    none: /put in the place/,
  },
  {
    id: 'outside-window',
    what: 'a start before the window',
    plan: lisbon({ window: DUSK_WINDOW, start: { date: '2026-08-08', time: '19:50:00' } }),
    offers: ['start-later'],
  },
  {
    id: 'outside-window',
    what: 'the harbour begun an hour after sunset',
    plan: harbour(['start.offsetMin', 60]),
    offers: ['start-earlier'],
  },
  {
    id: 'sun-in-frame',
    what: 'a lens that looks into the sunset',
    plan: lisbon({ view: { used: true, azimuthDeg: 290, altitudeDeg: 5 } }),
    offers: ['start-later'],
  },
  {
    id: 'sun-on-set',
    what: 'a pane to the south at noon',
    plan: lisbon({
      technique: 'stopMotion',
      start: { date: '2026-11-14', time: '11:30:00' },
      pane: { used: true, facingDeg: 180, sillMm: 900, headMm: 1750, setHeightMm: 750 },
    }),
    offers: ['pane-blacked-out', 'start-later'],
  },
  {
    id: 'star-trails',
    what: '30 s under the stars',
    plan: plainPlan(541, 35, {
      place: LISBON,
      view: { stars: true, starTrailMaxPx: 3 },
      camera: { focalLengthMm: 24, exactStops: false },
      exposure: { shutterS: 30, timedBy: 'trigger', iso: 800 },
      start: { date: '2026-08-08', time: '22:00:00' },
    }),
    offers: ['shutter-shorter-iso'],
  },
];

const LONDON = { zone: 'Europe/London' } as const;

const TIME: Broken[] = [
  {
    id: 'clock-skipped',
    what: 'a start in the hour that is skipped',
    plan: plain({ place: LONDON, start: { date: '2026-03-29', time: '01:30' } }),
    offers: ['start-later', 'start-earlier'],
  },
  {
    id: 'clock-repeated',
    what: 'a start in the hour that comes twice',
    plan: plain({ place: LONDON, start: { date: '2026-10-25', time: '01:30' } }),
    none: /which of the two/,
  },
  {
    id: 'clock-change',
    what: 'clocks that go on within the run',
    plan: plain({ place: LONDON, start: { date: '2026-03-29', time: '00:55' } }),
    none: /Nothing needs doing/,
  },
  {
    id: 'start-past',
    what: 'a start three days ago',
    plan: plain({ start: { date: '2026-08-08', time: '20:00' } }),
    nowMs: Date.parse('2026-08-11T09:00:00Z'),
    offers: ['day-later'],
  },
];

/** Every kind of finding at least once. */
export const BROKEN: readonly Broken[] = [
  ...PACING,
  ...CYCLE,
  ...EXPOSURE,
  ...MOTION,
  ...RINGING,
  ...BALANCE,
  ...ENERGY,
  ...SKY,
  ...TIME,
];
