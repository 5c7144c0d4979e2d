/** What the keyboard does. */
import { CloseButton, Dialog } from './Dialog.tsx';

const KEYS: readonly (readonly [string, string])[] = [
  ['1 2', 'Plan, Days'],
  ['Tab', 'Strip, verdict, findings, inputs, cycle, margins, run'],
  ['=', 'In a figure of the strip: work it out from the others'],
  ['↑ ↓', 'In a field: one step; with Shift ten'],
  ['Esc', 'In a field: back to what it was'],
  ['[ ]', 'Finding before, finding after'],
  ['← → ↑ ↓', "In the year's light: a day, a week; Page Up and Page Down a month, Home and End the year"],
  ['Enter', "In the year's light: put the plan on that day"],
  ['Ctrl or Cmd Z', 'Undo; with Shift redo'],
  ['Ctrl or Cmd S', 'Save the plan as a file'],
  ['Ctrl or Cmd O', 'Open a plan file'],
];

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
