/** Words: titles, names, dates, zones. Text that does not fit stays in the field, with the reason beside it. */

import { type HTMLAttributes, memo, useId } from 'react';
import { getAt, setAt } from '../../engine/plan/paths.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { useDraft } from '../store/drafts.ts';
import { infoAt } from '../store/infos.ts';
import { useDesk, usePlan } from '../store/plan.ts';
import { enterText } from './entry.ts';
import { FieldFrame, Unit } from './FieldFrame.tsx';
import { helpOf } from './help.ts';

export interface TextFieldProps {
  path: string;
  label?: string;
  hint?: string;
  wide?: boolean;
  id?: string;
  placeholder?: string;
  type?: 'text' | 'date';
  inputMode?: HTMLAttributes<HTMLInputElement>['inputMode'];
  /** Id of a list of suggestions. */
  list?: string;
  /** What the plan keeps of what was typed, e.g. `20:31:00` of `20:31`. */
  read?: (text: string) => string;
  /** How what the plan keeps is shown. */
  show?: (value: string) => string;
  /** Makes the changed plan; by default this field alone changes. */
  put?: (plan: Plan, value: string) => Plan;
}

const same = (text: string) => text;

export const TextField = memo(function TextField(props: TextFieldProps) {
  const { path, read = same, show = same, put = (plan, text) => setAt(plan, path, text) } = props;
  const ownId = useId();
  const id = props.id ?? ownId;
  const value = usePlan((plan) => getAt(plan, path)) as string | undefined;
  const desk = useDesk();
  const draft = useDraft(path, desk.drafts);
  if (value === undefined) return null;
  const info = infoAt(path);
  const error = draft?.error ?? null;
  const type = (text: string) =>
    desk.drafts.set(path, { text, error: enterText(path, read(text), put, desk) });
  const leave = () => {
    desk.endGesture();
    if (error === null) desk.drafts.set(path, null);
  };
  return (
    <FieldFrame
      id={id}
      label={props.label ?? info.title}
      hint={props.hint ?? helpOf(info)}
      error={error}
      wide={props.wide}
    >
      {(described) => (
        <div className={`box${error === null ? '' : ' bad'}`}>
          <span className="v">
            <input
              id={id}
              data-path={path}
              type={props.type ?? 'text'}
              value={draft?.text ?? show(value)}
              placeholder={props.placeholder}
              list={props.list}
              inputMode={props.inputMode}
              aria-invalid={error !== null}
              aria-describedby={described}
              autoComplete="off"
              spellCheck={false}
              onChange={(event) => type(event.target.value)}
              onBlur={leave}
              onKeyDown={(event) => {
                if (event.key === 'Enter') leave();
                if (event.key !== 'Escape') return;
                desk.cancelGesture(path);
                desk.drafts.set(path, null);
              }}
            />
            <Unit text={draft?.text ?? show(value)} unit={info.unit ?? ''} />
          </span>
        </div>
      )}
    </FieldFrame>
  );
});
