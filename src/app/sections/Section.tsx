/** One subject of the inputs: its title, its worst finding, and a summary line while it is closed. */
import { memo, Suspense } from 'react';
import { fetched } from '../fetched.tsx';
import { plural } from '../format/numbers.ts';
import { ChevronDown, ChevronRight, StandingTag } from '../icons.tsx';
import { usePlan, useSchedule } from '../store/plan.ts';
import { type SectionId, setOpen, useView } from '../store/view.ts';
import { SUMMARIES, worstOf } from './summary.ts';

// The fields come after the figures have been painted.
const SectionBody = fetched('The fields', () => import('./bodies.ts').then((part) => part.default));

interface SectionProps {
  id: SectionId;
  title: string;
}

/** The part that follows every edit; the body does not. */
function Heading({ id, title, open }: SectionProps & { open: boolean }) {
  const schedule = useSchedule();
  const summary = usePlan((plan) => SUMMARIES[id](plan, schedule));
  const worst = worstOf(id, schedule.findings);
  return (
    <h3>
      <button
        type="button"
        className="h"
        id={`section-${id}`}
        aria-expanded={open}
        aria-controls={`body-${id}`}
        onClick={() => setOpen(id, !open)}
      >
        {open ? <ChevronDown /> : <ChevronRight />}
        <b>{title}</b>
        {worst && (
          <span className="tag">
            <StandingTag standing={worst.severity} text={plural(worst.count, worst.severity)} />
          </span>
        )}
        {!open && <span className="sum">{summary}</span>}
      </button>
    </h3>
  );
}

export const Section = memo(function Section({ id, title }: SectionProps) {
  const open = useView((view) => view.open[id] ?? false);
  return (
    <div className="sec">
      <Heading id={id} title={title} open={open} />
      <div id={`body-${id}`} className="body" hidden={!open}>
        <Suspense>{open && <SectionBody id={id} />}</Suspense>
      </div>
    </div>
  );
});
