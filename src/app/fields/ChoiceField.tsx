/** One word out of a list, a switch, or the source that feeds something. */

import { memo, useId } from 'react';
import { getAt } from '../../engine/plan/paths.ts';
import type { Desk } from '../store/desk.ts';
import { infoAt } from '../store/infos.ts';
import { useDesk, usePlan } from '../store/plan.ts';
import { enter } from './entry.ts';
import { FieldFrame } from './FieldFrame.tsx';
import { helpOf } from './help.ts';
import { wordText } from './words.ts';

interface ChoiceProps {
  path: string;
  label?: string;
  wide?: boolean;
  bare?: boolean;
}

/** A choice is a step of its own: it does not join what was typed before. */
function choose(desk: Desk, path: string, value: unknown): void {
  desk.endGesture();
  enter(path, value, desk);
  desk.endGesture();
}

/** Few words side by side. */
export const Segments = memo(function Segments({ path, label, bare }: ChoiceProps) {
  const desk = useDesk();
  const value = usePlan((plan) => getAt(plan, path)) as string | undefined;
  const info = infoAt(path);
  const title = label ?? info.title;
  if (value === undefined) return null;
  return (
    <div className="fld w2">
      {!bare && (
        <span className="lab" aria-hidden="true">
          {title}
        </span>
      )}
      <fieldset className="seg full" title={helpOf(info)}>
        <legend className="vh">{title}</legend>
        {info.words?.map((word) => (
          <button
            key={word}
            type="button"
            aria-pressed={word === value}
            onClick={() => choose(desk, path, word)}
          >
            {wordText(word)}
          </button>
        ))}
      </fieldset>
    </div>
  );
});

interface SelectProps {
  id: string;
  value: string;
  options: readonly { value: string; text: string }[];
  label?: string | undefined;
  describedBy?: string | undefined;
  onChoose: (value: string) => void;
}

/** A native select in the box of a field. */
export function Select({ id, value, options, label, describedBy, onChoose }: SelectProps) {
  return (
    <div className="box sel">
      <select
        id={id}
        value={value}
        aria-label={label}
        aria-describedby={describedBy}
        onChange={(event) => onChoose(event.target.value)}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.text}
          </option>
        ))}
      </select>
    </div>
  );
}

/** More words than fit side by side. */
export const Choice = memo(function Choice({ path, label, wide, bare }: ChoiceProps) {
  const id = useId();
  const desk = useDesk();
  const value = usePlan((plan) => getAt(plan, path)) as string | undefined;
  const info = infoAt(path);
  if (value === undefined) return null;
  const title = label ?? info.title;
  const options = (info.words ?? []).map((word) => ({ value: word, text: wordText(word) }));
  return (
    <FieldFrame id={id} label={title} hint={helpOf(info)} wide={wide} bare={bare}>
      {(described) => (
        <Select
          id={id}
          value={value}
          options={options}
          label={bare ? title : undefined}
          describedBy={described}
          onChoose={(word) => choose(desk, path, word)}
        />
      )}
    </FieldFrame>
  );
});

/** Yes or no. */
export const Flag = memo(function Flag({ path, label }: ChoiceProps) {
  const id = useId();
  const desk = useDesk();
  const value = usePlan((plan) => getAt(plan, path)) as boolean | undefined;
  const info = infoAt(path);
  if (value === undefined) return null;
  return (
    <div className="flag w2">
      <input
        id={id}
        type="checkbox"
        checked={value}
        aria-describedby={helpOf(info) ? `${id}-note` : undefined}
        onChange={(event) => choose(desk, path, event.target.checked)}
      />
      <label htmlFor={id}>{label ?? info.title}</label>
      {helpOf(info) && (
        <p id={`${id}-note`} className="s">
          {helpOf(info)}
        </p>
      )}
    </div>
  );
});

const NONE = '';

/** Which source feeds an axis or a load. */
export const FedBy = memo(function FedBy({ path }: { path: string }) {
  const id = useId();
  const desk = useDesk();
  const value = usePlan((plan) => getAt(plan, path)) as string | null | undefined;
  const sources = usePlan((plan) => plan.power.sources);
  const info = infoAt(path);
  if (value === undefined) return null;
  const options = [
    { value: NONE, text: 'None' },
    ...sources.map(({ name }) => ({ value: name, text: name })),
  ];
  return (
    <FieldFrame id={id} label={info.title} hint={helpOf(info)}>
      {(described) => (
        <Select
          id={id}
          value={value ?? NONE}
          options={options}
          describedBy={described}
          onChoose={(name) => choose(desk, path, name === NONE ? null : name)}
        />
      )}
    </FieldFrame>
  );
});
