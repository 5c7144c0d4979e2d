/** Energy of worked cases, through the whole schedule. The arithmetic stands beside each case. */
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { schedule } from '../../../src/engine/schedule.ts';
import type { SourceSummary } from '../../../src/engine/schedule-types.ts';
import { axisOf, loadOf, plainPlan, type Some, sourceOf, straight } from '../plans.ts';
import { type NumberCase, numberRow, type Row, relative, type TextCase, textRow } from '../rows.ts';

const RATED = 'BAT-01: Wh = V x Ah; photoreview.com.au (IATA 2016 summary), flyroyalbrunei.com (V2)';
const FLIGHT = 'BAT-02: air limits of 100 and 160 Wh; photoreview.com.au, batteriestransport.org 35 (V2)';
const HAND = 'worked by hand, arithmetic beside the case (computed)';

const summaryOf = (plan: Plan): SourceSummary => {
  const summary = schedule(plan).sources[0];
  if (!summary) throw new RangeError('no source in the schedule');
  return summary;
};

const rated = (voltageV: number, capacityMah: number) =>
  summaryOf(plainPlan(2, 10, { power: { sources: [sourceOf({ name: 'P', voltageV, capacityMah })] } }));

/** Volts, mAh, printed Wh, half its last digit, how aircraft take it. */
const PACKS: readonly (readonly [number, number, number, number, string])[] = [
  [7.2, 680, 4.9, 0.05, 'cabin'],
  [7.2, 1800, 12.96, 1e-9, 'cabin'],
  [12, 14_000, 168, 1e-9, 'not as baggage'],
];

const camera = (change: Some<Plan['power']['loads'][number]>) =>
  loadOf({ name: 'Camera', source: 'P', ...change });

/** A pack of so many watt-hours without reserve, so that figures stay round. */
const pack = (energyWh: number, count: number, change: Some<Plan['power']['sources'][number]> = {}) =>
  sourceOf({ name: 'P', energyWh, count, reserveShare: 0, swapS: 0, ...change });

/** 11 frames every 10 s; shutter 2 s, lag 0.5 s, write 1.5 s: lanes of 4 s, so 10 periods of 10 s and one of 4 s. */
const still = (loads: Plan['power']['loads'], sources: Plan['power']['sources'], change: Some<Plan> = {}) =>
  plainPlan(11, 10, {
    camera: { shutterLagS: 0.5, writeS: 1.5 },
    exposure: { shutterS: 2 },
    power: { loads, sources },
    ...change,
  });

/** The same, moving 10 mm after each frame but the last at 5 mm/s: a = 5 mm/s^2 gives 10/5 + 5/5 = 3 s. */
const moving = (loads: Plan['power']['loads'], sources: Plan['power']['sources'], axis = {}) =>
  still(loads, sources, {
    rig: {
      axes: [axisOf({ name: 'A', source: 'P', maxSpeed: 5, maxAccel: 5, holdW: 0, moveW: 0, ...axis })],
    },
    move: { mode: 'moveShootMove', settleS: 1, tracks: [straight('A', 0, 100)] },
  });

/** Case, plan, watt-hours drawn. */
const DRAWN: readonly (readonly [string, Plan, number])[] = [
  // 1 W for 104 s = 104 J.
  ['always on', still([camera({ alwaysOnW: 1 })], [pack(9, 1)]), 104 / 3600],
  // 3 W x 11 x 2 s = 66 J.
  ['exposing', still([camera({ exposingW: 3 })], [pack(9, 1)]), 66 / 3600],
  // 4 W x 11 x 1.5 s = 66 J.
  ['writing', still([camera({ writingW: 4 })], [pack(9, 1)]), 66 / 3600],
  // 2 W x (10 x (10 - 3.5) + (4 - 3.5)) s = 2 x 65.5 = 131 J; the lag counts as idle.
  ['idle', still([camera({ idleW: 2 })], [pack(9, 1)]), 131 / 3600],
  // The dark frame of 2 s counts as writing: 4 W x 11 x 3.5 s = 154 J.
  [
    'writing with a dark frame',
    still([camera({ writingW: 4 })], [pack(9, 1)], {
      camera: { shutterLagS: 0.5, writeS: 1.5, noiseReduction: true, noiseReductionFromS: 1 },
    }),
    154 / 3600,
  ],
  // Half of it is lost on the way: 104 J / 0.5 = 208 J.
  [
    'always on through a converter of 50 %',
    still([camera({ alwaysOnW: 1, efficiencyShare: 0.5 })], [pack(9, 1)]),
    208 / 3600,
  ],
  // Everything at once: 104 + 66 + 66 + 131 = 367 J.
  [
    'all phases',
    still([camera({ alwaysOnW: 1, exposingW: 3, writingW: 4, idleW: 2 })], [pack(9, 1)]),
    367 / 3600,
  ],
  // 6 W x 10 moves x 3 s = 180 J. Periods: lanes 2.5 + 3 + 1 = 6.5 s fit into 10 s; the last is 4 s.
  ['axis moving', moving([], [pack(9, 1)], { moveW: 6 }), 180 / 3600],
  // 1.5 W x (10 x 7 + 4) s = 111 J: while it settles it holds.
  ['axis holding', moving([], [pack(9, 1)], { holdW: 1.5 }), 111 / 3600],
  // 2 W x 10 x 3 s + 0.5 W x 74 s = 60 + 37 = 97 J.
  ['rig controller', moving([camera({ movingW: 2, holdingW: 0.5 })], [pack(9, 1)]), 97 / 3600],
  // A still rig holds all the time: 1.5 W x 104 s = 156 J.
  [
    'axis that never moves',
    still([], [pack(9, 1)], { rig: { axes: [axisOf({ name: 'A', source: 'P', holdW: 1.5, moveW: 6 })] } }),
    156 / 3600,
  ],
];

/** 3600 W for one hour is 3600 Wh. With 1 s between 3601 frames and a load of 36 W: 0.01 Wh a frame. */
const runDown = (frames: number, source: Plan['power']['sources'][number], change: Some<Plan> = {}) =>
  summaryOf(
    plainPlan(frames, 1, {
      exposure: { shutterS: 0.25 },
      power: { loads: [camera({ alwaysOnW: 36 })], sources: [source] },
      ...change,
    }),
  );

const swapText = ({ needed, swapFrames, shortAtFrame }: SourceSummary) =>
  `${needed} needed, swaps ${swapFrames.join(' ') || 'none'}, short ${shortAtFrame ?? 'never'}`;

/** Case, summary, packs needed and frames of the swaps. Each frame but the last draws 36 J = 0.01 Wh. */
function swapCases(): TextCase[] {
  return [
    // 1 Wh = 3600 J lasts 100 frames: packs for frames 1-100, 101-200, 201-300, 301-400. Last period 0.25 s = 9 J.
    {
      at: '400 frames on 4 packs of 1 Wh',
      got: swapText(runDown(400, pack(1, 4))),
      want: '4 needed, swaps 101 201 301, short never',
    },
    {
      at: '400 frames on 2 packs of 1 Wh',
      got: swapText(runDown(400, pack(1, 2))),
      want: '4 needed, swaps 101, short 201',
    },
    // Frame 401 only draws 9 J, but none is left.
    {
      at: '401 frames on 4 packs of 1 Wh',
      got: swapText(runDown(401, pack(1, 4))),
      want: '5 needed, swaps 101 201 301, short 401',
    },
    // Reserve of 25 %: 75 frames a pack.
    {
      at: '200 frames, reserve 25 %',
      got: swapText(runDown(200, pack(1, 3, { reserveShare: 0.25 }))),
      want: '3 needed, swaps 76 151, short never',
    },
    // At 0 degrees the curve leaves half: 50 frames a pack.
    {
      at: '120 frames, cold',
      got: swapText(
        runDown(
          120,
          pack(1, 3, {
            capacityCurve: [
              { temperatureC: 0, share: 0.5 },
              { temperatureC: 25, share: 1 },
            ],
          }),
          {
            power: {
              temperatureC: 0,
              sources: [
                pack(1, 3, {
                  capacityCurve: [
                    { temperatureC: 0, share: 0.5 },
                    { temperatureC: 25, share: 1 },
                  ],
                }),
              ],
              loads: [camera({ alwaysOnW: 36 })],
            },
          },
        ),
      ),
      want: '3 needed, swaps 51 101, short never',
    },
    {
      at: '99 frames on one pack',
      got: swapText(runDown(99, pack(1, 1))),
      want: '1 needed, swaps none, short never',
    },
    {
      at: 'mains',
      got: swapText(runDown(4000, pack(1, 1, { kind: 'mains' }))),
      want: '1 needed, swaps none, short never',
    },
  ];
}

/** Temperature, share of the default curve (-20: 0.5, 0: 0.8, 25: 1), straight between, level beyond. */
const CURVE: readonly (readonly [number, number])[] = [
  [-40, 0.5],
  [-20, 0.5],
  // Half way from -20 to 0: (0.5 + 0.8)/2.
  [-10, 0.65],
  [0, 0.8],
  // 0.8 + 0.2 x 20/25.
  [20, 0.96],
  [25, 1],
  [40, 1],
];

function* usable(): Generator<NumberCase> {
  for (const [temperatureC, share] of CURVE) {
    const plan = plainPlan(2, 10, {
      power: { temperatureC, sources: [sourceOf({ name: 'P', energyWh: 50, reserveShare: 0.2 })] },
    });
    // 50 Wh x share x (1 - 0.2).
    yield { at: `${temperatureC} °C`, got: summaryOf(plan).usableWh ?? Number.NaN, want: 50 * share * 0.8 };
  }
}

/** What is left at the opening of frames 1, 100, 101 on packs of 1 Wh at 0.01 Wh a frame. */
function* left(): Generator<NumberCase> {
  const plan = plainPlan(150, 1, {
    exposure: { shutterS: 0.25 },
    power: { loads: [camera({ alwaysOnW: 36 })], sources: [pack(1, 2)] },
  });
  const column = schedule(plan).columns.sources[0]?.leftWh ?? new Float64Array();
  for (const [frame, want] of [
    [1, 1],
    [2, 0.99],
    [100, 0.01],
    [101, 1],
    [150, 0.51],
  ] as const) {
    yield { at: `frame ${frame}`, got: column[frame - 1] ?? Number.NaN, want };
  }
}

const flightCases: readonly (readonly [number, string])[] = [
  [99.9, 'cabin'],
  [100, 'cabin'],
  [100.1, 'ask the carrier'],
  [160, 'ask the carrier'],
  [160.1, 'not as baggage'],
];

export function measureEnergy(): Row[] {
  return [
    numberRow(
      {
        quantity: 'rated energy from volts and mAh',
        reference: RATED,
        regime: '3 packs, in half last digits printed',
        bound: 1,
        unit: 'half last digits',
      },
      PACKS.map(([v, mah, wh, half]) => ({
        at: `${v} V, ${mah} mAh`,
        got: ((rated(v, mah).ratedWh ?? Number.NaN) - wh) / half,
        want: 0,
      })),
    ),
    textRow(
      { quantity: 'how aircraft take a pack', reference: RATED, regime: 'the same packs' },
      PACKS.map(([v, mah, , , want]) => ({
        at: `${v} V, ${mah} mAh`,
        got: String(rated(v, mah).flight),
        want,
      })),
    ),
    textRow(
      { quantity: 'how aircraft take a pack', reference: FLIGHT, regime: 'at and around 100 and 160 Wh' },
      flightCases.map(([energyWh, want]) => ({
        at: `${energyWh} Wh`,
        got: String(summaryOf(plainPlan(2, 10, { power: { sources: [pack(energyWh, 1)] } })).flight),
        want,
      })),
    ),
    numberRow(
      {
        quantity: 'energy drawn',
        reference: HAND,
        regime: 'each phase alone and all together',
        bound: 1e-12,
        unit: 'relative',
      },
      DRAWN.map(([at, plan, want]) => ({ at, got: summaryOf(plan).drawnWh, want })),
      relative,
    ),
    numberRow(
      {
        quantity: 'mean draw',
        reference: HAND,
        regime: 'all phases: 367 J in 104 s',
        bound: 1e-12,
        unit: 'relative',
      },
      [{ at: 'all phases', got: summaryOf(DRAWN[6]?.[1] as Plan).meanW, want: 367 / 104 }],
      relative,
    ),
    numberRow(
      {
        quantity: 'usable energy of a pack',
        reference: HAND,
        regime: 'default curve, -40 to 40 °C, reserve 20 %',
        bound: 1e-12,
        unit: 'relative',
      },
      usable(),
      relative,
    ),
    numberRow(
      {
        quantity: 'energy left at a frame',
        reference: HAND,
        regime: '0.01 Wh a frame on packs of 1 Wh',
        bound: 1e-9,
        unit: 'Wh',
      },
      left(),
    ),
    textRow(
      { quantity: 'packs needed, swaps, and where they run out', reference: HAND, regime: '7 runs' },
      swapCases(),
    ),
  ];
}
