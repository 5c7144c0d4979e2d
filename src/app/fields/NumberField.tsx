/** A number with its unit: typed, stepped by arrows and buttons, picked from marks, taken back by Escape. */

import { type FocusEvent, type KeyboardEvent, memo, useId } from 'react';
import type { FieldInfo } from '../../engine/plan/faults.ts';
import { getAt } from '../../engine/plan/paths.ts';
import { allowedText, type Codec, fullText } from '../format/allowed.ts';
import { codecOf } from '../format/quantity.ts';
import { LessIcon, MoreIcon } from '../icons.tsx';
import type { Desk } from '../store/desk.ts';
import { useDraft } from '../store/drafts.ts';
import { infoAt, patternOf } from '../store/infos.ts';
import { useDesk, usePlan } from '../store/plan.ts';
import { enter, readField, stepped } from './entry.ts';
import { FieldFrame, Unit } from './FieldFrame.tsx';
import { helpOf } from './help.ts';
import { seriesOf, stepInSeries } from './series.ts';

interface NumberFieldProps {
  /** Path into the plan, with dots. */
  path: string;
  label?: string | undefined;
  /** Unit of the axis that the field belongs to. */
  axisUnit?: 'mm' | 'deg' | undefined;
  /** Path of the field whose notation and marks it shares, where its own path does not say. */
  like?: string | undefined;
  /** What is used if an optional field is empty: shown in its place. */
  workedOut?: number | undefined;
  /** Words in place of an optional field's value. */
  placeholder?: string;
  /** Label is heard only. */
  bare?: boolean | undefined;
  /** Without − and +, for narrow places. */
  plain?: boolean | undefined;
  /** Over the whole width, for long texts. */
  wide?: boolean | undefined;
}

type Series = readonly number[] | undefined;

/** What typing, stepping and leaving do to the field at a path. */
function editing(desk: Desk, path: string, series: Series, info: FieldInfo, codec: Codec, basis: number) {
  const setDraft = desk.drafts.set;
  const put = (value: number | null, text: string, keep: boolean) => {
    const error = enter(path, value, desk);
    setDraft(path, keep || error !== null ? { text, error } : null);
  };
  return {
    type(text: string) {
      const read = readField(text, info, codec, basis);
      if ('error' in read) setDraft(path, { text, error: read.error });
      else put(read.value, text, true);
    },
    step(steps: number) {
      const next = series ? stepInSeries(series, basis, steps) : stepped(basis, steps, info);
      put(next, codec.text(next), false);
    },
    pick: (value: number) => put(value, codec.text(value), false),
    restore() {
      desk.cancelGesture(path);
      setDraft(path, null);
    },
  };
}

/** A click on the marks beside a field, e.g. of a shutter dial. */
function Marks({ label, codec, series, onPick }: MarksProps) {
  return (
    <span className="st pick">
      <select
        aria-label={`${label}: marks`}
        tabIndex={-1}
        value=""
        onChange={(e) => onPick(Number(e.target.value))}
      >
        <option value="" hidden />
        {series.map((value) => (
          <option key={value} value={value}>
            {fullText(codec, value)}
          </option>
        ))}
      </select>
    </span>
  );
}

interface MarksProps {
  label: string;
  codec: Codec;
  series: readonly number[];
  onPick: (value: number) => void;
}

function StepButtons({ label, onStep }: { label: string; onStep: (steps: number) => void }) {
  return (
    <>
      <button
        type="button"
        className="st"
        tabIndex={-1}
        aria-label={`${label}: less`}
        onClick={() => onStep(-1)}
      >
        <LessIcon />
      </button>
      <button
        type="button"
        className="st"
        tabIndex={-1}
        aria-label={`${label}: more`}
        onClick={() => onStep(1)}
      >
        <MoreIcon />
      </button>
    </>
  );
}

export const NumberField = memo(function NumberField(props: NumberFieldProps) {
  const { path, axisUnit, workedOut, bare, plain, like = path } = props;
  const id = useId();
  const value = usePlan((plan) => getAt(plan, path)) as number | null | undefined;
  const desk = useDesk();
  const draft = useDraft(path, desk.drafts);
  if (value === undefined) return null;
  const info = infoAt(path);
  const codec = codecOf(patternOf(like), infoAt(like).unit, axisUnit);
  const series = seriesOf(like);
  const basis = value ?? workedOut ?? Math.max(0, info.minimum ?? 0);
  const edit = editing(desk, path, series, info, codec, basis);
  const text = draft?.text ?? (value === null ? '' : codec.text(value));
  const error = draft?.error ?? null;

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
      event.preventDefault();
      edit.step((event.key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? 10 : 1));
    } else if (event.key === 'Escape') {
      edit.restore();
    } else if (event.key === 'Enter' && error === null) {
      desk.drafts.set(path, null);
      desk.endGesture();
    }
  };
  const onBlur = (event: FocusEvent) => {
    // The buttons beside it belong to the same gesture.
    if (event.currentTarget.closest('.box')?.contains(event.relatedTarget)) return;
    desk.endGesture();
    if (error === null) desk.drafts.set(path, null);
  };

  const label = props.label ?? info.title;
  // A unit that was typed is not shown a second time.
  const unit = text === '' || (draft && /[a-z%°]/i.test(text)) ? '' : codec.unit(basis);
  const empty = props.placeholder ?? (workedOut === undefined ? 'none' : fullText(codec, workedOut));
  return (
    <FieldFrame
      id={id}
      label={label}
      hint={`${helpOf(info) ?? ''} ${allowedText(info, codec)}`.trim()}
      error={error}
      bare={bare}
      wide={props.wide}
    >
      {(described) => (
        <div className={`box${error === null ? '' : ' bad'}${text === '' ? ' calc' : ''}`}>
          <span className="v">
            <input
              id={id}
              data-path={path}
              className="m"
              value={text}
              placeholder={info.optional ? empty : undefined}
              aria-label={bare ? label : undefined}
              aria-invalid={error !== null}
              aria-describedby={described}
              inputMode={(info.minimum ?? 0) < 0 || codec.kind !== 'a number' ? 'text' : 'decimal'}
              autoComplete="off"
              spellCheck={false}
              onChange={(event) => edit.type(event.target.value)}
              onKeyDown={onKeyDown}
              onBlur={onBlur}
            />
            <Unit text={text} unit={unit} />
          </span>
          {series && <Marks label={label} codec={codec} series={series} onPick={edit.pick} />}
          {!plain && (info.step !== undefined || info.whole || series) && (
            <StepButtons label={label} onStep={edit.step} />
          )}
        </div>
      )}
    </FieldFrame>
  );
});
