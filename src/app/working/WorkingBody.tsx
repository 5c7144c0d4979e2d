/** The working of a figure: its formula, the numbers put in, and on to the figures that it is made of. */
import { useEffect, useMemo, useRef, useState } from 'react';
import { madeOf } from '../../engine/onset/stretch.ts';
import type { OnSet } from '../../engine/onset/working.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { schedule } from '../../engine/schedule.ts';
import { isElsewhere } from '../../engine/working/names.ts';
import {
  type FixesKnown,
  formulaText,
  numbersText,
  type Working,
  workingOf,
  workingText,
} from '../../engine/working/working.ts';
import { CloseButton } from '../bar/Dialog.tsx';
import { fixStore } from '../fixes/fixStore.ts';
import { NBSP } from '../format/numbers.ts';
import { leave } from '../modal.ts';
import { useCopy } from '../store/copy.ts';
import { goToFrame } from '../store/goTo.ts';
import { usePlan } from '../store/plan.ts';
import { type Worked, workedOut } from '../store/schedules.ts';
import { leaveDialogs, useView } from '../store/view.ts';
import { askedFigure } from './copied.ts';
import { Others } from './Others.tsx';
import { Terms } from './Terms.tsx';
import { valueText } from './texts.ts';
import './working.css';

// What says how figures came about and what finds them in sentences share nearly all: fetched as one they weigh less.
export { Stated, StatedOf, StatedOnSheet } from './Stated.tsx';

/** The figures that one has come through, and the way on and back. */
function useTrail(first: string) {
  const [trail, setTrail] = useState([first]);
  return {
    figure: trail.at(-1) ?? first,
    depth: trail.length,
    goOn: (figure: string) => setTrail([...trail, figure]),
    goBack: () => setTrail(trail.slice(0, -1)),
  };
}

/** The plan that is asked, and its schedule: of a run the stretch under way, of a comparison the copy. */
function useAsked(run: OnSet | null, ofCopy: boolean): Worked {
  const present = usePlan(workedOut);
  const { copy } = useCopy();
  const other = ofCopy ? copy?.plan : undefined;
  const ofOther = useMemo(
    () => other && { plan: other, schedule: schedule(other, { nowMs: Date.now() }) },
    [other],
  );
  return run ? { plan: run.stretch.plan, schedule: madeOf(run.stretch) } : (ofOther ?? present);
}

/** Whose figure it is, where it is not the plan's as it stands. */
function whose(figure: string, ofCopy: boolean): string | null {
  if (ofCopy) return 'Of the copy, not of the plan as it is now.';
  if (figure.startsWith('fix.')) return 'Of the plan with a way out that is not taken.';
  return isElsewhere(figure) ? 'Of the plan at another setting of the trigger.' : null;
}

/** The ways out that are known of a plan. */
const fixesOf =
  (plan: Plan): FixesKnown =>
  (finding, n) => {
    const remedy = fixStore.getState().remedies.get(finding);
    return (remedy?.plan === plan && remedy.is.fixes[n - 1]) || null;
  };

export function WorkingBody() {
  const run = useView((view) => view.run);
  const { figure: first, ofCopy } = askedFigure(useView((view) => view.working));
  const { plan, schedule: made } = useAsked(run, ofCopy);
  const { figure, depth, goOn, goBack } = useTrail(first);
  const working = workingOf(plan, made, figure, run ?? undefined, fixesOf(plan));
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    // What was pressed is gone: the reader goes on from the new heading.
    if (figure !== '') heading.current?.focus();
  }, [figure]);
  return (
    <>
      <h3 ref={heading} tabIndex={-1}>
        {working?.title ?? 'No working'}
      </h3>
      {working ? (
        <WorkingText working={working} whose={whose(figure, ofCopy)} ofPlan={run === null} onGoOn={goOn} />
      ) : (
        <p>This figure has no working in this plan.</p>
      )}
      {run === null && !isElsewhere(figure) && (
        <Others plan={plan} schedule={made} of={figure} frame={working?.frame ?? null} onGoOn={goOn} />
      )}
      <div className="row">
        {depth > 1 && (
          <button type="button" className="btn" onClick={goBack}>
            Back
          </button>
        )}
        {working && <CopyButton key={figure} working={working} />}
        <CloseButton />
      </div>
    </>
  );
}

interface TextProps {
  working: Working;
  /** Whose figure it is; null if the present plan's. */
  whose: string | null;
  /** Not of a run that is being shot: then its frames can be shown. */
  ofPlan: boolean;
  onGoOn: (figure: string) => void;
}

function WorkingText({ working, whose, ofPlan, onGoOn }: TextProps) {
  const { frame, terms, remarks, source, figure } = working;
  const words = formulaText(working);
  const numbers = numbersText(working);
  const value = valueText(working);
  // A single number that leads nowhere is all said.
  const says = terms.length > 1 || terms.some((term) => term.figure !== null);
  return (
    <div className="working-text">
      <p className="working-value">
        <output>
          <Value text={value} />
        </output>
        {ofPlan && whose === null && frame !== null && <FrameButton frame={frame} />}
      </p>
      {whose !== null && <p className="s whose">{whose}</p>}
      {terms.length > 0 && (
        <p className="working-formula">
          <span>{words}</span>
          <span className="m">= {numbers}</span>
          {numbers !== value && <span className="m">= {value}</span>}
        </p>
      )}
      {says && <Terms terms={terms} onGoOn={onGoOn} />}
      {remarks.map((remark) => (
        <p key={remark} className="s">
          {remark}
        </p>
      ))}
      <p className="s">
        <b>Source</b> {source}
      </p>
      {!figure.startsWith('onset.') && (
        <p className="s">
          <b>Name at the prompt</b> <span className="m">{figure}</span>
        </p>
      )}
    </div>
  );
}

/** A number, and its unit smaller behind it; of a moment its clock, and its date. */
function Value({ text }: { text: string }) {
  const [number = ''] = /^\d\d:[\d:]+(?=, )/.exec(text) ?? text.split(NBSP, 1);
  const rest = text.slice(number.length);
  return (
    <>
      <span className="m">{number}</span>
      {rest !== '' && <small>{rest}</small>}
    </>
  );
}

const FrameButton = ({ frame }: { frame: number }) => (
  <button
    type="button"
    className="link"
    onClick={(event) => {
      leaveDialogs();
      leave(event.currentTarget);
      goToFrame(frame);
    }}
  >
    Show frame {frame}
  </button>
);

/** Copies the working as text; says whether it did. */
function CopyButton({ working }: { working: Working }) {
  const [said, setSaid] = useState('');
  const copy = () =>
    navigator.clipboard.writeText(workingText(working)).then(
      () => setSaid('Copied'),
      () => setSaid('The browser does not allow it: mark the text and copy it.'),
    );
  return (
    <>
      <button type="button" className="btn" onClick={() => void copy()}>
        Copy as text
      </button>
      <span role="status" className="s">
        {said}
      </span>
    </>
  );
}
