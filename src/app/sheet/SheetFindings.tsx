/** What the sheet has to say, worst first: the figures of its sentences open their workings, once these have come. */
import { Suspense } from 'react';
import type { SheetFinding } from '../../engine/sheet/types.ts';
import { fetched } from '../fetched.tsx';
import { StandingTag } from '../icons.tsx';
import { goToExposure } from './commands.ts';
import type { Sheeted } from './sheeted.ts';

const Plain = ({ finding }: { of: Sheeted; finding: SheetFinding }) => finding.message;

const Stated = fetched(null, () =>
  import('../working/WorkingBody.tsx').then(
    (part) => part.StatedOnSheet,
    () => Plain,
  ),
);

export function SheetFindings({ of }: { of: Sheeted }) {
  const { sheet } = of;
  const { findings } = sheet.totals;
  return (
    <section className="panel sheet-findings" aria-labelledby="sheet-findings-title">
      <header>
        <h2 id="sheet-findings-title">Findings</h2>
      </header>
      <ul className="plain">
        {findings.map((finding) => {
          const { id, severity, message, exposure } = finding;
          return (
            <li key={`${id} ${message}`}>
              <StandingTag standing={severity} />
              <p>
                <Suspense fallback={message}>
                  <Stated of={of} finding={finding} />
                </Suspense>
              </p>
              {exposure !== null && exposure <= sheet.exposures && (
                <button type="button" className="link s" onClick={() => goToExposure(exposure - 1)}>
                  Exposure {exposure}
                </button>
              )}
            </li>
          );
        })}
        {findings.length === 0 && (
          <li>
            <StandingTag standing="fine" text="Nothing wrong" />
          </li>
        )}
      </ul>
    </section>
  );
}
