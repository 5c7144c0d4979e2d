/** The numbers of a formula; those that are figures themselves lead on to their workings. */
import type { Term } from '../../engine/working/working.ts';
import { valueText } from './texts.ts';

export const Terms = ({ terms, onGoOn }: { terms: readonly Term[]; onGoOn: (figure: string) => void }) => (
  <table>
    <thead>
      <tr>
        <th scope="col">Put in</th>
        <th scope="col">Value</th>
        <th scope="col">From</th>
      </tr>
    </thead>
    <tbody>
      {terms.map((term) => (
        <tr key={term.symbol}>
          <th scope="row">{term.words}</th>
          <td className="m">{valueText(term)}</td>
          <td>
            {term.figure === null ? 'given' : <GoOn term={term} figure={term.figure} onGoOn={onGoOn} />}
          </td>
        </tr>
      ))}
    </tbody>
  </table>
);

interface GoOnProps {
  term: Term;
  figure: string;
  onGoOn: (figure: string) => void;
}

const GoOn = ({ term, figure, onGoOn }: GoOnProps) => (
  <button
    type="button"
    className="how"
    aria-label={`worked out: how ${term.words} came about`}
    onClick={() => onGoOn(figure)}
  >
    worked out
  </button>
);
