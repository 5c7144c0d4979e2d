/** What can be done with the rows that one is at, for those who would rather press than know the keys. */
import { useId, useState } from 'react';
import { readNumber } from '../format/numbers.ts';
import { StandingIcon } from '../icons.tsx';
import {
  duplicateRows,
  insertRows,
  joinNext,
  moveShotBy,
  newAction,
  newShot,
  removeRows,
  retimeRows,
  shotAt,
  splitHere,
  toggleDone,
} from './commands.ts';
import { say, selected, setGrid, useGrid } from './gridStore.ts';
import { selectionText } from './keys.ts';
import type { Sheeted } from './sheeted.ts';

const Tool = ({
  text,
  onPress,
  disabled = false,
}: {
  text: string;
  onPress: () => void;
  disabled?: boolean;
}) => (
  <button type="button" className="btn" disabled={disabled} onClick={onPress}>
    {text}
  </button>
);

/** A new hold for the exposures that are selected. */
function HoldBox({ present }: { present: number }) {
  const id = useId();
  const [text, setText] = useState<string | null>(null);
  const take = () => {
    const hold = text === null ? null : readNumber(text);
    if (text !== null && hold === null)
      say(`Not done: a hold is a whole number of frames, not “${text}”.`, true);
    if (hold !== null) retimeRows(hold);
    setText(null);
  };
  return (
    <span className="hold-box">
      <label htmlFor={id}>Hold for</label>
      <span className="box">
        <input
          id={id}
          className="m"
          inputMode="numeric"
          autoComplete="off"
          value={text ?? String(present)}
          onChange={({ target }) => setText(target.value)}
          onKeyDown={({ key }) => {
            if (key === 'Enter') take();
            if (key === 'Escape') setText(null);
          }}
          onBlur={take}
        />
      </span>
    </span>
  );
}

function ExposureTools({ of, range }: { of: Sheeted; range: { first: number; last: number } }) {
  return (
    <>
      <HoldBox present={of.sheet.columns.frames[range.first - 1] ?? 1} />
      <Tool text="Insert" onPress={() => insertRows(1)} />
      <Tool text="Duplicate" onPress={duplicateRows} />
      <Tool text="Delete" onPress={removeRows} />
      <Tool text="New action here" onPress={splitHere} />
      <Tool text="Done" onPress={() => toggleDone(range)} />
    </>
  );
}

export function Tools({ of }: { of: Sheeted }) {
  const at = useGrid((grid) => grid.at);
  const anchor = useGrid((grid) => grid.anchor);
  const range = of.sheet.exposures > 0 ? selected({ at, anchor }) : null;
  const shot = shotAt(of, at);
  const shots = of.sheet.shots.length;
  return (
    <div className="tools-row" role="toolbar" aria-label="Rows">
      {range && <ExposureTools of={of} range={range} />}
      {at.kind !== 'exposure' && <Tool text="New action" onPress={newAction} />}
      {at.kind === 'action' && <Tool text="Join with next" onPress={joinNext} />}
      {(at.kind === 'action' || at.kind === 'shot') && (
        <Tool text={at.kind === 'shot' ? 'Delete shot' : 'Delete action'} onPress={removeRows} />
      )}
      <Tool text="New shot" onPress={newShot} />
      {at.kind === 'shot' && (
        <>
          <Tool text="Shot up" disabled={shot === 0} onPress={() => moveShotBy(-1)} />
          <Tool text="Shot down" disabled={shot + 1 >= shots} onPress={() => moveShotBy(1)} />
        </>
      )}
      <span className="s selection">{selectionText(range)}</span>
      <span className="folds">
        <Tool text="Open all" onPress={() => setGrid({ open: new Map(), openAll: true })} />
        <Tool text="Close all" onPress={() => setGrid({ open: new Map(), openAll: false })} />
      </span>
    </div>
  );
}

const HINT =
  'Enter edits a cell, Space marks done, Shift with the arrows selects. All keys: Keys, in the bar.';

/** What a command did; faults of pasted rows one by one. */
export function Saying() {
  const said = useGrid((grid) => grid.said);
  return (
    <div className={said?.bad ? 'saying bad' : 'saying'} role={said?.bad ? 'alert' : 'status'}>
      {!said && <p className="keys-hint">{HINT}</p>}
      {said && (
        <>
          {said.bad && <StandingIcon standing="stop" size={14} />}
          <p>{said.text}</p>
          {said.faults.length > 0 && (
            <ul className="plain" aria-label="Faults">
              {said.faults.slice(0, 50).map(({ path, found, allowed }) => (
                <li key={`${path} ${found}`}>
                  <b>{path}</b>: found {found}, allowed: {allowed}
                </li>
              ))}
              {said.faults.length > 50 && <li>… and {said.faults.length - 50} more.</li>}
            </ul>
          )}
          {said.bad && (
            <button type="button" className="link" onClick={() => setGrid({ said: null })}>
              Close
            </button>
          )}
        </>
      )}
    </div>
  );
}
