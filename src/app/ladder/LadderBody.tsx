/** The plan at the settings of the trigger around the present one, a row each; a row can be taken. */
import { type KeyboardEvent, type MouseEvent, useEffect, useRef } from 'react';
import type { LadderRow } from '../../engine/fixes/interval-ladder.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { ofFrame, ofSetting } from '../../engine/working/names.ts';
import { useFixes } from '../fixes/fixStore.ts';
import { wantLadder } from '../fixes/following.ts';
import { takeBack, takeChanges } from '../fixes/taking.ts';
import { durationText } from '../format/durations.ts';
import { StandingTag } from '../icons.tsx';
import { withChecks } from '../store/checker.ts';
import { usePlan, useSchedule } from '../store/plan.ts';
import { How } from '../working/How.tsx';
import {
  buttonAfterKey,
  endText,
  exposureLines,
  settingText,
  shortFinding,
  signedDuration,
} from './ladderRows.ts';

const HEADINGS = [
  'Setting',
  'Worst finding',
  'Frames',
  'Clip',
  'Ends',
  'Spare',
  'Exposure',
  'Swaps',
  'Cards',
] as const;

interface RowProps {
  row: LadderRow;
  /** The plan for which it was worked out; null if that is an earlier one. */
  plan: Plan | null;
  present: boolean;
  firstFrameAt: string;
}

function Row({ row, plan, present, firstFrameAt }: RowProps) {
  const { dial, interval } = settingText(row);
  const { worst, tightestSpareS: spareS } = row;
  const take = () => {
    if (plan && !present) withChecks(() => takeChanges(plan, row.changes, `Interval to ${dial}`, 'ladder'));
  };
  // Those of an earlier plan have no workings any more.
  const figure = (of: string, name: (typeof HEADINGS)[number], text: string) =>
    plan ? (
      <How
        of={present ? of : ofSetting(row.dialS, of)}
        what={`${text}, ${name}${present ? '' : ` at ${dial}`}`}
        tabIndex={present ? 0 : -1}
      >
        {text}
      </How>
    ) : (
      text
    );
  // Its figures are asked about, anything else of the row takes it.
  const onClick = ({ target }: MouseEvent) => {
    if (!(target as Element).closest('.how')) take();
  };
  return (
    <tr className={present ? 'present' : undefined} onClick={onClick}>
      <th scope="row">
        <button
          type="button"
          className="m"
          tabIndex={present ? 0 : -1}
          aria-current={present ? 'true' : undefined}
          aria-disabled={plan === null}
          aria-label={present ? `${dial}, as planned` : `Take ${dial}`}
        >
          {dial}
        </button>
        {interval && <small>every {figure('totals.intervalS', 'Setting', interval)}</small>}
      </th>
      <td>
        {worst ? (
          <>
            <StandingTag standing={worst.severity} />
            <small>{shortFinding(worst)}</small>
          </>
        ) : (
          <StandingTag standing="fine" />
        )}
      </td>
      <td className="m">{figure('totals.frames', 'Frames', String(row.frames))}</td>
      <td className="m">{figure('totals.clipLengthS', 'Clip', durationText(row.clipLengthS, 2))}</td>
      <td className="m">{figure('totals.lastFrameAt', 'Ends', endText(row, firstFrameAt))}</td>
      <td className={`m${spareS < 0 ? ' wrong' : ''}`}>
        {figure('totals.tightestSpareS', 'Spare', signedDuration(spareS))}
      </td>
      <td>
        {exposureLines(row).map(({ text, frame }) => (
          <small key={text}>
            {frame === null ? text : figure(ofFrame(frame - 1, 'evSettings'), 'Exposure', text)}
          </small>
        ))}
      </td>
      <td className="m">{figure('run.swaps', 'Swaps', String(row.swaps))}</td>
      <td className="m">{figure('cards.used', 'Cards', String(row.cards))}</td>
    </tr>
  );
}

function Said() {
  const taken = useFixes((state) => state.taken);
  const here = taken?.at === 'ladder' ? taken : null;
  return (
    <p className="ladder-said" role="status">
      {here && (
        <>
          {here.text}{' '}
          <button type="button" className="link" onClick={takeBack}>
            Undo
          </button>
        </>
      )}
    </p>
  );
}

function Table({ rows, plan }: { rows: readonly LadderRow[]; plan: Plan | null }) {
  const { dialS, firstFrameAt } = useSchedule().totals;
  const body = useRef<HTMLTableSectionElement>(null);
  const onKeyDown = (event: KeyboardEvent) => {
    const rows = [...(body.current?.rows ?? [])].map((row) => [...row.querySelectorAll('button')]);
    const r = rows.findIndex((buttons) => buttons.includes(document.activeElement as never));
    const b = rows[r]?.indexOf(document.activeElement as never) ?? 0;
    const to = buttonAfterKey(
      event.key,
      { row: r, button: b },
      rows.map(({ length }) => length),
    );
    if (to === null) return;
    event.preventDefault();
    rows[to.row]?.[to.button]?.focus();
  };
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys
    <section className="ladder-scroll" aria-label="Settings of the trigger" tabIndex={0}>
      <table className="ladder">
        <thead>
          <tr>
            {HEADINGS.map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody ref={body} onKeyDown={onKeyDown}>
          {rows.map((row) => (
            <Row
              key={row.dialS}
              {...{ row, plan, firstFrameAt }}
              present={Math.abs(row.dialS - dialS) < 1e-9}
            />
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Works the ladder out as long as it is open. */
export function LadderBody() {
  useEffect(() => {
    wantLadder(true);
    return () => wantLadder(false);
  }, []);
  const plan = usePlan((present) => present);
  const ladder = useFixes((state) => state.ladder);
  const failed = useFixes((state) => state.failed);
  if (failed !== null) return <p className="ladder-note s">The ladder could not be worked out.</p>;
  if (!ladder) return <p className="ladder-note s">Working the settings out…</p>;
  if (ladder.is.length === 0) return <p className="ladder-note s">The trigger has no other setting.</p>;
  return (
    <>
      <Table rows={ladder.is} plan={ladder.plan === plan ? plan : null} />
      <Said />
    </>
  );
}
