import { AXIS_KINDS, type Axis } from '../../engine/plan/schema.ts';
import { Choice, FedBy } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { wordText } from '../fields/words.ts';
import { numberText, withUnit } from '../format/numbers.ts';
import { FromKit, KeepInKit, KeepLine } from '../kit/FromKit.tsx';
import { addAxis, kindName, removeAxis, renameAxis } from '../store/members.ts';
import { usePlan } from '../store/plan.ts';
import { act } from './act.ts';
import { Member } from './Member.tsx';
import { PartProgramFields } from './PartProgramFields.tsx';
import { Caution, Facts, More } from './parts.tsx';
import { RigPlace } from './RigPlace.tsx';
import { axisUnitText, facts } from './summary.ts';

/** What one microstep moves. */
function StepFacts({ axis }: { axis: Axis }) {
  const perUnit = (axis.fullStepsPerTurn * axis.microsteps * axis.gearRatio) / axis.unitsPerTurn;
  const figure = (what: string, text: string) => ({ text, of: `axes.${axis.name}.${what}` });
  return (
    <Facts
      of={[
        [
          'One microstep moves ',
          figure('microstep', withUnit(numberText(1 / perUnit, 6), axisUnitText(axis.unit))),
          ': ',
          figure('stepsPerUnit', numberText(perUnit, 2)),
          ` a ${axis.unit === 'deg' ? 'degree' : 'millimetre'}.`,
        ],
      ]}
    />
  );
}

const moreText = ({ arrive, torqueNm }: Axis): string =>
  facts(
    `arrives ${wordText(arrive).toLowerCase()}`,
    torqueNm !== null && `holds ${withUnit(numberText(torqueNm), 'N m')}`,
  );

function AxisBlock({ axis, index }: { axis: Axis; index: number }) {
  const path = `rig.axes.${index}`;
  const figure = (name: string) => <NumberField path={`${path}.${name}`} axisUnit={axis.unit} />;
  const unit = axisUnitText(axis.unit);
  return (
    <Member
      name={axis.name}
      summary={`${numberText(axis.travelMin, 2)} to ${withUnit(numberText(axis.travelMax, 2), unit)}`}
      onRemove={() => act((plan) => removeAxis(plan, index))}
    >
      <TextField path={`${path}.name`} put={(plan, name) => renameAxis(plan, index, name)} />
      <Choice path={`${path}.kind`} />
      <Choice path={`${path}.unit`} />
      {figure('unitsPerTurn')}
      {figure('travelMin')}
      {figure('travelMax')}
      {figure('maxSpeed')}
      {figure('maxAccel')}
      {figure('fullStepsPerTurn')}
      {figure('microsteps')}
      {figure('gearRatio')}
      {figure('backlash')}
      {figure('holdW')}
      {figure('moveW')}
      <FedBy path={`${path}.source`} />
      <StepFacts axis={axis} />
      <More title="More of this axis" summary={moreText(axis)}>
        {figure('maxJerk')}
        <Choice path={`${path}.arrive`} />
        {axis.arrive !== 'eitherWay' && (
          <NumberField path={`${path}.overrun`} axisUnit={axis.unit} workedOut={2 * axis.backlash} />
        )}
        {figure('torqueNm')}
        {figure('driveEfficiencyShare')}
        <Choice path={`${path}.word`} />
      </More>
      <KeepInKit kind="axis" index={index} name={axis.name} />
    </Member>
  );
}

export function RigBody() {
  const axes = usePlan((plan) => plan.rig.axes);
  return (
    <>
      <FromKit kinds={['axis', 'arm']} />
      {axes.map((axis, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an axis keeps its place while it is renamed
        <AxisBlock key={index} axis={axis} index={index} />
      ))}
      <div className="row w2">
        <span className="s">Add an axis:</span>
        {AXIS_KINDS.map((kind) => (
          <button key={kind} type="button" className="btn" onClick={() => act((plan) => addAxis(plan, kind))}>
            {kindName(kind)}
          </button>
        ))}
      </div>
      <RigPlace />
      {axes.length > 0 && <PartProgramFields />}
      <KeepLine kinds={['arm']} />
      <Caution>
        Loaded arms and counterweights fall and pinch: stay from under them, weigh the stand down, tether what
        can come loose, and try a move slowly first. Local rules and licensed practice come first.
      </Caution>
    </>
  );
}
