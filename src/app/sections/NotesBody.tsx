import { useId } from 'react';
import { setAt } from '../../engine/plan/paths.ts';
import { enterText } from '../fields/entry.ts';
import { endGesture, usePlan } from '../store/plan.ts';

export function NotesBody() {
  const id = useId();
  const notes = usePlan((plan) => plan.notes);
  return (
    <div className="fld w2">
      <label htmlFor={id}>Anything worth remembering</label>
      <textarea
        id={id}
        rows={5}
        maxLength={20_000}
        value={notes}
        onChange={(event) =>
          enterText('notes', event.target.value, (plan, text) => setAt(plan, 'notes', text))
        }
        onBlur={endGesture}
      />
    </div>
  );
}
