/** SMPTE timecode and exact frame rates against published pairs and a count from the rule alone. */
import { ceil, decimalRatio, over, parseRate, times, toNumber } from '../../../src/engine/time/ratio.ts';
import { frameOfTimecode, hasDropFrame, timecode } from '../../../src/engine/time/timecode.ts';
import { absolute, errorOf, numberRow, type Row, relative, type TextCase, textRow } from '../rows.ts';
import { dropFrameDay } from './count.ts';

const DF30 = '30000/1001';
const DF60 = '60000/1001';
const DF120 = '120000/1001';

const OTIO = 'SMPTE ST 12-1 pairs as tested by OpenTimelineIO test_opentime.py @0012fe13 (V2)';
const LIB = 'SMPTE ST 12-1 pairs as tested by eoyilmaz/timecode @b3445d6a, less 1 (V2)';
const RULE = 'SMPTE ST 12-1 counting rule, counted one by one (computed)';
const MANUAL = 'ANSI/SMPTE 12M-1995 as cited by a timecode calculator’s manual (V2)';

/** Frame from 0, label. */
const PAIRS_30: readonly (readonly [number, string])[] = [
  [0, '00:00:00;00'],
  [1799, '00:00:59;29'],
  [1800, '00:01:00;02'],
  [8991, '00:04:59;29'],
  [8992, '00:05:00;02'],
  [10_789, '00:05:59;29'],
  [10_790, '00:06:00;02'],
  [17_981, '00:09:59;29'],
  [17_982, '00:10:00;00'],
  [215_784, '02:00:00;00'],
  [1_084_319, '10:03:00;05'],
];

const PAIRS_LIB: readonly (readonly [number, string, string])[] = [
  [388_703, '03:36:09;23', DF30],
  [2_589_407, '23:59:59;29', DF30],
  [10_357_631, '23:59:59;119', DF120],
];

/** A label, the label of the next frame, and the rate. */
const NEXT: readonly (readonly [string, string, string])[] = [
  ['13:36:59;29', '13:37:00;02', DF30],
  ['13:39:59;29', '13:40:00;00', DF30],
  ['13:36:59;59', '13:37:00;04', DF60],
];

const COMPUTED: readonly (readonly [number, string, string])[] = [
  [53_946, '00:30:00;00', DF30],
  [107_892, '01:00:00;00', DF30],
  [3599, '00:00:59;59', DF60],
  [3600, '00:01:00;04', DF60],
  [5_178_815, '23:59:59;59', DF60],
];

function* bothWays(pairs: Iterable<readonly [number, string, string]>): Generator<TextCase> {
  for (const [frame, label, rate] of pairs) {
    yield { at: `frame ${frame} at ${rate}`, got: timecode(frame, rate, label.includes(';')), want: label };
    yield { at: `${label} at ${rate}`, got: String(frameOfTimecode(label, rate)), want: String(frame) };
  }
}

/** Every frame of a day, and every tenth label back. */
function* wholeDay(): Generator<TextCase> {
  for (const [frame, label] of dropFrameDay(30)) {
    yield { at: `frame ${frame}`, got: timecode(frame, DF30), want: label };
    if (frame % 10 === 0) yield { at: label, got: String(frameOfTimecode(label, DF30)), want: String(frame) };
  }
}

/** Frames within 12 of every minute's start, by the count, and every 997th one. */
function* minutesOf(labelsPerSecond: 60 | 120, rate: string): Generator<TextCase> {
  const last = labelsPerSecond - 12;
  const wanted = (frame: number, second: number, label: number) =>
    (second === 0 && label < 12) || (second === 59 && label >= last) || frame % 997 === 0;
  for (const [frame, label] of dropFrameDay(labelsPerSecond, wanted)) yield* bothWays([[frame, label, rate]]);
}

/** Labels that the rule leaves out, and texts that are no label. */
function* missing(): Generator<TextCase> {
  const firstMinutes = [1, 9, 11, 59, 61, 719, 1439];
  for (const [rate, leftOut] of [
    [DF30, 2],
    [DF60, 4],
    [DF120, 8],
  ] as const) {
    for (const minute of firstMinutes) {
      for (let frames = 0; frames < leftOut; frames += 1) {
        const hh = String(Math.floor(minute / 60)).padStart(2, '0');
        const mm = String(minute % 60).padStart(2, '0');
        const label = `${hh}:${mm}:00;${String(frames).padStart(rate === DF120 ? 3 : 2, '0')}`;
        yield {
          at: `${label} at ${rate}`,
          got: errorOf(() => frameOfTimecode(label, rate)),
          want: 'RangeError',
        };
      }
    }
  }
  for (const label of ['24:00:00;00', '00:60:00;00', '00:00:60;00', '00:00:00;30', '1:00:00;02', '', ';;']) {
    yield {
      at: `'${label}' at ${DF30}`,
      got: errorOf(() => frameOfTimecode(label, DF30)),
      want: 'RangeError',
    };
  }
}

function* ratesWithDropFrame(): Generator<TextCase> {
  const rates: readonly (readonly [string, boolean])[] = [
    [DF30, true],
    [DF60, true],
    [DF120, true],
    ['24000/1001', false],
    ['48000/1001', false],
    ['24', false],
    ['25', false],
    ['30', false],
    ['50', false],
    ['60', false],
    ['15000/1001', false],
    // The same rate, not in lowest terms: 60000/2002 is 30000/1001.
    ['60000/2002', true],
  ];
  for (const [rate, has] of rates) yield { at: rate, got: String(hasDropFrame(rate)), want: String(has) };
  for (const rate of ['24000/1001', '25', '30']) {
    yield {
      at: `drop-frame label at ${rate}`,
      got: errorOf(() => timecode(1800, rate, true)),
      want: 'RangeError',
    };
  }
}

const secondsOf = (frame: number, rate: string): number =>
  toNumber(over({ num: BigInt(frame), den: 1n }, parseRate(rate)));

const REAL_TIMES: readonly (readonly [number, number])[] = [
  [1799, 60.0266333],
  [1800, 60.06],
  [8991, 299.9997],
  [8992, 300.0330667],
  [10_789, 359.9929667],
  [17_981, 599.966],
  [17_982, 599.9994],
  [53_946, 1799.9982],
  [107_892, 3599.9964],
  [215_784, 7199.9928],
  [388_703, 12_969.7234],
  [1_084_319, 36_180.1106],
  [2_589_407, 86_399.8802],
];

const RATES: readonly (readonly [string, number])[] = [
  ['24000/1001', 23.976023976],
  [DF30, 29.97002997],
  ['48000/1001', 47.952047952],
  [DF60, 59.94005994],
  [DF120, 119.88011988],
];

/** Seconds of clip, rate, frames it takes: ceil of the exact product, by hand. */
const COUNTS: readonly (readonly [number, string, number])[] = [
  // 12.012 x 24000/1001 = 12012 x 24 / 1001 = 288 exactly; in doubles it can come out as 288.00000000000006.
  [12.012, '24000/1001', 288],
  [1.001, '30000/1001', 30],
  [10.01, '60000/1001', 600],
  // 10 x 24000/1001 = 239.76.
  [10, '24000/1001', 240],
  [12, '25', 300],
  // 0.1 + 0.2 style decimals: 0.3 x 10 is 3, 1.1 x 30 is 33, 4.35 x 100 is 435, not one more.
  [0.3, '10', 3],
  [1.1, '30', 33],
  [4.35, '100', 435],
  [0.01, '24', 1],
];

export function measureTimecode(): Row[] {
  return [
    textRow(
      { quantity: 'label of a frame and frame of a label', reference: OTIO, regime: '29.97 drop-frame' },
      bothWays(PAIRS_30.map(([frame, label]) => [frame, label, DF30] as const)),
    ),
    textRow(
      { quantity: 'the same frame without drop-frame', reference: OTIO, regime: '29.97, frame 1 084 319' },
      bothWays([[1_084_319, '10:02:23:29', DF30]]),
    ),
    textRow(
      {
        quantity: 'label of a frame and frame of a label',
        reference: LIB,
        regime: '29.97, 119.88 drop-frame, last of the day',
      },
      bothWays(PAIRS_LIB),
    ),
    textRow(
      {
        quantity: 'label after a label',
        reference: LIB,
        regime: '29.97 and 59.94 drop-frame, over a minute',
      },
      (function* () {
        for (const [label, next, rate] of NEXT) {
          yield { at: label, got: timecode(frameOfTimecode(label, rate) + 1, rate), want: next };
        }
      })(),
    ),
    textRow(
      {
        quantity: 'label of a frame and frame of a label',
        reference: RULE,
        regime: '29.97 and 59.94 drop-frame, round hours',
      },
      bothWays(COMPUTED),
    ),
    textRow(
      { quantity: 'label of a frame', reference: RULE, regime: '29.97 drop-frame, every frame of a day' },
      wholeDay(),
    ),
    textRow(
      {
        quantity: 'label of a frame and frame of a label',
        reference: RULE,
        regime: '59.94 drop-frame, around every minute of a day',
      },
      minutesOf(60, DF60),
    ),
    textRow(
      {
        quantity: 'label of a frame and frame of a label',
        reference: RULE,
        regime: '119.88 drop-frame, around every minute of a day',
      },
      minutesOf(120, DF120),
    ),
    textRow(
      {
        quantity: 'labels that do not exist are refused',
        reference: RULE,
        regime: 'left-out labels and no labels',
      },
      missing(),
    ),
    textRow(
      { quantity: 'whether a rate has drop-frame', reference: OTIO, regime: '12 rates' },
      ratesWithDropFrame(),
    ),
    numberRow(
      {
        quantity: 'frames in a day of drop-frame',
        reference: LIB,
        regime: '29.97, 119.88',
        bound: 0,
        unit: 'frames',
      },
      (
        [
          [DF30, '23:59:59;29', 2_589_408],
          [DF120, '23:59:59;119', 10_357_632],
        ] as const
      ).map(([rate, last, want]) => ({
        at: rate,
        got: frameOfTimecode(last, rate) + 1,
        want,
      })),
    ),
    numberRow(
      {
        quantity: 'labels left out in an hour',
        reference: MANUAL,
        regime: '29.97',
        bound: 0,
        unit: 'frames',
      },
      [{ at: 'one hour', got: 108_000 - frameOfTimecode('01:00:00;00', DF30), want: 108 }],
    ),
    numberRow(
      {
        quantity: 'real time of a frame',
        reference: OTIO,
        regime: '29.97, printed to 1e-7 s or 1e-4 s',
        bound: 5.1e-5,
        unit: 's',
      },
      REAL_TIMES.map(([frame, want]) => ({ at: `frame ${frame}`, got: secondsOf(frame, DF30), want })),
    ),
    numberRow(
      {
        quantity: 'real time of an hour of labels',
        reference: RULE,
        regime: '29.97: 3603.6 s without, 3.6 ms short with drop-frame',
        bound: 1e-9,
        unit: 's',
      },
      [
        { at: 'without', got: secondsOf(frameOfTimecode('01:00:00:00', DF30), DF30), want: 3603.6 },
        { at: 'with', got: secondsOf(frameOfTimecode('01:00:00;00', DF30), DF30), want: 3600 - 0.0036 },
        {
          at: 'day with',
          got: secondsOf(frameOfTimecode('23:59:59;29', DF30) + 1, DF30),
          want: 86_400 - 0.0864,
        },
      ],
      absolute,
    ),
    numberRow(
      {
        quantity: 'frame rate as a decimal',
        reference: 'ratio of the definition, divided by hand (computed)',
        regime: '5 rates over 1001',
        bound: 5e-11,
        unit: 'relative',
      },
      RATES.map(([rate, want]) => ({ at: rate, got: toNumber(parseRate(rate)), want })),
      relative,
    ),
    numberRow(
      {
        quantity: 'frames of a clip',
        reference: 'exact product of decimals, by hand (computed)',
        regime: 'products that are whole or nearly so',
        bound: 0,
        unit: 'frames',
      },
      COUNTS.map(([clipS, rate, want]) => ({
        at: `${clipS} s at ${rate}`,
        got: Number(ceil(times(decimalRatio(clipS), parseRate(rate)))),
        want,
      })),
    ),
  ];
}
