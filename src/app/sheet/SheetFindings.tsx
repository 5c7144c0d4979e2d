/** What the sheet has to say, worst first. */
import { StandingTag } from '../icons.tsx';
import { goToExposure } from './commands.ts';
import type { Sheeted } from './sheeted.ts';

export function SheetFindings({ of: { sheet } }: { of: Sheeted }) {
  const { findings } = sheet.totals;
  return (
    <section className="panel sheet-findings" aria-labelledby="sheet-findings-title">
      <header>
        <h2 id="sheet-findings-title">Findings</h2>
      </header>
      <ul className="plain">
        {findings.map(({ id, severity, message, exposure }) => (
          <li key={`${id} ${message}`}>
            <StandingTag standing={severity} />
            <p>{message}</p>
            {exposure !== null && exposure <= sheet.exposures && (
              <button type="button" className="link s" onClick={() => goToExposure(exposure - 1)}>
                Exposure {exposure}
              </button>
            )}
          </li>
        ))}
        {findings.length === 0 && (
          <li>
            <StandingTag standing="fine" text="Nothing wrong" />
          </li>
        )}
      </ul>
    </section>
  );
}
