/** Name, title, technique, and what one does with plans. */
import { useRef } from 'react';
import { setAt } from '../../engine/plan/paths.ts';
import { MenuIcon, PenIcon, RedoIcon, StandingIcon, ThemeIcon, UndoIcon } from '../icons.tsx';
import { takeTyped, withChecks } from '../store/checker.ts';
import { setDraft, useDraft } from '../store/drafts.ts';
import { DEMOS, openDemo, openFile, saveFile } from '../store/files.ts';
import { cancelGesture, endGesture, redo, undo, useHistory, usePlan } from '../store/plan.ts';
import { type Saving, useSaving } from '../store/saving.ts';
import { showDialog, showKit } from '../store/view.ts';
import { type Theme, useTheme } from '../theme.ts';
import { Menu } from './Menu.tsx';
import { Technique } from './Technique.tsx';
import { Views } from './Views.tsx';

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

const NOT_KEPT: Readonly<Record<Exclude<Saving, 'kept'>, string>> = {
  refused: 'This browser does not keep the plan.',
  full: 'This browser has no room left. Delete kept plans that are no longer needed.',
  elsewhere: 'A newer tab keeps this plan, or has deleted it.',
};

/** What can be done where another tab has taken the plan over. */
function Elsewhere() {
  const keeping = () => import('../store/keeping.ts');
  return (
    <>
      <button type="button" onClick={() => void keeping().then((part) => part.writeHere())}>
        Keep this one
      </button>
      <button type="button" onClick={() => void keeping().then((part) => part.writeBeside())}>
        Keep as another plan
      </button>
    </>
  );
}

/** Says so when this browser does not keep the plan. */
function SaveButton({ short = false }: { short?: boolean }) {
  const saving = useSaving();
  if (saving === 'kept') {
    return (
      <button type="button" onClick={saveFile}>
        Save
      </button>
    );
  }
  return (
    <>
      <button
        type="button"
        className="unsaved"
        title={`${NOT_KEPT[saving]} Download this one as a file.`}
        onClick={saveFile}
      >
        <StandingIcon standing="warning" size={14} /> {short ? 'Not saved' : 'Not saved: download'}
      </button>
      {saving === 'elsewhere' && !short && <Elsewhere />}
    </>
  );
}

const nextThemeText = (theme: Theme): string => `Theme: ${theme}. Change it`;

function ThemeButton({ text = false }: { text?: boolean }) {
  const [theme, next] = useTheme();
  return (
    <button
      type="button"
      className={text ? undefined : 'sq'}
      aria-label={nextThemeText(theme)}
      title={nextThemeText(theme)}
      onClick={next}
    >
      {text ? `Theme: ${theme}` : <ThemeIcon />}
    </button>
  );
}

const Demos = () =>
  DEMOS.map(({ name, title, about }) => (
    <button key={name} type="button" onClick={() => void openDemo(name)}>
      {title}
      <small>{about}</small>
    </button>
  ));

/** The same where the menu would hide it. */
function Unsaved() {
  return useSaving() === 'kept' ? null : (
    <span className="narrow-only">
      <SaveButton short />
    </span>
  );
}

export function TopBar() {
  const picker = useRef<HTMLInputElement>(null);
  const pick = () => picker.current?.click();
  const newPlan = () => showDialog('new');
  const kit = () => showKit();
  const plans = () => showDialog('plans');
  return (
    <header className="top">
      <h1 className="name">Escapement</h1>
      <Title />
      <Technique />
      <Views />
      <div className="tools">
        <History />
        <span className="wide-only">
          <i />
          <button type="button" onClick={plans}>
            Plans
          </button>
          <button type="button" onClick={newPlan}>
            New
          </button>
          <button type="button" onClick={pick}>
            Open
          </button>
          <SaveButton />
          <button type="button" onClick={kit}>
            Kit
          </button>
          <Menu label="Demos">
            <Demos />
          </Menu>
          <button type="button" onClick={() => showDialog('keys')}>
            Keys
          </button>
          <i />
          <ThemeButton />
        </span>
        <Unsaved />
        <Menu label="More" face={<MenuIcon />} className="narrow-only">
          <Technique />
          <button type="button" onClick={redo}>
            Redo
          </button>
          <button type="button" onClick={plans}>
            Plans
          </button>
          <button type="button" onClick={newPlan}>
            New plan
          </button>
          <button type="button" onClick={pick}>
            Open a plan file
          </button>
          <SaveButton />
          <button type="button" onClick={kit}>
            Kit
          </button>
          <p className="s">Demos</p>
          <Demos />
          <button type="button" onClick={() => showDialog('keys')}>
            Keys
          </button>
          <ThemeButton text />
        </Menu>
        <input
          ref={picker}
          type="file"
          className="vh"
          tabIndex={-1}
          aria-label="Plan file"
          accept=".json,application/json"
          onChange={({ target }) => {
            const [file] = target.files ?? [];
            if (file) void openFile(file);
            target.value = '';
          }}
        />
      </div>
    </header>
  );
}
