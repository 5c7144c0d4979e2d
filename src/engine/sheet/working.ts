/** How the single figures of an exposure sheet came about. */
import { frameBytesOf } from '../storage/storage.ts';
import { parseRate, toNumber } from '../time/ratio.ts';
import {
  DEFINITION,
  type Draft,
  PRACTICE,
  sameAs,
  term,
  type Worked,
  type Workings,
} from '../working/make.ts';
import { sheetClockWorkings } from './clock-working.ts';
import { energyDraft, exposuresDraft, framesDraft } from './counts-working.ts';
import { knownSheet } from './known.ts';
import type { Sheet } from './types.ts';

const MINUTE_S = 60;

/** A sum over a column. */
const total = (column: Float64Array): number => column.reduce((sum, value) => sum + value, 0);

function work({ totals, columns }: Sheet): Draft {
  const exposuresMin = total(columns.minutes);
  const rigS = total(columns.rigS);
  return {
    title: 'Planned work',
    value: totals.workMin,
    unit: 'min',
    expression: 'handsOnMin + handsOffS / 60 + otherMin',
    terms: [
      term('handsOnMin', 'animating and switching the light, all exposures', exposuresMin, 'min'),
      term('handsOffS', 'moving, settling and the camera, all exposures', rigS, 's'),
      term(
        'otherMin',
        'set-ups, test frames and retakes so far',
        totals.workMin - exposuresMin - rigS / MINUTE_S,
        'min',
      ),
    ],
    source: DEFINITION,
  };
}

function storage(plan: Worked['plan'], { totals }: Sheet): Draft {
  const bytes = frameBytesOf(plan);
  return {
    title: 'Storage of the sheet',
    value: totals.storageBytes,
    unit: 'bytes',
    expression: 'shots * frameBytes',
    terms: [
      term(
        'shots',
        'passes of all exposures, retakes so far included',
        Math.round(totals.storageBytes / bytes),
        '',
      ),
      term('frameBytes', 'bytes of a frame', bytes, 'bytes', 'totals.frameBytes'),
    ],
    source: DEFINITION,
  };
}

const copies = (plan: Worked['plan'], { totals }: Sheet): Draft => ({
  title: 'All copies of the sheet',
  value: totals.copiesBytes,
  unit: 'bytes',
  expression: 'storageBytes * copies',
  terms: [
    term('storageBytes', 'storage of the sheet', totals.storageBytes, 'bytes', 'sheet.storageBytes'),
    term('copies', 'copies', plan.storage.copies, ''),
  ],
  source: DEFINITION,
});

const left = ({ exposures, totals }: Sheet): Draft => ({
  title: 'Exposures left',
  value: totals.left,
  unit: 'exposures',
  expression: 'exposures - done',
  terms: [
    term('exposures', 'exposures', exposures, 'exposures', 'sheet.exposures'),
    term('done', 'done', totals.done, 'exposures', 'sheet.done'),
  ],
  source: DEFINITION,
});

const screen = ({ plan }: Worked, sheet: Sheet): Draft => ({
  title: 'On screen',
  value: sheet.frames / toNumber(parseRate(plan.clip.frameRate)),
  unit: 's',
  expression: 'frames / frameRate',
  terms: [
    term('frames', 'frames of the sheet', sheet.frames, 'frames', 'sheet.frames'),
    term('frameRate', 'frame rate', toNumber(parseRate(plan.clip.frameRate)), 'fps', 'totals.frameRate'),
  ],
  source: DEFINITION,
});

const each = ({ totals, exposures }: Sheet): Draft => ({
  title: 'Each exposure, set-ups shared out',
  unit: 'min',
  expression: exposures === 0 ? '0' : 'workMin / exposures',
  terms:
    exposures === 0
      ? []
      : [
          term('workMin', 'planned work', totals.workMin, 'min', 'sheet.workMin'),
          term('exposures', 'exposures', exposures, 'exposures', 'sheet.exposures'),
        ],
  source: PRACTICE,
});

const dayCount = ({ days }: Sheet): Draft => {
  const [first, last] = [days[0], days.at(-1)];
  return sameAs('Days of work', 'days with work on them', days.length, 'days', null, {
    remarks:
      first && last ? [`From ${first.date} to ${last.date}, as the exposures fill the working hours.`] : [],
    source: PRACTICE,
  });
};

/** Workings of the exposure sheet of a stop-motion plan. */
export function sheetWorkings(of: Worked): Workings {
  const { plan } = of;
  const sheet = knownSheet(plan);
  if (!sheet) return {};
  return {
    'sheet.screenS': () => screen(of, sheet),
    'sheet.frames': () => framesDraft(sheet),
    'sheet.exposures': () => exposuresDraft(sheet),
    'sheet.eachMin': () => each(sheet),
    'sheet.workMin': () => work(sheet),
    'sheet.days': () => dayCount(sheet),
    'sheet.energyWh': () => energyDraft(sheet),
    'sheet.storageBytes': () => storage(plan, sheet),
    'sheet.copiesBytes': () => copies(plan, sheet),
    'sheet.done': () => sameAs('Exposures done', 'ticked on the sheet', sheet.totals.done, 'exposures', null),
    'sheet.left': () => left(sheet),
    ...sheetClockWorkings({ plan, sheet }),
  };
}
