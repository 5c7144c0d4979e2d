/** What happened, with its clock: notes typed by hand, saved as a table, cleared and had back. */
import { useId, useState } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import { isoIn } from '../../engine/time/clock.ts';
import { fileStem } from '../../outputs/file-name.ts';
import { type LogLine, logCsv } from '../../outputs/log-csv.ts';
import { handOver } from '../store/files.ts';
import type { LogEntry } from './shelf.ts';
import { bringBack, canBringBack, clearRun, note, useRun } from './store.ts';
import { clockText } from './words.ts';

/** Lines of the log as they are saved. */
export const linesOf = (log: readonly LogEntry[], { place }: Plan): LogLine[] =>
  log.map(({ atMs, phoneMs, kind, frame, text }) => ({
    at: isoIn(Math.floor(atMs / 1000) * 1000, place),
    phone: new Date(phoneMs).toISOString(),
    kind,
    frame,
    text,
  }));

const LONGEST_NOTE = 300;

function NewNote() {
  const id = useId();
  const [text, setText] = useState('');
  const write = () => {
    if (text.trim() !== '') note(text.trim());
    setText('');
  };
  return (
    <form
      className="on-note"
      onSubmit={(event) => {
        event.preventDefault();
        write();
      }}
    >
      <label htmlFor={id} className="s">
        Note
      </label>
      <input id={id} value={text} maxLength={LONGEST_NOTE} onChange={({ target }) => setText(target.value)} />
      <button type="submit" className="btn">
        Write down
      </button>
    </form>
  );
}

/** @param desk - the plan with which the next run begins */
export function Log({ plan, desk, canClear }: { plan: Plan; desk: Plan; canClear: boolean }) {
  const log = useRun((state) => state.log);
  const save = () =>
    handOver(`${fileStem(plan.title)}-log.csv`, logCsv(linesOf(log, plan)), 'text/csv;charset=utf-8');
  return (
    <section aria-label="Log" className="on-log">
      <h2>Log</h2>
      <NewNote />
      {log.length > 0 ? (
        <ol className="plain">
          {log.toReversed().map((entry) => (
            <li key={`${entry.phoneMs} ${entry.kind} ${entry.text}`}>
              <span className="m">{clockText(entry.atMs, plan.place)}</span>
              <span className="s">{entry.kind}</span>
              <span>{entry.text}</span>
            </li>
          ))}
        </ol>
      ) : (
        <p className="s">Nothing has happened yet.</p>
      )}
      <div className="on-actions">
        {log.length > 0 && (
          <button type="button" className="btn" onClick={save}>
            Save the log
          </button>
        )}
        {log.length > 0 && canClear && (
          <button type="button" className="btn" onClick={() => clearRun(desk)}>
            Clear this run
          </button>
        )}
        {canBringBack() && (
          <button type="button" className="btn" onClick={bringBack}>
            Bring the cleared run back
          </button>
        )}
      </div>
    </section>
  );
}
