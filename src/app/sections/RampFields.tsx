/** The ramp: which setting changes next as the light falls, how far, in which steps and by whom. */
import { type KeyboardEvent, memo, type ReactNode, useId, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { RAMP_SETTINGS, type RampStep } from '../../engine/plan/schema.ts';
import { Choice, Flag, Select } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { wordText } from '../fields/words.ts';
import { ChevronDown, ChevronUp, CrossIcon } from '../icons.tsx';
import { usePlan } from '../store/plan.ts';
import { addStep, MOST_STEPS, moveStep, removeStep, turnStep } from '../store/rampEdits.ts';
import { act } from './act.ts';
import { More } from './parts.tsx';
import { rampStepText } from './summary.ts';

const PATH = 'exposure.ramp.steps';

/** The field of the exposure whose notation and marks a step shares. */
const LIKE: Readonly<Record<RampStep['setting'], string>> = {
  shutter: 'exposure.shutterS',
  iso: 'exposure.iso',
  aperture: 'exposure.apertureF',
};

const SETTINGS = RAMP_SETTINGS.map((setting) => ({ value: setting, text: wordText(setting) }));

interface StepProps {
  index: number;
  setting: RampStep['setting'];
  count: number;
  onMove: (index: number, by: -1 | 1) => void;
}

const StepRow = memo(function StepRow({ index, setting, count, onMove }: StepProps) {
  const id = useId();
  const path = `${PATH}.${index}`;
  const name = `Step ${index + 1}`;
  // Before the fields see it: there the arrows step the value.
  const onKey = (event: KeyboardEvent) => {
    if (!event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return;
    event.preventDefault();
    event.stopPropagation();
    onMove(index, event.key === 'ArrowUp' ? -1 : 1);
  };
  return (
    <li className="step" onKeyDownCapture={onKey}>
      <span className="m s" aria-hidden="true">
        {index + 1}
      </span>
      <Select
        id={id}
        value={setting}
        options={SETTINGS}
        label={`${name}: change`}
        onChoose={(word) => act((plan) => turnStep(plan, index, word as RampStep['setting']))}
      />
      <NumberField path={`${path}.to`} like={LIKE[setting]} label={`${name}: to`} bare plain />
      <div className="row">
        <StepButton label={`${name}: up`} disabled={index === 0} onPress={() => onMove(index, -1)}>
          <ChevronUp />
        </StepButton>
        <StepButton label={`${name}: down`} disabled={index === count - 1} onPress={() => onMove(index, 1)}>
          <ChevronDown />
        </StepButton>
        <StepButton label={`Remove step ${index + 1}`} onPress={() => act((plan) => removeStep(plan, index))}>
          <CrossIcon />
        </StepButton>
      </div>
      <Choice path={`${path}.step`} label={`${name}: in steps of`} bare />
      <Choice path={`${path}.by`} label={`${name}: changed by`} bare />
    </li>
  );
});

interface StepButtonProps {
  label: string;
  disabled?: boolean;
  onPress: () => void;
  children: ReactNode;
}

const StepButton = ({ label, disabled = false, onPress, children }: StepButtonProps) => (
  <button type="button" className="sq" aria-label={label} disabled={disabled} onClick={onPress}>
    {children}
  </button>
);

const CONTROLS = 'input, select, button';

/** The control of a row that stands where another one stands in its row; a disabled one hands over to the first. */
function focusLike(row: Element | undefined, place: number): void {
  const controls = [...(row?.querySelectorAll<HTMLElement>(CONTROLS) ?? [])];
  const control = controls[place];
  (control && !control.matches(':disabled') ? control : controls[0])?.focus();
}

function Steps() {
  const list = useRef<HTMLOListElement>(null);
  const steps = usePlan((plan) => plan.exposure.ramp.steps);
  const [said, setSaid] = useState('');
  const move = (index: number, by: -1 | 1) => {
    const step = steps[index];
    if (!step || !steps[index + by]) return;
    const rows = [...(list.current?.children ?? [])];
    const place = [...(rows[index]?.querySelectorAll(CONTROLS) ?? [])].indexOf(
      document.activeElement as Element,
    );
    flushSync(() => act((plan) => moveStep(plan, index, by)));
    focusLike(rows[index + by], place);
    setSaid(`${wordText(rampStepText(step))} is now step ${index + by + 1} of ${steps.length}.`);
  };
  return (
    <div className="w2 steps">
      <p className="s" id="ramp-order">
        Order of changes as the light falls; backwards as it returns. Alt with ↑ or ↓ moves a step.
      </p>
      <ol className="plain" ref={list} aria-labelledby="ramp-order">
        {steps.map((step, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: steps have no identity but their place
          <StepRow key={index} index={index} setting={step.setting} count={steps.length} onMove={move} />
        ))}
      </ol>
      {steps.length === 0 && <p className="s">No step: nothing changes.</p>}
      <p className="vh" role="status">
        {said}
      </p>
      <button
        type="button"
        className="btn"
        disabled={steps.length >= MOST_STEPS}
        onClick={() => act(addStep)}
      >
        Add a step
      </button>
    </div>
  );
}

export function RampFields() {
  const used = usePlan((plan) => plan.exposure.ramp.used);
  const byHand = usePlan((plan) => plan.exposure.ramp.steps.some(({ by }) => by === 'hand'));
  return (
    <>
      <Flag path="exposure.ramp.used" />
      {used && (
        <>
          <Steps />
          {byHand && <NumberField path="exposure.ramp.changeS" />}
          <NumberField path="exposure.ramp.toleranceStops" />
          <NumberField path="exposure.shutterAngleMaxDeg" placeholder="no limit" />
          <More title="Night stays darker">
            <NumberField path="exposure.ramp.nightStops" />
            <NumberField path="exposure.ramp.nightFromDeg" />
            <NumberField path="exposure.ramp.nightFullDeg" />
            <NumberField path="exposure.ramp.hysteresisStops" />
          </More>
        </>
      )}
    </>
  );
}
