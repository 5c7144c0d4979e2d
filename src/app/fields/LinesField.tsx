/** Text on several lines. What does not fit stays in the field, with the reason beside it. */
import { memo, useId } from 'react';
import { getAt, setAt } from '../../engine/plan/paths.ts';
import { useDraft } from '../store/drafts.ts';
import { infoAt } from '../store/infos.ts';
import { useDesk, usePlan } from '../store/plan.ts';
import { enterText } from './entry.ts';
import { FieldFrame } from './FieldFrame.tsx';
import { helpOf } from './help.ts';

interface LinesFieldProps {
  path: string;
  rows: number;
  placeholder?: string;
  /** The plan keeps a list, one member a line; else the text as it is. */
  list?: boolean;
}

const membersOf = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');

export const LinesField = memo(function LinesField({ path, rows, placeholder, list }: LinesFieldProps) {
  const id = useId();
  const value = usePlan((plan) => getAt(plan, path)) as string | readonly string[] | undefined;
  const desk = useDesk();
  const draft = useDraft(path, desk.drafts);
  if (value === undefined) return null;
  const info = infoAt(path);
  const error = draft?.error ?? null;
  const type = (text: string) => {
    const put = (plan: Parameters<typeof setAt>[0]) => setAt(plan, path, list ? membersOf(text) : text);
    desk.drafts.set(path, { text, error: enterText(path, text, put, desk) });
  };
  const leave = () => {
    desk.endGesture();
    if (error === null) desk.drafts.set(path, null);
  };
  return (
    <FieldFrame id={id} label={info.title} hint={helpOf(info)} error={error} wide>
      {(described) => (
        <textarea
          id={id}
          data-path={path}
          rows={rows}
          className={error === null ? undefined : 'bad'}
          value={draft?.text ?? (typeof value === 'string' ? value : value.join('\n'))}
          placeholder={placeholder}
          aria-invalid={error !== null}
          aria-describedby={described}
          spellCheck={false}
          onChange={(event) => type(event.target.value)}
          onBlur={leave}
          onKeyDown={(event) => {
            if (event.key !== 'Escape') return;
            desk.cancelGesture(path);
            desk.drafts.set(path, null);
          }}
        />
      )}
    </FieldFrame>
  );
});
