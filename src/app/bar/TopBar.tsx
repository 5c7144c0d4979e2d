/** Name, title, technique, views; what one does with plans follows once the figures stand. */
import { lazy, type ReactElement, Suspense } from 'react';
import { setAt } from '../../engine/plan/paths.ts';
import { PenIcon, RedoIcon, UndoIcon } from '../icons.tsx';
import { takeTyped, withChecks } from '../store/checker.ts';
import { setDraft, useDraft } from '../store/drafts.ts';
import { cancelGesture, endGesture, redo, undo, useHistory, usePlan } from '../store/plan.ts';
import { Technique } from './Technique.tsx';
import { Views } from './Views.tsx';

// Not with the checker, as other parts: whoever cannot be given a plan can still save one.
const Tools = lazy(() => import('./Tools.tsx').catch(() => ({ default: (): ReactElement => <></> })));

const TITLE = 'title';

function Title() {
  const title = usePlan((plan) => plan.title);
  const draft = useDraft(TITLE);
  const text = draft?.text ?? title;
  const leave = () => {
    endGesture();
    setDraft(TITLE, null);
  };
  const cancel = () => {
    cancelGesture(TITLE);
    setDraft(TITLE, null);
  };
  return (
    <label className="title">
      <span className="vh">Title of the plan</span>
      <input
        value={text}
        size={Math.max(8, text.length)}
        maxLength={120}
        spellCheck={false}
        autoComplete="off"
        onChange={({ target: { value } }) =>
          takeTyped(TITLE, value, ({ enterText }) =>
            enterText(TITLE, value, (plan, title) => setAt(plan, TITLE, title)),
          )
        }
        onBlur={() => withChecks(leave)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') event.currentTarget.blur();
          if (event.key !== 'Escape') return;
          withChecks(cancel, cancel);
        }}
      />
      <PenIcon />
    </label>
  );
}

function History() {
  const { canUndo, canRedo } = useHistory();
  return (
    <>
      <button type="button" className="sq" aria-label="Undo" title="Undo" disabled={!canUndo} onClick={undo}>
        <UndoIcon />
      </button>
      <button
        type="button"
        className="sq redo"
        aria-label="Redo"
        title="Redo"
        disabled={!canRedo}
        onClick={redo}
      >
        <RedoIcon />
      </button>
    </>
  );
}

export function TopBar({ painted }: { painted: boolean }) {
  return (
    <header className="top">
      <h1 className="name">Escapement</h1>
      <Title />
      <Technique />
      <Views />
      <div className="tools">
        <History />
        <Suspense>{painted && <Tools />}</Suspense>
      </div>
    </header>
  );
}
