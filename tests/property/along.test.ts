/** What one takes along, of random plans: nothing throws, nothing is left blank, and it reads back. */
import fc from 'fast-check';
import ICAL from 'ical.js';
import { test, vi } from 'vitest';
import { axisWords, partProgramFaults } from '../../src/engine/plan/part-program-check.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { sheetOf } from '../../src/engine/sheet/sheet.ts';
import { calendarText } from '../../src/outputs/calendar.ts';
import { partProgram } from '../../src/outputs/part-program/program.ts';
import { positionsCsv } from '../../src/outputs/positions-csv.ts';
import { runSheet } from '../../src/outputs/run-sheet/run-sheet.ts';
import { runSheetText } from '../../src/outputs/run-sheet/text.ts';
import { type Letter, type Place, readProgram } from '../reference/part-program/reader.ts';
import { must, same } from './close.ts';
import { litPlans, plans, rigPlans } from './plans.ts';
import { PATIENCE_MS, settings } from './settings.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const days = fc.record({
  travelMin: fc.constantFrom(0, 12.5, 2880),
  setUpMin: fc.constantFrom(0, 20),
  inHandMin: fc.constantFrom(0, 0.1, 600),
  bring: fc.array(fc.constantFrom('Tea', '=1+1', '\u{1F4A1} lamp;, \\n'), { maxLength: 3 }),
});
const programs = fc.record({ inches: fc.boolean(), feedShare: fc.constantFrom(0.01, 0.3, 1) });

const every = fc
  .tuple(
    fc.oneof(
      plans.map(({ plan }) => plan),
      litPlans,
      rigPlans.map(({ plan }) => plan),
    ),
    days,
    programs,
  )
  .map(
    ([plan, day, program]): Plan => ({
      ...plan,
      day: { ...plan.day, ...day },
      partProgram: { ...plan.partProgram, ...program },
    }),
  );

function worked(plan: Plan) {
  return { plan, made: schedule(plan), sheet: plan.technique === 'stopMotion' ? sheetOf(plan) : null };
}

const property = (check: (of: ReturnType<typeof worked>) => void) =>
  fc.assert(
    fc.property(every, (plan) => check(worked(plan))),
    settings(0.5),
  );

test('a run sheet has no blanks', () =>
  property(({ plan, made, sheet }) => {
    const text = runSheetText(runSheet(plan, made, sheet));
    must(
      !/undefined|NaN|Infinity|\[object/.test(text.replaceAll(plan.title, '').replaceAll(plan.notes, '')),
      text,
    );
    for (const line of text.split('\n')) must(line.length <= 100, line);
  }));

test('a calendar is read back, each id once, no line over 75 octets', () =>
  property((of) => {
    const text = calendarText({ ...of, stampMs: 0 });
    const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
    must(of.sheet !== null || events.length > 0, 'no event');
    const ids = events.map((event) => String(event.getFirstPropertyValue('uid')));
    same(new Set(ids).size, ids.length, 'ids');
    for (const line of text.split('\r\n')) must(new TextEncoder().encode(line).length <= 75, line);
  }));

test('positions have a record a frame', () =>
  property(({ plan, made, sheet }) => {
    let records = -1;
    for (const chunk of positionsCsv(plan, made, sheet)) records += chunk.split('\r\n').length - 1;
    must(records >= (sheet ? sheet.exposures : made.totals.frames), `${records} records`);
  }));

/** Places at each firing of the camera. */
const firedAt = (chunks: readonly string[]): Place[] =>
  [...readProgram(chunks)].flatMap((act) => (act.kind === 'M' && act.code === 8 ? [act.at] : []));

test('a part program is read back, and stands at each frame where the plan does; or is refused', () =>
  property(({ plan, made, sheet }) => {
    if (partProgramFaults(plan).length > 0) return;
    const chunks = [...partProgram(plan, made, sheet)];
    const fired = firedAt(chunks);
    if (sheet === null && plan.move.mode === 'continuous') return same(fired.length, 0, 'firings');
    const words = axisWords(plan.rig);
    const passes = sheet ? plan.sheet.passes.length : 1;
    const axes = sheet ? sheet.columns.axes : made.columns.axes;
    if (sheet === null) same(fired.length, made.totals.frames, 'firings');
    for (const [n, place] of fired.entries())
      for (const [i, { steps, stepsPerUnit }] of axes.entries()) {
        const off = place[words[i] as Letter] * stepsPerUnit - (steps[Math.floor(n / passes)] ?? Number.NaN);
        must(Math.abs(off) <= 0.5, `${words[i]} at ${n}: ${off} microsteps off`);
      }
  }));
