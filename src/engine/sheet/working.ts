/** How the single figures of an exposure sheet came about. */
import { frameBytesOf } from '../storage/storage.ts';
import { DEFINITION, type Draft, term, type Worked, type Workings } from '../working/make.ts';
import { sheetOf } from './sheet.ts';
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
    term('exposures', 'exposures', exposures, 'exposures'),
    term('done', 'ticked', totals.done, 'exposures'),
  ],
  source: DEFINITION,
});

/** Workings of the exposure sheet of a stop-motion plan. */
export function sheetWorkings({ plan }: Worked): Workings {
  if (plan.technique !== 'stopMotion') return {};
  const sheet = () => sheetOf(plan);
  return {
    'sheet.workMin': () => work(sheet()),
    'sheet.storageBytes': () => storage(plan, sheet()),
    'sheet.copiesBytes': () => copies(plan, sheet()),
    'sheet.left': () => left(sheet()),
  };
}
