/** Whether the plan can be shot, in one sentence, and how much there is to read. */
import { SEVERITIES } from '../../engine/findings/types.ts';
import { plural } from '../format/numbers.ts';
import { StandingIcon } from '../icons.tsx';
import { useUnusable } from '../store/drafts.ts';
import { goTo } from '../store/goTo.ts';
import { useWayParts } from '../store/later.ts';
import { useSchedule } from '../store/plan.ts';

export function Verdict() {
  const { verdict, counts, findings } = useSchedule();
  const unusable = useUnusable();
  const { Sentence } = useWayParts();
  const worst = SEVERITIES.find((severity) => counts[severity] > 0 && severity !== 'note') ?? 'fine';
  return (
    <div className="verdict">
      <span className={`sev ${worst}`}>
        <StandingIcon standing={worst} />
      </span>
      <p role="status">
        {Sentence ? <Sentence /> : verdict}
        {unusable > 0 && ` ${plural(unusable, 'entry', 'entries')} not used: the last good value counts.`}
      </p>
      <span className="r">
        {SEVERITIES.map((severity) => {
          const index = findings.findIndex((finding) => finding.severity === severity);
          const text = plural(counts[severity], severity);
          return index < 0 ? (
            <span key={severity}>{text}</span>
          ) : (
            <button key={severity} type="button" className="link" onClick={() => goTo(`finding-${index}`)}>
              {text}
            </button>
          );
        })}
      </span>
    </div>
  );
}
