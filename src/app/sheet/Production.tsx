/** What the work goes by: time an exposure, set-up, hours and days, passes, first timecode. */

import { memo, useId, useState } from 'react';
import { WEEKDAYS } from '../../engine/plan/constants.ts';
import { readPlan } from '../../engine/plan/parse.ts';
import { setAt } from '../../engine/plan/paths.ts';
import { memberSchemas, type Pass, type Plan } from '../../engine/plan/schema.ts';
import { clockMinutes } from '../../engine/time/day.ts';
import { Flag } from '../fields/ChoiceField.tsx';
import { EntryBox } from '../fields/EntryBox.tsx';
import { enterText, faultsText } from '../fields/entry.ts';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { plural } from '../format/numbers.ts';
import { act } from '../sections/act.ts';
import { Member } from '../sections/Member.tsx';
import { More } from '../sections/parts.tsx';
import { readMinute } from '../sections/WindowFields.tsx';
import { freeName } from '../store/members.ts';
import { endGesture, planDesk, usePlan } from '../store/plan.ts';
import { removePass, renamePass } from './passEdits.ts';

const withSheet = (plan: Plan, change: Partial<Plan['sheet']>): Plan => ({
  ...plan,
  sheet: { ...plan.sheet, ...change },
});

function Breaks() {
  const breaks = usePlan((plan) => plan.sheet.breaks);
  const last = breaks.at(-1);
  const add = () =>
    act((plan) =>
      withSheet(plan, { breaks: [...plan.sheet.breaks, memberSchemas.rest.parse(freeBreak(last?.to))] }),
    );
  return (
    <>
      {breaks.map((_, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a break keeps its place while its times are typed
        <div key={index} className="break w2">
          <TextField path={`sheet.breaks.${index}.from`} read={readMinute} />
          <TextField path={`sheet.breaks.${index}.to`} read={readMinute} label="Break to" />
          <button
            type="button"
            className="btn"
            aria-label={`Remove break ${index + 1}`}
            onClick={() =>
              act((plan) => withSheet(plan, { breaks: plan.sheet.breaks.filter((_one, b) => b !== index) }))
            }
          >
            Remove
          </button>
        </div>
      ))}
      {breaks.length < 10 && (
        <button type="button" className="btn w2" onClick={add}>
          Add a break
        </button>
      )}
    </>
  );
}

/** A quarter of an hour, two hours after the break before. */
function freeBreak(after: string | undefined): { from: string; to: string } {
  const start = after === undefined ? 13 * 60 : Math.min(23 * 60, clockMinutes(after) + 120);
  const clock = (minutes: number) =>
    `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
  return { from: clock(start), to: clock(start + 15) };
}

const DAY_WORDS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

function DaysOff() {
  const id = useId();
  const off = usePlan((plan) => plan.sheet.daysOff);
  const toggle = (day: (typeof WEEKDAYS)[number]) =>
    act((plan) => {
      const { daysOff } = plan.sheet;
      const next = daysOff.includes(day) ? daysOff.filter((one) => one !== day) : [...daysOff, day];
      return withSheet(plan, { daysOff: next });
    });
  return (
    <fieldset className="days-off w2">
      <legend>Days off</legend>
      {WEEKDAYS.map((day, d) => (
        <span key={day} className="flag">
          <input
            id={id + day}
            type="checkbox"
            checked={off.includes(day)}
            disabled={off.length === 6 && !off.includes(day)}
            onChange={() => toggle(day)}
          />
          <label htmlFor={id + day}>{DAY_WORDS[d]}</label>
        </span>
      ))}
    </fieldset>
  );
}

const CLOSED = 'sheet.closedDates';

function ClosedDates() {
  const dates = usePlan((plan) => plan.sheet.closedDates);
  const [typed, setTyped] = useState<{ text: string; error: string | null } | null>(null);
  const type = (text: string) => {
    const list = text.split(/[\s,;]+/).filter((part) => part !== '');
    const read = readPlan(setAt(planDesk.store.getState().plan, CLOSED, list));
    const faults = read.ok ? planDesk.change(read.plan, CLOSED) : read.faults;
    setTyped({ text, error: faultsText(faults, CLOSED) });
  };
  const leave = () => {
    endGesture();
    if (typed?.error === null) setTyped(null);
  };
  return (
    <EntryBox
      label="Also closed on"
      placeholder="2026-12-24, 2026-12-25"
      path={CLOSED}
      wide
      text={typed?.text ?? dates.join(', ')}
      error={typed?.error ?? null}
      onText={type}
      onLeave={leave}
      onRestore={() => {
        planDesk.cancelGesture(CLOSED);
        setTyped(null);
      }}
    />
  );
}

function PassBlock({ pass, index, only }: { pass: Pass; index: number; only: boolean }) {
  const path = `sheet.passes.${index}`;
  const settings = [pass.shutterS, pass.apertureF, pass.iso].filter((value) => value !== null).length;
  return (
    <Member
      name={pass.name}
      summary={settings === 0 ? 'as the plan’s exposure' : 'own settings'}
      onRemove={only ? undefined : () => act((plan) => removePass(plan, index))}
    >
      <TextField path={`${path}.name`} wide put={(plan, name) => renamePass(plan, index, name)} />
      <NumberField path={`${path}.shutterS`} like="exposure.shutterS" placeholder="plan’s" />
      <NumberField path={`${path}.apertureF`} like="exposure.apertureF" placeholder="plan’s" />
      <NumberField path={`${path}.iso`} like="exposure.iso" placeholder="plan’s" />
      <NumberField path={`${path}.changeMin`} />
    </Member>
  );
}

const Passes = () => {
  const passes = usePlan((plan) => plan.sheet.passes);
  return (
    <>
      {passes.map((pass, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a pass keeps its place while it is renamed
        <PassBlock key={index} pass={pass} index={index} only={passes.length === 1} />
      ))}
      {passes.length < 20 && (
        <button
          type="button"
          className="btn w2"
          onClick={() =>
            act((plan) => {
              const name = freeName('Pass', plan.sheet.passes);
              return withSheet(plan, { passes: [...plan.sheet.passes, memberSchemas.pass.parse({ name })] });
            })
          }
        >
          Add a pass
        </button>
      )}
    </>
  );
};

function Notes() {
  const id = useId();
  const notes = usePlan((plan) => plan.sheet.notes);
  return (
    <div className="fld w2">
      <label htmlFor={id}>Shoot notes</label>
      <textarea
        id={id}
        rows={4}
        maxLength={20_000}
        value={notes}
        onChange={({ target }) =>
          enterText('sheet.notes', target.value, (plan, text) => setAt(plan, 'sheet.notes', text))
        }
        onBlur={endGesture}
      />
    </div>
  );
}

export const Production = memo(function Production() {
  // One by one: an edit of a row or a tick leaves them all.
  const passes = usePlan((plan) => plan.sheet.passes);
  const breaks = usePlan((plan) => plan.sheet.breaks);
  const daysOff = usePlan((plan) => plan.sheet.daysOff);
  const workFrom = usePlan((plan) => plan.sheet.workFrom);
  const workTo = usePlan((plan) => plan.sheet.workTo);
  return (
    <section className="panel production" aria-labelledby="production-title">
      <header>
        <h2 id="production-title">What the work goes by</h2>
      </header>
      <div className="pad grid">
        <NumberField path="sheet.minutesPerExposure" />
        <NumberField path="sheet.setUpMin" />
        <NumberField path="sheet.testFrames" />
        <TextField path="sheet.startTimecode" />
        <Flag path="sheet.dropFrame" />
        <More title="Passes" summary={passes.map(({ name }) => name).join(', ')}>
          <Passes />
        </More>
        <More
          title="Working day"
          summary={`${workFrom} to ${workTo}, ${plural(breaks.length, 'break')}, ${plural(daysOff.length, 'day')} off`}
        >
          <TextField path="sheet.workFrom" read={readMinute} />
          <TextField path="sheet.workTo" read={readMinute} />
          <Breaks />
          <DaysOff />
          <ClosedDates />
        </More>
        <Notes />
      </div>
    </section>
  );
});
