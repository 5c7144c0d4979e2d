import { Segments } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { HorizonFields } from './HorizonFields.tsx';
import { LightFields } from './LightFields.tsx';
import { PaneFields } from './PaneFields.tsx';
import { PositionFields, ZoneOffer } from './PositionFields.tsx';
import { Caution, More } from './parts.tsx';
import { OffsetFacts, StartFields } from './StartFields.tsx';
import { TestFrameDrop } from './TestFrameDrop.tsx';
import { SunHours, WindowFields } from './WindowFields.tsx';

const ZONES: readonly string[] = Intl.supportedValuesOf('timeZone');

function ZoneFields() {
  return (
    <>
      <TextField path="place.zone" wide list="zones" />
      <datalist id="zones">
        {ZONES.map((zone) => (
          <option key={zone} value={zone} />
        ))}
      </datalist>
      <ZoneOffer />
      <OffsetFacts />
    </>
  );
}

/** Where, when, and under which light. */
export function PlaceBody() {
  return (
    <>
      <TextField path="place.name" wide placeholder="Harbour wall" />
      <PositionFields />
      <ZoneFields />
      <h4 className="w2">Start</h4>
      <StartFields />
      <More title="Clock changes">
        <NumberField path="place.utcOffsetMin" />
        <Segments path="start.whenRepeated" />
      </More>
      <h4 className="w2">Sun and moon</h4>
      <HorizonFields />
      <SunHours />
      <WindowFields />
      <PaneFields />
      <h4 className="w2">Light</h4>
      <LightFields />
      <TestFrameDrop />
      <Caution>
        Look at the place by day first: road, tide, edges and heights are harder to see at night. Tell someone
        where you are. Never look at the sun through a finder or lens. Local rules and licensed practice come
        first.
      </Caution>
    </>
  );
}
