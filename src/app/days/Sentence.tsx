/** The sentence is the filter: what the window asks for, each part with its fields behind it. */

import type { Edit } from '../../engine/plan/paths.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { Segments } from '../fields/ChoiceField.tsx';
import { enterAll } from '../fields/entry.ts';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { ChevronLeft, ChevronRight } from '../icons.tsx';
import { readMinute } from '../sections/WindowFields.tsx';
import { endGesture, usePlan } from '../store/plan.ts';
import { How } from '../working/How.tsx';
import { Clause } from './Clause.tsx';
import {
  altitudeClause,
  azimuthClause,
  clockClause,
  horizonClause,
  moonClause,
  namedLights,
  paneClause,
} from './clauses.ts';
import { needText } from './words.ts';

/** Several fields changed at the press of a button, as one step. */
const put = (edits: readonly Edit[]): void => {
  endGesture();
  enterAll(edits);
};

/** Buttons for lights that have a name. */
export function NamedLights() {
  const sky = usePlan((plan) => plan.sky);
  return (
    <div className="row w2">
      {namedLights(sky).map(({ name, edits }) => (
        <button key={name} type="button" className="btn" onClick={() => put(edits)}>
          {name}
        </button>
      ))}
    </div>
  );
}

function Height({ window }: { window: Plan['window'] }) {
  return (
    <Clause title="Height of the sun" text={altitudeClause(window)}>
      <NumberField path="window.sunAltitudeMinDeg" placeholder="any" />
      <NumberField path="window.sunAltitudeMaxDeg" placeholder="any" />
      <NamedLights />
    </Clause>
  );
}

function Direction({ window }: { window: Plan['window'] }) {
  return (
    <Clause title="Direction of the sun" text={azimuthClause(window)}>
      <NumberField path="window.sunAzimuthFromDeg" placeholder="any" />
      <NumberField path="window.sunAzimuthToDeg" placeholder="any" />
      <p className="hint w2">From north, clockwise: 90° is east, 180° south, 270° west.</p>
    </Clause>
  );
}

function Hours({ window }: { window: Plan['window'] }) {
  return (
    <Clause title="Hours" text={clockClause(window)}>
      <TextField path="window.clockFrom" read={readMinute} placeholder="any" />
      <TextField path="window.clockTo" read={readMinute} placeholder="any" />
    </Clause>
  );
}

function Moon({ window }: { window: Plan['window'] }) {
  return (
    <Clause title="Moon" text={moonClause(window)}>
      <Segments path="window.moon" />
      {window.moon === 'downOrDim' && <NumberField path="window.moonLitMaxShare" />}
    </Clause>
  );
}

/** Conditions that only some plans have: their own horizon, a pane. */
function Obstacles({ window }: { window: Plan['window'] }) {
  const hasHorizon = usePlan((plan) => plan.place.horizon.length > 0);
  const hasPane = usePlan((plan) => plan.pane.used);
  return (
    <>
      {(hasHorizon || window.sunAndHorizon !== 'any') && (
        <Clause title="Own horizon" text={horizonClause(window)}>
          <Segments path="window.sunAndHorizon" />
        </Clause>
      )}
      {hasPane && (
        <>
          <span>through the pane</span>
          <Clause title="Pane" text={paneClause(window)}>
            <Segments path="window.sunOnPane" />
          </Clause>
        </>
      )}
    </>
  );
}

function Conditions({ window }: { window: Plan['window'] }) {
  return (
    <>
      <span>with the sun</span>
      <Height window={window} />
      <Direction window={window} />
      <Obstacles window={window} />
      <Hours window={window} />
      <span>and the moon</span>
      <Moon window={window} />
      <button type="button" className="btn quiet" onClick={() => put([['window.used', false]])}>
        No window
      </button>
    </>
  );
}

function NoConditions() {
  return (
    <>
      <span>at any time. Or ask for a window:</span>
      <NamedLights />
    </>
  );
}

interface SentenceProps {
  /** First shutter opening to the last closing, seconds. */
  runS: number;
  year: number;
  onYear: (year: number) => void;
}

/** Years of the calendar that a plan takes. */
const [FIRST_YEAR, LAST_YEAR] = [1970, 2999];

export function Sentence({ runS, year, onYear }: SentenceProps) {
  const window = usePlan((plan) => plan.window);
  return (
    <div className="ask">
      <span>
        Find{' '}
        <How of="run.neededS" what={needText(runS)}>
          <b>{needText(runS)}</b>
        </How>{' '}
        in
      </span>
      <span className="year">
        <button
          type="button"
          aria-label={`Year before, ${year - 1}`}
          disabled={year <= FIRST_YEAR}
          onClick={() => onYear(year - 1)}
        >
          <ChevronLeft />
        </button>
        <b className="m">{year}</b>
        <button
          type="button"
          aria-label={`Year after, ${year + 1}`}
          disabled={year >= LAST_YEAR}
          onClick={() => onYear(year + 1)}
        >
          <ChevronRight />
        </button>
      </span>
      {window.used ? <Conditions window={window} /> : <NoConditions />}
    </div>
  );
}
