/** What the plan says of itself, worst first, each with the moment it concerns. */
import { memo } from 'react';
import { type Finding, SEVERITIES } from '../../engine/findings/types.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { clockOf } from '../format/clock.ts';
import { plural } from '../format/numbers.ts';
import { StandingTag } from '../icons.tsx';
import { goToFrame } from '../store/goTo.ts';
import { useWayParts, type WayParts } from '../store/later.ts';

interface RowProps {
  finding: Finding;
  index: number;
  parts: Partial<WayParts>;
}

const Row = memo(function Row({ finding, index, parts }: RowProps) {
  const { severity, message, frame, at } = finding;
  return (
    <>
      {parts.Taken && <parts.Taken at={index} />}
      <li className="find" id={`finding-${index}`} tabIndex={-1}>
        <StandingTag standing={severity} />
        <p>{parts.Sentence ? <parts.Sentence finding={finding} /> : message}</p>
        {frame !== null && at !== null && (
          <button
            type="button"
            className="at m"
            aria-label={`Show frame ${frame}, ${clockOf(at)}, in the run`}
            title="The charts and the sheet go there"
            onClick={() => goToFrame(frame)}
          >
            {clockOf(at)}
          </button>
        )}
        <div className="ways">{parts.Ways && <parts.Ways finding={finding} at={index} />}</div>
      </li>
    </>
  );
});

/** Names of what has room to spare: `Interval, Card A and Boom travel`. */
export function fineText({ margins }: Schedule): string {
  const names = margins.filter(({ left, reserve }) => left >= reserve).map(({ label }) => label);
  const last = names.pop();
  if (last === undefined) return '';
  const verb = names.length === 0 ? 'has' : 'have';
  const list = names.length === 0 ? last : `${names.join(', ')} and ${last}`;
  return `${list} ${verb} room to spare.`;
}

export function Findings({ schedule }: { schedule: Schedule }) {
  const { findings, counts } = schedule;
  const fine = fineText(schedule);
  const parts = useWayParts();
  const sum = SEVERITIES.filter((severity) => counts[severity] > 0).map((s) => plural(counts[s], s));
  return (
    <section className="panel findings" aria-labelledby="findings-title">
      <header>
        <h2 id="findings-title">Findings</h2>
        <span className="s">{sum.join(', ') || 'Nothing wrong'}</span>
        {parts.Head && <parts.Head />}
      </header>
      <ul className="plain">
        {findings.map((finding, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the order is the identity; ids may come twice
          <Row key={index} finding={finding} index={index} parts={parts} />
        ))}
        {parts.Taken && <parts.Taken at={findings.length} />}
        {fine && (
          <li className="find slim">
            <StandingTag standing="fine" />
            <p>{fine}</p>
          </li>
        )}
      </ul>
    </section>
  );
}
