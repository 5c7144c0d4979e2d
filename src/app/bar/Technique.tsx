/** Time-lapse or stop-motion. */
import { TECHNIQUES } from '../../engine/plan/constants.ts';
import { wordText } from '../fields/words.ts';
import { withChecks } from '../store/checker.ts';
import { changeField, endGesture, usePlan } from '../store/plan.ts';

export function Technique() {
  const technique = usePlan((plan) => plan.technique);
  return (
    <fieldset className="seg technique">
      <legend className="vh">Technique</legend>
      {TECHNIQUES.map((word) => (
        <button
          key={word}
          type="button"
          aria-pressed={word === technique}
          onClick={() =>
            withChecks(() => {
              endGesture();
              changeField('technique', word);
              endGesture();
            })
          }
        >
          {wordText(word)}
        </button>
      ))}
    </fieldset>
  );
}
