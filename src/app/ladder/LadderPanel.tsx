/** Interval ladder: folded until it is asked for, and worked out only then. */
import { Suspense, useState } from 'react';
import { fetched } from '../fetched.tsx';
import { ChevronDown, ChevronRight } from '../icons.tsx';
import './ladder.css';

const LadderBody = fetched('The interval ladder', () =>
  import('./LadderBody.tsx').then((part) => part.LadderBody),
);

export function LadderPanel() {
  const [open, setOpen] = useState(false);
  return (
    <section className="panel ladder-panel" aria-labelledby="ladder-title">
      <h2>
        <button type="button" className="ladder-head" aria-expanded={open} onClick={() => setOpen(!open)}>
          {open ? <ChevronDown /> : <ChevronRight />}
          <span id="ladder-title">Interval ladder</span>
          <span className="s">The same plan at other settings of the trigger</span>
        </button>
      </h2>
      {open && (
        <Suspense fallback={<p className="ladder-note s">Working the settings out…</p>}>
          <LadderBody />
        </Suspense>
      )}
    </section>
  );
}
