/** How the two lanes of an interval came about. */
import { bracketS, getsDarkFrame, openAtMarkS, openShutterS } from '../exposure/shutter.ts';
import { growsWithLight } from '../frames.ts';
import type { Plan } from '../plan/schema.ts';
import { frameFound } from '../working/found.ts';
import {
  DEFINITION,
  type Draft,
  none,
  ofFrame,
  sameAs,
  term,
  type Worked,
  type Workings,
} from '../working/make.ts';
import { ofMargin } from '../working/margins.ts';
import type { Term } from '../working/types.ts';

/** Durations are the user's own measurements. */
const SOURCE = 'Definition: what has to happen, one after another.';

/** One value of a column. */
const at = (column: ArrayLike<number>, k: number): number => column[k] as number;

const rungAt = ({ made }: Worked, k: number) => made.exposure?.rungs[made.columns.rung?.[k] ?? 0] ?? null;

/** Seconds the shutter is open at a frame, or the middle of its bracket. */
export const openAt = (of: Worked, k: number): number => rungAt(of, k)?.openS ?? openShutterS(of.plan);

/** How a shutter time is written at a frame. */
const markAt = (of: Worked, k: number): number => rungAt(of, k)?.shutterS ?? of.plan.exposure.shutterS;

const columnTerm = (
  of: Worked,
  k: number,
  column: 'exposureS' | 'holdS' | 'cameraS' | 'rigS' | 'moveS' | 'settleS' | 'intervalS',
  words: string,
): Term => term(column, words, at(of.made.columns[column], k), 's', ofFrame(k, column));

const lag = ({ plan }: Worked): Term => term('lagS', 'shutter lag', plan.camera.shutterLagS, 's');
const write = ({ plan }: Worked): Term => term('writeS', 'write', plan.camera.writeS, 's');
const shots = ({ plan }: Worked): Term =>
  term('exposures', 'exposures of the frame', plan.exposure.bracketCount, 'exposures');
const guard = ({ plan }: Worked): Term => term('guardS', 'guard', plan.cycle.guardS, 's');

/** Seconds that one shutter is open at a frame. */
const open = (of: Worked, k: number): Draft =>
  shutterOpen(of.plan, openAt(of, k), markAt(of, k), rungAt(of, k)?.shutterMark);

/** Seconds that one shutter is open at a marked time. @param mark - as it stands on the dial */
export function shutterOpen(plan: Plan, openS: number, markedS: number, mark?: string): Draft {
  const base = { title: 'Shutter open', value: openS, unit: 's' };
  if (plan.exposure.timedBy === 'trigger')
    return {
      ...base,
      expression: 'markedS',
      terms: [term('markedS', 'shutter time', markedS, 's')],
      remarks: ['The trigger holds the shutter open: it keeps the time itself.'],
      source: DEFINITION,
    };
  const { exactStops, shutterCorrection } = plan.camera;
  const stops = Math.round(Math.log2(openS / shutterCorrection) * 6) / 6;
  const isStop = exactStops && Math.abs(2 ** stops * shutterCorrection - openS) <= 1e-12 * openS;
  return {
    ...base,
    expression: isStop ? '2 ^ stops * correction' : 'markedS * correction',
    terms: [
      isStop
        ? term('stops', 'stops from 1 s', stops, 'stops')
        : term('markedS', 'shutter time as marked', markedS, 's'),
      term('correction', 'correction of the camera', shutterCorrection, ''),
    ],
    remarks: isStop
      ? [`Marks are rounded names: ${mark ?? markedS} s on the dial is ${stops} stops from one second.`]
      : [],
    source: isStop
      ? 'A stop is a factor of two (APEX, Exif 2.x Annex C, from memory); marks are the third- and half-stop series in common use.'
      : DEFINITION,
  };
}

function exposure(of: Worked, k: number): Draft {
  const { bracketCount, bracketStops } = of.plan.exposure;
  const base = { title: 'Exposure', value: at(of.made.columns.exposureS, k), unit: 's' };
  if (bracketCount === 1) return { ...open(of, k), ...base };
  const middle = (bracketCount - 1) / 2;
  const powers = Array.from({ length: bracketCount }, (_, i) => `2 ^ (${i - middle} * bracketStops)`);
  return {
    ...base,
    expression: `openS * (${powers.join(' + ')})`,
    terms: [
      term('openS', 'shutter open, middle of the bracket', openAt(of, k), 's', ofFrame(k, 'openS')),
      term('bracketStops', 'stops between the exposures of the bracket', bracketStops, 'stops'),
    ],
    remarks: ['All exposures of the bracket together.'],
    source: 'A stop is a factor of two (APEX, Exif 2.x Annex C, from memory).',
  };
}

/** Seconds of dark frames of a frame, the last exposure's left out or not. */
function darkS({ plan }: Worked, openS: number, withLast: boolean): number {
  const opens = bracketS(plan, openS);
  const counted = withLast ? opens : opens.slice(0, -1);
  return counted.reduce((sum, each) => sum + (getsDarkFrame(plan, each) ? each : 0), 0);
}

const dark = (of: Worked, k: number, withLast: boolean): Term[] => {
  const seconds = darkS(of, openAt(of, k), withLast);
  const words = withLast ? 'dark frames' : 'dark frames before the last exposure';
  return seconds > 0 ? [term('darkS', words, seconds, 's')] : [];
};

const darkRemark = ({ plan }: Worked, terms: readonly Term[]): string[] =>
  terms.length === 0
    ? []
    : [
        `Noise reduction takes a dark frame as long as the exposure, from ${openAtMarkS(plan, plan.camera.noiseReductionFromS)} s on.`,
      ];

function hold(of: Worked, k: number): Draft {
  const one = of.plan.exposure.bracketCount === 1;
  const darks = dark(of, k, false);
  const plus = darks.length > 0 ? ' + darkS' : '';
  return {
    title: 'Hold still',
    value: at(of.made.columns.holdS, k),
    unit: 's',
    expression: one ? 'lagS + exposureS' : `exposures * lagS + exposureS + (exposures - 1) * writeS${plus}`,
    terms: [
      ...(one ? [] : [shots(of)]),
      lag(of),
      columnTerm(of, k, 'exposureS', 'exposure'),
      ...(one ? [] : [write(of)]),
      ...darks,
    ],
    remarks: ['The rig stands still until the last exposure has closed.', ...darkRemark(of, darks)],
    source: SOURCE,
  };
}

function camera(of: Worked, k: number): Draft {
  const one = of.plan.exposure.bracketCount === 1;
  const darks = dark(of, k, true);
  const plus = darks.length > 0 ? ' + darkS' : '';
  return {
    title: 'Camera lane',
    value: at(of.made.columns.cameraS, k),
    unit: 's',
    expression: one ? `lagS + exposureS${plus} + writeS` : `exposures * (lagS + writeS) + exposureS${plus}`,
    terms: [
      ...(one ? [] : [shots(of)]),
      lag(of),
      columnTerm(of, k, 'exposureS', 'exposure'),
      ...darks,
      write(of),
    ],
    remarks: darkRemark(of, darks),
    source: SOURCE,
  };
}

function rig(of: Worked, k: number): Draft {
  if (of.plan.move.mode !== 'moveShootMove')
    return none('Rig lane', 's', 'The rig asks for no time of its own: it does not move between exposures.');
  return {
    title: 'Rig lane',
    value: at(of.made.columns.rigS, k),
    unit: 's',
    expression: 'holdS + moveS + settleS',
    terms: [
      columnTerm(of, k, 'holdS', 'hold still'),
      columnTerm(of, k, 'moveS', 'move'),
      columnTerm(of, k, 'settleS', 'settle'),
    ],
    source: SOURCE,
  };
}

const lanes = (of: Worked, k: number): Term[] => [
  columnTerm(of, k, 'cameraS', 'camera lane'),
  columnTerm(of, k, 'rigS', 'rig lane'),
];

function spare(of: Worked, k: number): Draft {
  return {
    title: 'Spare',
    value: at(of.made.columns.spareS, k),
    unit: 's',
    expression: 'intervalS - guardS - max(cameraS, rigS)',
    terms: [columnTerm(of, k, 'intervalS', 'interval'), guard(of), ...lanes(of, k)],
    remarks: [
      'What is left of the interval after the longer lane.',
      ...(k === of.made.totals.frames - 1 ? ['After the last frame, as if another one followed.'] : []),
    ],
    source: SOURCE,
  };
}

const openSpan = (of: Worked, k: number): Draft => ({
  title: 'First opening to last closing',
  unit: 's',
  expression: 'holdS - lagS',
  terms: [columnTerm(of, k, 'holdS', 'hold still'), lag(of)],
  source: DEFINITION,
});

const grows = (of: Worked): boolean => growsWithLight(of.plan) && of.made.exposure !== null;

function interval(of: Worked, k: number): Draft {
  const { totals, columns } = of.made;
  const base = { title: 'Interval', value: at(columns.intervalS, k), unit: 's' };
  if (!grows(of)) return { ...sameAs('', 'interval', totals.intervalS, 's', 'totals.intervalS'), ...base };
  return {
    ...base,
    expression: 'dialS + openSpanS',
    terms: [
      term('dialS', 'dial setting', totals.dialS, 's', 'totals.dialS'),
      term(
        'openSpanS',
        'first opening to last closing',
        at(columns.holdS, k) - of.plan.camera.shutterLagS,
        's',
        ofFrame(k, 'openSpanS'),
      ),
    ],
    remarks: ['The trigger counts from the last closing to the next opening.'],
    source: DEFINITION,
  };
}

function elapsed(of: Worked, k: number): Draft {
  const { totals, columns } = of.made;
  const base = { title: 'Since the first frame', value: at(columns.elapsedS, k), unit: 's' };
  if (k === 0) return { ...none('', 's', 'This is the first frame.'), ...base };
  if (grows(of))
    return {
      ...base,
      expression: 'elapsedS + intervalS',
      terms: [
        term(
          'elapsedS',
          'opening of the frame before',
          at(columns.elapsedS, k - 1),
          's',
          ofFrame(k - 1, 'elapsedS'),
        ),
        term(
          'intervalS',
          'interval of the frame before',
          at(columns.intervalS, k - 1),
          's',
          ofFrame(k - 1, 'intervalS'),
        ),
      ],
      source: DEFINITION,
    };
  return {
    ...base,
    expression: '(frame - 1) * intervalS',
    terms: [
      term('frame', 'frame', k + 1, ''),
      term('intervalS', 'interval', totals.intervalS, 's', 'totals.intervalS'),
    ],
    source: DEFINITION,
  };
}

/** Workings of the cycle of one frame. */
export const frameCycleWorkings = (of: Worked, k: number): Workings => ({
  openS: () => open(of, k),
  exposureS: () => exposure(of, k),
  holdS: () => hold(of, k),
  cameraS: () => camera(of, k),
  rigS: () => rig(of, k),
  spareS: () => spare(of, k),
  openSpanS: () => openSpan(of, k),
  intervalS: () => interval(of, k),
  elapsedS: () => elapsed(of, k),
});

function shortestInterval(of: Worked): Draft {
  const { longestCycleFrame, shortestIntervalS } = of.made.totals;
  return {
    title: 'Shortest interval',
    value: shortestIntervalS,
    unit: 's',
    expression: 'max(cameraS, rigS) + guardS',
    terms: [...lanes(of, longestCycleFrame - 1), guard(of)],
    frame: longestCycleFrame,
    remarks: [
      `Of the frame with the longest lane, frame ${longestCycleFrame}: the longest decides, not the mean.`,
    ],
    source: SOURCE,
  };
}

/** The interval's margin: the lanes against the interval, where that is tightest. */
function marginDrafts(of: Worked): Workings {
  const margin = of.made.margins.find(({ id }) => id === 'interval');
  if (!margin) return {};
  const k = margin.frame - 1;
  const alone = of.made.totals.frames === 1;
  const shared = { unit: 's', frame: margin.frame };
  return {
    [ofMargin(margin, 'used')]: () => ({
      ...shared,
      title: 'Interval: used',
      value: margin.used,
      expression: 'max(cameraS, rigS)',
      terms: lanes(of, k),
      source: SOURCE,
    }),
    [ofMargin(margin, 'available')]: () => ({
      ...shared,
      title: 'Interval: available',
      value: margin.available,
      expression: alone ? 'max(cameraS, rigS) + guardS' : 'intervalS',
      terms: alone ? [...lanes(of, k), guard(of)] : [columnTerm(of, k, 'intervalS', 'interval')],
      remarks: alone ? ['A single frame has no interval to fit into.'] : [],
      source: DEFINITION,
    }),
  };
}

/** Workings of the cycle over the run. */
export const cycleWorkings = (of: Worked): Workings => {
  const { longestCycleFrame, tightestFrame, tightestSpareS } = of.made.totals;
  return {
    'totals.shortestIntervalS': () => shortestInterval(of),
    'totals.longestCycleFrame': () =>
      frameFound('Frame of the longest cycle', 'frame with the longest lane', longestCycleFrame),
    'totals.tightestSpareS': () => ({
      ...spare(of, tightestFrame - 1),
      title: 'Tightest spare',
      value: tightestSpareS,
      frame: tightestFrame,
    }),
    'totals.tightestFrame': () =>
      frameFound('Frame of the tightest spare', 'frame with the least spare', tightestFrame),
    ...marginDrafts(of),
  };
};
