/** How bright it is: studio lamps, or the sky held to one reading; and what the lamps' ripple does. */
import { readingEv } from '../../engine/light/scene.ts';
import { Flag, Segments } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { numberText, withUnit } from '../format/numbers.ts';
import { usePlan } from '../store/plan.ts';
import { LampTable } from './LampTable.tsx';
import { lampsText } from './lightText.ts';
import { Facts, More } from './parts.tsx';
import { readTime, showTime } from './StartFields.tsx';

function ReadingFacts() {
  const ev = usePlan((plan) => readingEv(plan));
  const value = { text: withUnit(numberText(ev, 1), 'EV'), of: 'light.readingEv' };
  return <Facts of={[['The reading is ', value, ' at ISO 100.']]} />;
}

function Reading() {
  return (
    <>
      <TextField path="light.meteredDate" type="date" />
      <TextField path="light.meteredTime" read={readTime} show={showTime} />
      <NumberField path="light.meteredShutterS" />
      <NumberField path="light.meteredApertureF" />
      <NumberField path="light.meteredIso" />
      <NumberField path="light.meteredFilterStops" />
      <ReadingFacts />
    </>
  );
}

function SkyLight() {
  const metered = usePlan((plan) => plan.light.metered);
  const hasPlace = usePlan((plan) => plan.place.latitudeDeg !== null && plan.place.longitudeDeg !== null);
  return (
    <>
      {!hasPlace && <p className="hint">The light of the sky needs a place on the map.</p>}
      <NumberField path="light.cloudStops" />
      {!metered && <NumberField path="light.sceneStops" />}
      <Flag path="light.moonlight" />
      <Flag path="light.metered" />
      {metered && <Reading />}
      <More title="Meter constant">
        <NumberField path="light.incidentC" />
      </More>
    </>
  );
}

function LampFields() {
  const summary = usePlan(({ lamps }) => lampsText(lamps));
  const lit = usePlan((plan) => plan.lamps.mainsHz !== 'none');
  return (
    <More title="Lamps" summary={summary}>
      <Segments path="lamps.mainsHz" />
      {lit && (
        <>
          <NumberField path="lamps.depthShare" />
          <NumberField path="lamps.limitShare" />
          <LampTable />
        </>
      )}
    </More>
  );
}

export function LightFields() {
  const kind = usePlan((plan) => plan.light.kind);
  return (
    <>
      <Segments path="light.kind" bare />
      {kind === 'studio' && <NumberField path="light.studioEv" />}
      {kind === 'sky' && <SkyLight />}
      <LampFields />
    </>
  );
}
