/** Over the strip while a fix is looked at: what changes, struck through, and what it would be. */
import type { ReactNode } from 'react';
import { createPortal } from 'react-dom';
import { SEVERITIES } from '../../engine/findings/types.ts';
import { type Standing, StandingIcon, StandingTag } from '../icons.tsx';
import { type Worked, workedOut } from '../store/schedules.ts';
import { type Preview, useFixes } from './fixStore.ts';
import { changedClock, changedFigures } from './previewed.ts';

const Change = ({ was, now }: { was: string; now: string }) => (
  <>
    <s>{was}</s> <ins>{now}</ins>
  </>
);

/** Laid over a part of the strip; what is under it does not move. */
function over(target: Element | null | undefined, className: string, children: ReactNode) {
  return target
    ? createPortal(
        <div className={`if ${className}`} aria-hidden="true">
          {children}
        </div>,
        target,
        className,
      )
    : null;
}

const lengthClass = (length: number): string => (length > 10 ? 'tiny' : length > 7 ? 'small' : '');

const worstOf = ({ schedule: { counts } }: Worked): Standing =>
  SEVERITIES.find((severity) => counts[severity] > 0 && severity !== 'note') ?? 'fine';

function VerdictThen(then: Worked) {
  const { verdict } = then.schedule;
  return (
    <>
      <span className={`sev ${worstOf(then)}`}>
        <StandingIcon standing={worstOf(then)} />
      </span>
      <p>
        <b>With it:</b> {verdict}
      </p>
    </>
  );
}

function Over({ plan, then }: Preview) {
  const before = workedOut(plan);
  const strip = document.querySelector('.strip');
  const clock = changedClock(before, then);
  const figures = changedFigures(before, then);
  return (
    <>
      {figures.map(({ id, was, now }) => (
        <span key={id}>
          {over(
            document.getElementById(id)?.closest('.fig'),
            `if-figure ${lengthClass(Math.max(was.length, now.length))}`,
            <Change was={was} now={now} />,
          )}
        </span>
      ))}
      {clock && over(strip?.querySelector('.when'), 'if-clock', <Change {...clock} />)}
      {over(
        document.querySelector('.mini'),
        'if-mini',
        <>
          <b>With it:</b>
          {[...figures, ...(clock ? [{ id: 'clock', ...clock }] : [])].map(({ id, ...change }) => (
            <span key={id}>
              <Change {...change} />
            </span>
          ))}
          <StandingTag standing={worstOf(then)} />
        </>,
      )}
      {over(strip?.querySelector('.verdict'), 'if-verdict', <VerdictThen {...then} />)}
    </>
  );
}

export function PreviewOver() {
  const preview = useFixes((state) => state.preview);
  return preview && <Over {...preview} />;
}
