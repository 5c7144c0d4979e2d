/** The exposure sheet against an independent timecode, the motion subject, a published table, and work by hand. */
import Timecode from 'smpte-timecode';
import { motionOf } from '../../../src/engine/motion/motion.ts';
import { readPlan } from '../../../src/engine/plan/parse.ts';
import type { Ease, Plan } from '../../../src/engine/plan/schema.ts';
import { Room } from '../../../src/engine/room.ts';
import { sheetOf } from '../../../src/engine/sheet/sheet.ts';
import { timecodeAt } from '../../../src/engine/sheet/texts.ts';
import { isoIn } from '../../../src/engine/time/clock.ts';
import { timecodes } from '../../../src/engine/time/timecode.ts';
import { axisOf } from '../plans.ts';
import {
  finite,
  type NumberCase,
  numberRow,
  type Row,
  type RowHead,
  type TextCase,
  textRow,
} from '../rows.ts';

const LIBRARY = 'smpte-timecode 1.3.6 from the npm registry, run here';
const MOTION = 'the motion subject over as many frames (computed)';
const CSS = 'W3C CSS Easing Functions Level 1, table of CHECK-VALUES 14 (computed)';
const HAND = 'worked by hand, arithmetic beside the case (computed)';
const TZ = 'tz database, Europe/Dublin 2026, by hand (V1)';

/** A stop-motion plan whose camera takes next to no time. @throws Error with the faults, if there are any */
function production(sheet: object, fields: object = {}): Plan {
  const parsed = readPlan({
    format: 'escapement-plan',
    version: 1,
    technique: 'stopMotion',
    clip: { frameRate: '24' },
    camera: { shutterLagS: 0, writeS: 0 },
    exposure: { shutterS: 0.00001 },
    ...fields,
    sheet: { setUpMin: 0, testFrames: 0, breaks: [], daysOff: [], ...sheet },
  });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.plan;
}

const shot = (...actions: object[]) => ({ name: 'S', actions });

/** Every label of a day; its cases are counted without being kept. */
function wholeDay(head: RowHead, rate: string, frames: number, per: 29.97 | 59.94): Row {
  const label = timecodes(rate, true);
  const theirs = new Timecode(0, per, true);
  let [wrong, worstAt] = [0, 'none'];
  for (let frame = 0; frame < frames; frame += 1) {
    if (frame > 0) theirs.add(1);
    const [got, want] = [label(frame), theirs.toString()];
    if (got === want) continue;
    if (wrong === 0) worstAt = `frame ${frame}: got ${got}, wanted ${want}`;
    wrong += 1;
  }
  return { ...head, cases: frames, worst: finite(wrong, head.quantity), worstAt };
}

/** Labels of exposures on twos and threes from an hour on, through the sheet. */
function* labels(): Generator<TextCase> {
  const startTimecode = '01:00:58;00';
  const shots = [shot({ frames: 501, holds: [2, 3] }), shot({ frames: 400, holds: [3] })];
  const plan = production({ startTimecode, shots }, { clip: { frameRate: '30000/1001' } });
  const sheet = sheetOf(plan);
  const first = new Timecode(startTimecode, 29.97, true).frameCount;
  for (let i = 0; i < sheet.exposures; i += 1) {
    const { firstFrame, shot: index } = sheet.columns;
    const frame = (firstFrame[i] as number) - 1 + (index[i] === 1 ? 501 : 0);
    const want = new Timecode(first + frame, 29.97, true).toString();
    yield { at: `exposure ${i + 1}`, got: timecodeAt(plan, sheet, i), want };
  }
}

/** Frames, pattern, exposures, frames of the last. */
const HOLDS: readonly (readonly [number, readonly number[], number, number])[] = [
  // 192 = 96 x 2.
  [192, [2], 96, 2],
  // 25 = 12 x 2 + 1.
  [25, [2], 13, 1],
  // 24 = 8 x (1 + 2): 16 exposures.
  [24, [1, 2], 16, 2],
  // 23 = 7 x 3 + 1 + 1: 14, then one of 1, then one of 2 cut to 1.
  [23, [1, 2], 16, 1],
  // 100 = 14 x (1 + 2 + 4) + 1 + 1: 42, then 1, then 2 cut to 1.
  [100, [1, 2, 4], 44, 1],
  [1, [1], 1, 1],
  // 24 held once.
  [24, [24], 1, 24],
];

function* holds(): Generator<TextCase> {
  for (const [frames, pattern, count, last] of HOLDS) {
    const { exposures, columns } = sheetOf(production({ shots: [shot({ frames, holds: pattern })] }));
    const got = `${exposures} exposures, the last of ${columns.frames.at(-1)}`;
    yield { at: `${frames} on ${pattern}`, got, want: `${count} exposures, the last of ${last}` };
  }
}

const EASES: readonly Ease[] = [
  { kind: 'linear' },
  { kind: 'smooth' },
  { kind: 'smoother' },
  { kind: 'hold' },
  { kind: 'cubicBezier', x1: 0.42, y1: 0, x2: 0.58, y2: 1 },
  { kind: 'ramped', headShare: 0.3, tailShare: 0.2 },
];

const rig = (unitsPerTurn = 40) => ({
  axes: [axisOf({ name: 'A', unitsPerTurn, backlash: 0.1, arrive: 'upwards' })],
});

function* positions(): Generator<NumberCase> {
  for (const thereAndBack of [false, true]) {
    for (const ease of EASES) {
      const keyframes = [
        { share: 0.1, position: 5, ease },
        { share: 0.55, position: 310.7, ease },
        { at: 'frame', frame: 190, position: 20, ease },
      ];
      const tracks = [{ axis: 'A', thereAndBack, keyframes }];
      const shots = [shot({ frames: 40, holds: [2] }, { frames: 161, holds: [1, 2, 3] })];
      const move = { mode: 'moveShootMove', tracks };
      const plan = production({ shots }, { rig: rig(), move });
      const run = motionOf(plan, new Float64Array(201).fill(1), new Room());
      const { columns, exposures } = sheetOf(plan);
      for (let i = 0; i < exposures; i += 1) {
        const frame = columns.firstFrame[i] as number;
        yield {
          at: `${ease.kind}, frame ${frame}`,
          got: columns.axes[0]?.steps[i] ?? Number.NaN,
          want: run.axes[0]?.steps[frame - 1] ?? Number.NaN,
        };
      }
    }
  }
}

/** Moves from exposure to exposure take as long as in a run that has a frame for each of these positions. */
function* durations(): Generator<NumberCase> {
  const keyframes = [0, 10, 4, 4, 30].map((position, k) => ({
    at: 'frame',
    frame: 1 + 2 * k,
    position,
    ease: { kind: 'linear' },
  }));
  const move = { mode: 'moveShootMove', settleS: 2, tracks: [{ axis: 'A', keyframes }] };
  const axis = {
    ...axisOf({ name: 'A', maxSpeed: 5, maxAccel: 5 }),
    backlash: 1,
    arrive: 'upwards',
    overrun: 1,
  };
  const sheet = sheetOf(
    production({ shots: [shot({ frames: 10, holds: [2] })] }, { rig: { axes: [axis] }, move }),
  );
  // At 5 mm/s and 5 mm/s^2 a distance d of 5 mm and more takes d/5 + 1 s. 10 mm: 3 s. Down by 6 mm it goes 6 + 2 (its
  // backlash and overrun), 2.6 s, and comes back by 2, below 5: 2 sqrt(2/5). Nothing. 26 mm: 6.2 s. 2 s of settling each.
  const want = [0, 3 + 2, 2.6 + 2 * Math.sqrt(2 / 5) + 2, 0, 6.2 + 2];
  const cameraS = sheet.columns.rigS[0] as number;
  for (const [i, s] of want.entries())
    yield { at: `exposure ${i + 1}`, got: (sheet.columns.rigS[i] as number) - cameraS, want: s };
}

const X = [0.05, 0.1, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.75, 0.8, 0.9, 0.95];
/** Handles, y at each x. */
const TABLE: readonly (readonly [readonly number[], readonly number[]])[] = [
  [
    [0.25, 0.1, 0.25, 1],
    [
      0.03295154, 0.09479631, 0.29524433, 0.40851059, 0.51331516, 0.68254051, 0.80240339, 0.88522931,
      0.94076461, 0.96045898, 0.97562536, 0.99431648, 0.99862454,
    ],
  ],
  [
    [0.42, 0, 0.58, 1],
    [
      0.00482975, 0.01972245, 0.08165986, 0.12916193, 0.18739591, 0.33188387, 0.5, 0.66811613, 0.81260409,
      0.87083807, 0.91834014, 0.98027755, 0.99517025,
    ],
  ],
];

/** 101 frames on ones: frame 1 + 100 x is at share x. A million steps make the whole travel. */
function* easing(): Generator<NumberCase> {
  for (const [[x1, y1, x2, y2], table] of TABLE) {
    const keyframes = [
      { share: 0, position: 0, ease: { kind: 'cubicBezier', x1, y1, x2, y2 } },
      { share: 1, position: 1 },
    ];
    const axes = [
      {
        ...axisOf({ name: 'A' }),
        fullStepsPerTurn: 100_000,
        microsteps: 10,
        gearRatio: 1,
        unitsPerTurn: 1,
        travelMax: 1,
      },
    ];
    const move = { mode: 'moveShootMove', tracks: [{ axis: 'A', keyframes }] };
    const { columns } = sheetOf(
      production({ shots: [shot({ frames: 101, holds: [1] })] }, { rig: { axes }, move }),
    );
    for (const [i, x] of X.entries()) {
      const index = Math.round(100 * x);
      yield {
        at: `${x1}, ${y1}, ${x2}, ${y2} at ${x}`,
        got: columns.axes[0]?.steps[index] ?? Number.NaN,
        want: (table[i] as number) * 1e6,
      };
    }
  }
}

/** Date and minute of begin and end of each day. */
function daysText(plan: Plan): string {
  const minute = (ms: number) => isoIn(Math.round(ms), plan.place).slice(5, 16);
  return sheetOf(plan)
    .days.map(({ fromMs, toMs }) => `${minute(fromMs)} to ${minute(toMs).slice(6)}`)
    .join(', ');
}

const dublin = (date: string, time: string) => ({ place: { zone: 'Europe/Dublin' }, start: { date, time } });
const on = (count: number) => ({ shots: [shot({ frames: 2 * count, holds: [2] })] });

/** Case, plan, its days. */
const CALENDARS: readonly (readonly [string, Plan, string])[] = [
  // 96 x 3.5 min = 5 h 36 min. Until 12:48 there are 48, then half an hour’s break.
  [
    '96 of 3.5 min with a break',
    production(
      { ...on(96), minutesPerExposure: 3.5, breaks: [{ from: '12:48', to: '13:18' }] },
      dublin('2026-08-22', '10:00'),
    ),
    '08-22T10:00 to 16:06',
  ],
  // 8 h of work a day, 50 min each: 9 in a day, till 16:30; 22 in three days, the last with 4. Saturday and Sunday between.
  [
    '22 of 50 min over a weekend',
    production(
      { ...on(22), minutesPerExposure: 50, workTo: '17:00', daysOff: ['saturday', 'sunday'] },
      dublin('2026-08-20', '09:00'),
    ),
    '08-20T09:00 to 16:30, 08-21T09:00 to 16:30, 08-24T09:00 to 12:20',
  ],
];

/** Clock changes: Dublin goes on at 01:00 on 29 March and back at 02:00 on 25 October, both Sundays. */
const CHANGES: readonly (readonly [string, Plan, string])[] = [
  [
    'from 00:00 to 04:00 in spring there are 3 hours',
    production(
      { ...on(4), minutesPerExposure: 60, workFrom: '00:00', workTo: '04:00' },
      dublin('2026-03-29', '00:00'),
    ),
    '03-29T00:00 to 04:00, 03-30T00:00 to 01:00',
  ],
  [
    'from 00:00 to 04:00 in autumn there are 5 hours',
    production(
      { ...on(6), minutesPerExposure: 60, workFrom: '00:00', workTo: '04:00' },
      dublin('2026-10-25', '00:00'),
    ),
    '10-25T00:00 to 04:00, 10-26T00:00 to 01:00',
  ],
  [
    'by day the clock time stays',
    production({ ...on(2), minutesPerExposure: 60, workTo: '10:00' }, dublin('2026-03-28', '09:00')),
    '03-28T09:00 to 10:00, 03-29T09:00 to 10:00',
  ],
];

const calendars = (cases: typeof CALENDARS): TextCase[] =>
  cases.map(([at, plan, want]) => ({ at, got: daysText(plan), want }));

export function measureSheet(): Row[] {
  const label = (regime: string): RowHead => ({
    quantity: 'timecode of a frame',
    reference: LIBRARY,
    regime,
    bound: 0,
    unit: 'labels',
  });
  return [
    wholeDay(label('29.97 drop-frame, every frame of a day'), '30000/1001', 2_589_408, 29.97),
    wholeDay(label('59.94 drop-frame, every frame of a day'), '60000/1001', 5_178_816, 59.94),
    textRow(
      { quantity: 'timecode of an exposure', reference: LIBRARY, regime: 'two shots over a minute at 29.97' },
      labels(),
    ),
    textRow(
      { quantity: 'exposures of an action', reference: HAND, regime: '7 lengths and patterns' },
      holds(),
    ),
    numberRow(
      {
        quantity: 'position at an exposure',
        reference: MOTION,
        regime: 'every ease, there, and there and back',
        bound: 0,
        unit: 'steps',
      },
      positions(),
    ),
    numberRow(
      {
        quantity: 'position at an exposure',
        reference: CSS,
        regime: 'two beziers, a million steps',
        bound: 0.51,
        unit: 'steps',
      },
      easing(),
    ),
    numberRow(
      {
        quantity: 'move and settle before an exposure',
        reference: HAND,
        regime: 'up, down with backlash, none',
        bound: 1e-9,
        unit: 's',
      },
      durations(),
    ),
    textRow({ quantity: 'days of work', reference: HAND, regime: 'break and weekend' }, calendars(CALENDARS)),
    textRow(
      { quantity: 'days of work', reference: TZ, regime: 'over both clock changes' },
      calendars(CHANGES),
    ),
  ];
}
