/** The per-frame table: one record a frame, for a spreadsheet or another program. */
import type { Plan } from '../engine/plan/schema.ts';
import type { Schedule } from '../engine/schedule-types.ts';
import { isoAt } from '../engine/time/clock.ts';
import { axisColumns, type Column, csvTable, numberCell, numbers, textCell } from './csv.ts';

/** Singles are written to a thousandth: their further digits are noise. */
const singles = (heading: string, values: Float32Array | undefined | null): Column[] =>
  values
    ? [{ heading, cell: (index) => numberCell(Math.round((values[index] ?? Number.NaN) * 1000) / 1000) }]
    : [];

/** Settings as marked on the camera, light and sky: as far as the plan has them. */
function settingColumns({ columns, exposure }: Schedule): Column[] {
  const { rung, evScene, evError, sky } = columns;
  const rungOf = (index: number) => exposure?.rungs[rung?.[index] ?? 0];
  const settings: Column[] = exposure
    ? [
        { heading: 'shutter', cell: (index) => textCell(rungOf(index)?.shutterMark ?? '') },
        { heading: 'apertureF', cell: (index) => numberCell(rungOf(index)?.apertureF ?? Number.NaN) },
        { heading: 'iso', cell: (index) => numberCell(rungOf(index)?.iso ?? Number.NaN) },
      ]
    : [];
  return [
    ...settings,
    ...singles('sceneEv', evScene),
    ...singles('brighterStops', evError),
    ...singles('sunAltitudeDeg', sky?.sunAltitudeDeg),
    ...singles('sunAzimuthDeg', sky?.sunAzimuthDeg),
    ...singles('moonAltitudeDeg', sky?.moonAltitudeDeg),
  ];
}

/** What happens at each frame that something happens at. */
function eventTexts({ events }: Schedule): Map<number, string> {
  const texts = new Map<number, string>();
  for (const { frame, text } of events) {
    const before = texts.get(frame);
    texts.set(frame, before === undefined ? text : `${before}; ${text}`);
  }
  return texts;
}

function allColumns(plan: Plan, schedule: Schedule): Column[] {
  const { columns, startMs, offsets } = schedule;
  const elapsedMs = (index: number) => (columns.elapsedS[index] ?? Number.NaN) * 1000;
  const cards = plan.storage.cards.map(({ name }) => textCell(name));
  const events = new Map([...eventTexts(schedule)].map(([frame, text]) => [frame, textCell(text)]));
  return [
    { heading: 'frame', cell: (index) => String(index + 1) },
    { heading: 'clock', cell: (index) => isoAt(startMs + elapsedMs(index), offsets) },
    numbers('elapsedS', columns.elapsedS),
    ...columns.axes.flatMap(axisColumns),
    numbers('intervalS', columns.intervalS),
    numbers('exposureS', columns.exposureS),
    ...settingColumns(schedule),
    numbers('cameraS', columns.cameraS),
    numbers('moveS', columns.moveS),
    numbers('settleS', columns.settleS),
    ...singles('ringPx', columns.ringPx),
    numbers('rigS', columns.rigS),
    numbers('spareS', columns.spareS),
    ...singles('subjectPx', columns.subjectPx),
    ...singles('backgroundPx', columns.backgroundPx),
    ...singles('aimMissPx', columns.aimMissPx),
    ...columns.sources.map(({ name, leftWh }) => numbers(`${name}.leftWh`, leftWh)),
    { heading: 'card', cell: (index) => cards[columns.cardIndex[index] ?? 0] ?? '' },
    numbers('cardBytes', columns.cardBytes),
    numbers('bufferBytes', columns.bufferBytes),
    { heading: 'event', cell: (index) => events.get(index + 1) ?? '' },
  ];
}

/**
 * The table of all frames as CSV, in chunks of whole records, so that a million frames need no long string.
 *
 * The headings come first: `frame` (from 1), `clock` (ISO 8601 with the local offset), `elapsedS`, for each
 * axis NAME `NAME.steps` and `NAME.mm` or `NAME.deg`, then the cycle, the sources, the card and the events.
 */
export const framesCsv = (plan: Plan, schedule: Schedule): Generator<string, void, undefined> =>
  csvTable(allColumns(plan, schedule), schedule.totals.frames);
