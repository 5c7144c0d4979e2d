/** What one does with plans and with the page: buttons of the bar, or its menu where there is no room for them. */
import { useRef } from 'react';
import { MenuIcon, StandingIcon, ThemeIcon } from '../icons.tsx';
import { openFile, saveFile } from '../store/files.ts';
import { DEMOS, openDemo } from '../store/opening.ts';
import { redo } from '../store/plan.ts';
import { type Saving, useSaving } from '../store/saving.ts';
import { showDialog, showKit } from '../store/view.ts';
import { type Theme, useTheme } from '../theme.ts';
import { Menu } from './Menu.tsx';
import { Technique } from './Technique.tsx';

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

interface ActionProps {
  name: string;
  act: () => void;
}

const Action = ({ name, act }: ActionProps) => (
  <button type="button" onClick={act}>
    {name}
  </button>
);

const Plans = () => <Action name="Plans" act={() => showDialog('plans')} />;

/** What goes out of the house with the plan, and on to others. */
const Out = () => (
  <>
    <Action name="Take along" act={() => showDialog('along')} />
    <Action name="Share" act={() => showDialog('share')} />
  </>
);

/** What is wanted now and then. */
const Seldom = () => (
  <>
    <Action name="Kit" act={() => showKit()} />
    <Action name="Compare with a copy" act={() => showDialog('compare')} />
    <Action name="Keys" act={() => showDialog('keys')} />
    <p className="s">Demos</p>
    <Demos />
  </>
);

export default function Tools() {
  const picker = useRef<HTMLInputElement>(null);
  const pick = () => picker.current?.click();
  const newPlan = () => showDialog('new');
  return (
    <>
      <span className="wide-only">
        <i />
        <Plans />
        <Action name="New" act={newPlan} />
        <Action name="Open" act={pick} />
        <SaveButton />
        <Out />
        <Menu label="More">
          <Seldom />
        </Menu>
        <i />
        <ThemeButton />
      </span>
      <Unsaved />
      <Menu label="More" face={<MenuIcon />} className="narrow-only">
        <Technique />
        <Action name="Redo" act={redo} />
        <Plans />
        <Action name="New plan" act={newPlan} />
        <Action name="Open a plan file" act={pick} />
        <SaveButton />
        <Out />
        <ThemeButton text />
        <Seldom />
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
    </>
  );
}
