/** What leaves the sheet: paper and CSV. While it is on screen, printing the page prints the sheet. */
import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { plural } from '../format/numbers.ts';
import { useModal } from '../modal.ts';
import { usePlan } from '../store/plan.ts';
import { saveCsv } from './csv.ts';
import { takeAway } from './paper.ts';
import { dropAsk, openPrint, type PrintChoice, printChoice, printingStore, printsSheet } from './printing.ts';
import './print.css';

/** Makes the browser print the sheet as long as the component is on screen. */
function usePrint(): void {
  const plan = usePlan((present) => present);
  useEffect(printsSheet, []);
  // What was drawn for another plan is of no use.
  // biome-ignore lint/correctness/useExhaustiveDependencies: runs when the plan changes
  useEffect(() => takeAway, [plan]);
}

const pagesText = (pages: number): string =>
  pages === 1 ? 'about a page' : `about ${plural(pages, 'page')}`;

function Ask({ choices }: { choices: readonly PrintChoice[] }) {
  const most = Math.max(...choices.map(({ pages }) => pages));
  return (
    <dialog {...useModal(dropAsk)} aria-labelledby="print-ask" className="print-ask">
      <h2 id="print-ask">Print {pagesText(most)}?</h2>
      <p>That is a lot of paper. A long sheet also takes the browser a while to lay out.</p>
      <div className="row">
        {choices.map((choice) => (
          <button key={choice.text} type="button" className="btn" onClick={() => void printChoice(choice)}>
            {choice.text}: {pagesText(choice.pages)}
          </button>
        ))}
        <button type="button" className="btn" onClick={dropAsk}>
          Do not print
        </button>
      </div>
    </dialog>
  );
}

/** Buttons for the head of the sheet. */
export function SheetOutputs() {
  usePrint();
  const { asked, drawing } = useStore(printingStore);
  const [saving, setSaving] = useState(false);
  const save = () => {
    setSaving(true);
    void saveCsv().finally(() => setSaving(false));
  };
  return (
    <span className="sheet-outputs">
      <button type="button" className="btn" disabled={drawing > 0} onClick={openPrint}>
        Print
      </button>
      <button type="button" className="btn" disabled={saving} onClick={save}>
        Save as CSV
      </button>
      <span className="s" role="status">
        {drawing > 0 ? `Drawing ${pagesText(drawing)}` : saving ? 'Writing the CSV' : ''}
      </span>
      {asked && <Ask choices={asked} />}
    </span>
  );
}
