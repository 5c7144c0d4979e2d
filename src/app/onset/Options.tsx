/** The ways to go on, each with its consequences, before one is accepted. */
import { Suspense, useId } from 'react';
import type { Finding } from '../../engine/findings/types.ts';
import type { Option, Outcome } from '../../engine/onset/outcome.ts';
import type { Keep } from '../../engine/onset/rest.ts';
import type { Stretch } from '../../engine/onset/stretch.ts';
import { beforeFirst } from '../../engine/onset/todo.ts';
import type { OnSet } from '../../engine/onset/working.ts';
import { ofOnset } from '../../engine/working/names.ts';
import { fetched } from '../fetched.tsx';
import { clockOf } from '../format/clock.ts';
import { STANDING, StandingIcon } from '../icons.tsx';
import { How } from '../working/How.tsx';
import type { StatedOfProps } from '../working/Stated.tsx';
import { type Now, onSetOf, type Shoot, type Slip } from './shoot.ts';
import { consequences, keepTitle } from './words.ts';

const MOST = 4;

const Plain = ({ finding }: StatedOfProps) => finding.message;

// It comes with the view: when it is needed there may be no network.
const stated = import('../working/WorkingBody.tsx').then(
  (part) => part.StatedOf,
  () => Plain,
);
const Stated = fetched(null, () => stated);

interface FoundProps {
  title: string;
  findings: readonly Finding[];
  /** With the rest that they are of as the stretch under way, when a figure of them is asked for. */
  run: (() => OnSet) | null;
}

/** Findings with the clock at which they begin: their own sentences count frames from the first of the rest. */
function Found({ title, findings, run }: FoundProps) {
  if (findings.length === 0) return null;
  const more = findings.length - MOST;
  return (
    <div className="on-found">
      <p className="s">{title}</p>
      <ul className="plain">
        {findings.slice(0, MOST).map((finding) => {
          const { id, about, severity, message, at } = finding;
          return (
            <li key={`${id} ${about}`} className={severity}>
              <StandingIcon standing={severity} />
              <span>
                <span className="vh">{STANDING[severity]}: </span>
                {at !== null && <b className="m">{clockOf(at)} </b>}
                {run ? (
                  <Suspense fallback={message}>
                    <Stated finding={finding} run={run} />
                  </Suspense>
                ) : (
                  message
                )}
              </span>
            </li>
          );
        })}
      </ul>
      {more > 0 && <p className="s">and {more} more</p>}
    </div>
  );
}

interface ConsequencesProps {
  option: Option;
  shoot: Shoot;
  now: Now;
  /** Frames lost by then. */
  lost: number;
}

/** What one way to go on comes to. */
export function Consequences({ option, shoot, now, lost }: ConsequencesProps) {
  if ('why' in option) return <p className="s">Cannot be had. {option.why}</p>;
  const run = () => ({ ...onSetOf(shoot, now), outcome: { ...option, lost } });
  const { stretch, restWas } = option;
  const runWith = (rest: Stretch) => () => ({ ...onSetOf(shoot, now), stretch: rest });
  return (
    <>
      <dl>
        {consequences(option, shoot.plan.place).map(([name, text, what]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              <How of={ofOnset(`then.${what}`)} what={`${text}, ${name}`} run={run}>
                {text}
              </How>
            </dd>
          </div>
        ))}
      </dl>
      <Found title="This brings" findings={option.came} run={runWith(stretch)} />
      <Found title="This takes away" findings={option.went} run={restWas && runWith(restWas)} />
      {option.came.length + option.went.length > 0 && option.stretch.framesBefore > 0 && (
        <p className="s">Frame 1 of these is frame {option.stretch.framesBefore + 1} of the run.</p>
      )}
    </>
  );
}

/** What has to be done before the rest begins. */
function First({ of: { stretch } }: { of: Outcome }) {
  const things = beforeFirst(stretch);
  if (things.length === 0) return null;
  return (
    <div className="on-found">
      <p className="s">Before frame {stretch.framesBefore + 1}</p>
      <ul className="plain">
        {things.map((text) => (
          <li key={text} className="warning">
            <StandingIcon standing="warning" />
            <span>{text}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}

interface OptionsProps {
  options: readonly Option[];
  slip: Slip['kind'];
  shoot: Shoot;
  now: Now;
  lost: number;
  keep: Keep;
  onKeep: (keep: Keep) => void;
}

export function Options({ options, slip, keep, onKeep, ...of }: OptionsProps) {
  const name = useId();
  return (
    <fieldset className="on-options">
      <legend>How to go on</legend>
      {options.map((option) => (
        <div key={option.keep} className={option.keep === keep ? 'option chosen' : 'option'}>
          <label>
            <input
              type="radio"
              name={name}
              checked={option.keep === keep}
              disabled={'why' in option}
              onChange={() => onKeep(option.keep)}
            />
            <b>{keepTitle(option.keep, slip)}</b>
          </label>
          {slip === 'paused' && 'stretch' in option && <First of={option} />}
          <Consequences option={option} {...of} />
        </div>
      ))}
    </fieldset>
  );
}

/** The way that is chosen: the one asked for, or else the first that can be had. */
export const chosenOf = (options: readonly Option[], asked: Keep): Keep | null => {
  const can = options.filter((option) => !('why' in option));
  return (can.find(({ keep }) => keep === asked) ?? can[0])?.keep ?? null;
};
