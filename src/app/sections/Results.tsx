/** What was worked out, a line each; what is not as it should be says so by sign and colour. */
import { StandingIcon } from '../icons.tsx';
import type { Result } from '../rig/balanceResults.ts';
import { How } from '../working/How.tsx';
import '../styles/rig.css';

export const Results = ({ rows }: { rows: readonly Result[] }) => (
  <dl className="results w2">
    {rows.map(({ what, value, standing, of }) => (
      <div key={what} className={standing}>
        <dt>{what}</dt>
        <dd>
          {standing === 'stop' && <StandingIcon standing="stop" size={14} />}
          <How of={of} what={`${value}, ${what}`}>
            {value}
          </How>
        </dd>
      </div>
    ))}
  </dl>
);
