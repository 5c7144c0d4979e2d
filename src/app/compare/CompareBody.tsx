/** The plan beside a copy of it, differences only; and what can be done with the copy. */
import { type ReactNode, useEffect, useMemo, useState } from 'react';
import { type Finding, keyOf } from '../../engine/findings/types.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { schedule } from '../../engine/schedule.ts';
import { type Differences, differencesOf, type FigureDifference } from '../../outputs/compare.ts';
import { CloseButton } from '../bar/Dialog.tsx';
import { type Standing, StandingTag } from '../icons.tsx';
import { type Copy, forgetCopy, keepCopy, lookForCopy, useCopy } from '../store/copy.ts';
import { currentPlan, replacePlan, undo, usePlan, useSchedule } from '../store/plan.ts';
import { figureOfCopy } from '../working/copied.ts';
import { How } from '../working/How.tsx';
import { inputText, ownerText } from './inputText.ts';
import './compare.css';

function useDifferences(copy: Plan, plan: Plan): Differences {
  const made = useSchedule();
  return useMemo(
    () => differencesOf(copy, schedule(copy, { nowMs: Date.now() }), plan, made),
    [copy, plan, made],
  );
}

interface GroupProps {
  title: string;
  children: ReactNode;
}

const Group = ({ title, children }: GroupProps) => (
  <table className="compared">
    <thead>
      <tr>
        <th scope="col">{title}</th>
        <th scope="col">Copy</th>
        <th scope="col">Plan now</th>
      </tr>
    </thead>
    <tbody>{children}</tbody>
  </table>
);

interface LineProps {
  what: string;
  of?: string;
  was: ReactNode;
  now: ReactNode;
}

const Line = ({ what, of, was, now }: LineProps) => (
  <tr>
    <th scope="row">
      {what}
      {of && <small>{of}</small>}
    </th>
    <td data-side="Copy">{was}</td>
    <td data-side="Plan now">{now}</td>
  </tr>
);

const NONE = '–';

interface SideProps {
  of: string | null;
  text: string;
  label: string;
  ofCopy?: boolean;
}

/** A figure of the copy, or of the plan as it is. */
const Side = ({ of, text, label, ofCopy = false }: SideProps) =>
  of === null || text === NONE ? (
    text
  ) : (
    <How of={ofCopy ? figureOfCopy(of) : of} what={`${text}, ${label}${ofCopy ? ', copy' : ''}`}>
      {text}
    </How>
  );

const Figures = ({ title, rows }: { title: string; rows: readonly FigureDifference[] }) =>
  rows.length > 0 && (
    <Group title={title}>
      {rows.map(({ label, was, now, figure }) => (
        <Line
          key={label}
          what={label}
          was={<Side of={figure} text={was} label={label} ofCopy />}
          now={<Side of={figure} text={now} label={label} />}
        />
      ))}
    </Group>
  );

const Said = ({ finding }: { finding: Finding }) => (
  <>
    <StandingTag standing={finding.severity} /> {finding.message}
  </>
);

function Findings({ gone, came, changed }: Differences['findings']) {
  if (gone.length + came.length + changed.length === 0) return null;
  return (
    <Group title="Findings">
      {gone.map((finding) => (
        <Line key={keyOf(finding)} what="Gone" was={<Said finding={finding} />} now="–" />
      ))}
      {came.map((finding) => (
        <Line key={keyOf(finding)} what="Came" was="–" now={<Said finding={finding} />} />
      ))}
      {changed.map(({ was, now }) => (
        <Line key={keyOf(was)} what="Changed" was={<Said finding={was} />} now={<Said finding={now} />} />
      ))}
    </Group>
  );
}

interface ComparedProps {
  copy: Plan;
  plan: Plan;
  differences: Differences;
}

function Compared({ copy, plan, differences }: ComparedProps) {
  const { inputs, figures, margins, findings, verdicts } = differences;
  if (inputs.length === 0)
    return (
      <p className="same">
        <StandingTag standing="fine" text="The plan is as the copy is." />
      </p>
    );
  return (
    <>
      <Group title="Verdict">
        <Line what="As a whole" {...verdicts} />
      </Group>
      <Group title="Inputs">
        {inputs.map((input) => (
          <Line
            key={input.path}
            what={input.title}
            of={ownerText(input)}
            was={inputText(copy, input, input.was)}
            now={inputText(plan, input, input.now)}
          />
        ))}
      </Group>
      <Findings {...findings} />
      <Figures title="Figures" rows={figures} />
      <Figures title="Left in the margins" rows={margins} />
    </>
  );
}

/** What was done, and how to take it back. */
interface Done {
  text: string;
  standing: Standing;
  undo: (() => void) | null;
}

const clockFormat = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });

function WithCopy({ copy, onDone }: { copy: Copy; onDone: (done: Done | null) => void }) {
  const plan = usePlan((present) => present);
  const differences = useDifferences(copy.plan, plan);
  const same = differences.inputs.length === 0;
  const takeBack = () => {
    replacePlan(copy.plan);
    onDone({ text: 'The plan is as the copy was.', standing: 'fine', undo });
  };
  const swap = () => {
    const before = currentPlan();
    replacePlan(copy.plan);
    void keepCopy(before);
    onDone({ text: 'Plan and copy have changed places.', standing: 'fine', undo: null });
  };
  const keepNow = () => {
    void keepCopy(plan);
    onDone({
      text: 'The copy is the plan as it is now.',
      standing: 'fine',
      undo: () => void keepCopy(copy.plan, copy.keptMs),
    });
  };
  const forget = () => {
    void forgetCopy();
    onDone({
      text: 'The copy is forgotten.',
      standing: 'fine',
      undo: () => void keepCopy(copy.plan, copy.keptMs),
    });
  };
  return (
    <>
      <p className="s">
        Copy of <b>{copy.plan.title}</b>, kept {clockFormat.format(copy.keptMs)}.
      </p>
      <div className="row">
        <button type="button" className="btn main" disabled={same} onClick={takeBack}>
          Take the copy back
        </button>
        <button type="button" className="btn" disabled={same} onClick={swap}>
          Swap
        </button>
        <button type="button" className="btn" disabled={same} onClick={keepNow}>
          Keep a copy of the plan now
        </button>
        <button type="button" className="btn" onClick={forget}>
          Forget the copy
        </button>
        <CloseButton />
      </div>
      <Compared copy={copy.plan} plan={plan} differences={differences} />
    </>
  );
}

const WithoutCopy = ({ onDone }: { onDone: (done: Done | null) => void }) => (
  <>
    <p>
      Keep a copy of the plan as it is, go on changing it, and see here what differs: inputs, figures, margins
      and findings. The copy stays in this browser until you forget it.
    </p>
    <div className="row">
      <button
        type="button"
        className="btn main"
        onClick={() => {
          void keepCopy(currentPlan());
          onDone(null);
        }}
      >
        Keep a copy to compare with
      </button>
      <CloseButton />
    </div>
  </>
);

export function CompareBody() {
  const { copy, kept } = useCopy();
  const [done, setDone] = useState<Done | null>(null);
  useEffect(() => void lookForCopy(), []);
  return (
    <div className="compare-body">
      <p className="compare-said" role="status">
        {done && (
          <>
            {done.text}{' '}
            {done.undo && (
              <button
                type="button"
                className="link"
                onClick={() => {
                  done.undo?.();
                  setDone(null);
                }}
              >
                Undo
              </button>
            )}
          </>
        )}
      </p>
      {!kept && <p className="s">This browser does not keep the copy: it is here as long as this tab is.</p>}
      {copy === null && <WithoutCopy onDone={setDone} />}
      {copy && <WithCopy copy={copy} onDone={setDone} />}
    </div>
  );
}
