/** What the keyboard does. */
import { useState } from 'react';
import { setSingleKeys, singleKeysOn } from '../singleKeys.ts';
import { CloseButton, Dialog } from './Dialog.tsx';

const KEYS: readonly (readonly [string, string])[] = [
  ['1 2 3 4', 'Plan, Days, Sheet, On set'],
  ['P', 'The kept plans'],
  ['Tab', 'Strip, verdict, findings, inputs, cycle, margins, run'],
  ['=', 'In a figure of the strip: work it out from the others'],
  ['↑ ↓', 'In a field: one step; with Shift ten'],
  ['Esc', 'In a field: back to what it was'],
  ['[ ]', 'Finding before, finding after'],
  ['Enter', 'On a way out of a finding: take it; the focus alone shows what it would change'],
  ['↑ ↓', 'In the interval ladder: another setting; Home and End; Enter takes it; ← → its figures'],
  ['?', 'In a table: how the figure of the chosen cell was worked out; the arrows choose it'],
  ['C', 'Compare the plan with a copy of it'],
  ['← → ↑ ↓', "In the year's light: a day, a week; Page Up and Page Down a month, Home and End the year"],
  ['Enter', "In the year's light: put the plan on that day"],
  [
    '↑ ↓ ← →',
    'On the sheet: row and cell; with Ctrl or Cmd the group before or after, with Shift rows are selected',
  ],
  [
    'Enter F2',
    'On the sheet: edit the cell, or type into it; Enter takes it and goes down, Tab to the right, Esc restores',
  ],
  ['Space', 'On the sheet: exposures done, or not done after all; on set: the next thing to do is done'],
  ['Ctrl or Cmd A', 'On the sheet: select the group; once more, all'],
  ['Insert', 'On the sheet: exposures after the selected ones; also Alt Enter'],
  ['Delete', 'On the sheet: remove what is selected'],
  ['Ctrl or Cmd D', 'On the sheet: duplicate what is selected'],
  ['Ctrl or Cmd C V', 'On the sheet: copy rows, paste rows of a spreadsheet'],
  [
    'Alt ↑ ↓',
    'On the sheet: a new action begins here, join with the next; in the frames of a time-lapse the event before or after',
  ],
  ['Alt Page Up, Page Down', 'On the sheet: the break or end of a day before or after'],
  ['Ctrl or Cmd Z', 'Undo; with Shift redo'],
  ['Ctrl or Cmd S', 'Save the plan as a file'],
  ['Ctrl or Cmd O', 'Open a plan file'],
  ['Ctrl or Cmd P', 'Print: on the plan the run sheet, on the sheet the sheet'],
];

function SingleKeys() {
  const [on, setOn] = useState(singleKeysOn);
  const turn = (wanted: boolean) => {
    setSingleKeys(wanted);
    setOn(wanted);
  };
  return (
    <div className="flag">
      <input id="single-keys" type="checkbox" checked={on} onChange={({ target }) => turn(target.checked)} />
      <label htmlFor="single-keys">1 2 3 4, P, C and [ ] act anywhere on the page, ? in a table</label>
    </div>
  );
}

export function KeysDialog() {
  return (
    <Dialog title="Keys">
      <dl className="keys">
        {KEYS.map(([keys, what]) => (
          <div key={keys}>
            <dt>{keys}</dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
      <SingleKeys />
      <p className="s">
        Times are read as 1h30, 90m, 1:30:00, 40 min, 1/15 or 2,5. A drop of a plan file anywhere on the page
        opens it.
      </p>
      <div className="row">
        <CloseButton />
      </div>
    </Dialog>
  );
}
