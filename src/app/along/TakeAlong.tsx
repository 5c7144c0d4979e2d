/** What one takes along: paper, and files for a calendar, a spreadsheet, a controller. */
import { type ReactNode, useState } from 'react';
import { partProgramFaults } from '../../engine/plan/part-program-check.ts';
import { PROGRAM_CAUTION } from '../../outputs/part-program/header.ts';
import { StandingIcon } from '../icons.tsx';
import { printRunSheet } from '../print/runSheetPrint.ts';
import { saveFile } from '../store/files.ts';
import { usePlan } from '../store/plan.ts';
import { saveCalendar, savePositions, saveProgram } from './save.ts';
import './along.css';

interface ItemProps {
  title: string;
  about: string;
  action: string;
  disabled?: boolean;
  onAct: () => void;
  children?: ReactNode;
}

const Item = ({ title, about, action, disabled = false, onAct, children }: ItemProps) => (
  <li>
    <div>
      <h3>{title}</h3>
      <p>{about}</p>
      {children}
    </div>
    <button
      type="button"
      className="btn"
      disabled={disabled}
      aria-label={`${action}: ${title}`}
      onClick={onAct}
    >
      {action}
    </button>
  </li>
);

/** Why there is no part program, field by field. */
const Refused = ({ faults }: { faults: ReturnType<typeof partProgramFaults> }) => (
  <ul className="refused">
    {faults.map(({ path, found, allowed }) => (
      <li key={`${path} ${found}`}>
        <StandingIcon standing="stop" size={14} /> {path}: found {found}; allowed: {allowed}
      </li>
    ))}
  </ul>
);

function Program({ onSave }: { onSave: () => void }) {
  const faults = partProgramFaults(usePlan((plan) => plan));
  return (
    <Item
      title="Part program"
      about="RS-274 text for a rig whose controller reads it: moves, dwells, your lines to fire the camera."
      action="Save"
      disabled={faults.length > 0}
      onAct={onSave}
    >
      {faults.length > 0 ? (
        <Refused faults={faults} />
      ) : (
        PROGRAM_CAUTION.map((text) => (
          <p key={text} className="caution">
            {text}
          </p>
        ))
      )}
    </Item>
  );
}

export function TakeAlong() {
  const stopMotion = usePlan((plan) => plan.technique === 'stopMotion');
  const [said, setSaid] = useState('');
  const saving = (what: string, save: () => Promise<void>) => () => {
    setSaid(`Writing the ${what}`);
    void save().then(
      () => setSaid(`The ${what} was handed to your browser's downloads.`),
      () => setSaid(`The ${what} could not be written. Nothing was lost: try again.`),
    );
  };
  return (
    <>
      <ul className="along-list">
        <Item
          title="Run sheet"
          about={
            stopMotion
              ? 'Cover page of the shoot: days, what to bring, set-ups, cautions.'
              : 'One or two pages: what to bring, the clock of the day, what to set, cautions.'
          }
          action="Print"
          onAct={printRunSheet}
        />
        <Item
          title="Calendar"
          about={
            stopMotion
              ? 'Its working days, each with an alarm five minutes before.'
              : 'The blocks of the day, and an alarm five minutes before the start and each moment that needs a hand.'
          }
          action="Save"
          onAct={saving('calendar', saveCalendar)}
        />
        <Item
          title="Positions"
          about={`Every axis at every ${stopMotion ? 'exposure' : 'frame'}, in microsteps and in millimetres or degrees, for a spreadsheet.`}
          action="Save"
          onAct={saving('table of positions', savePositions)}
        />
        <Program onSave={saving('part program', saveProgram)} />
        <Item
          title="Plan file"
          about="The plan itself, to open again here or at the prompt."
          action="Save"
          onAct={saveFile}
        />
      </ul>
      <p className="s along-said" role="status">
        {said}
      </p>
    </>
  );
}
