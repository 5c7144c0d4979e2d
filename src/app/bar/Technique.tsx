/** Time-lapse or stop-motion. */
import { enter } from '../fields/entry.ts';
import { wordText } from '../fields/words.ts';
import { infoAt } from '../store/paths.ts';
import { endGesture, usePlan } from '../store/plan.ts';

export function Technique() {
  const technique = usePlan((plan) => plan.technique);
  return (
    <fieldset className="seg technique">
      <legend className="vh">Technique</legend>
      {infoAt('technique').words?.map((word) => (
        <button
          key={word}
          type="button"
          aria-pressed={word === technique}
          onClick={() => {
            endGesture();
            enter('technique', word);
            endGesture();
          }}
        >
          {wordText(word)}
        </button>
      ))}
    </fieldset>
  );
}
