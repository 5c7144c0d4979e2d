import { Segments } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { offsetText, readClock } from '../format/clock.ts';
import { useSchedule } from '../store/plan.ts';
import { Caution, More } from './parts.tsx';

const ZONES: readonly string[] = Intl.supportedValuesOf('timeZone');

const readTime = (text: string): string => readClock(text) ?? text;
const showTime = (time: string): string => time.replace(/:00$/, (end) => (time.length === 8 ? '' : end));

/** The offset in use, which always shows: a machine's zone data can be out of date. */
function OffsetFacts() {
  const [first, ...changes] = useSchedule().offsets;
  const later = changes.map(({ offsetMin }) => `, then ${offsetText(offsetMin)}`).join('');
  return (
    <p className="hint">
      The clock is {offsetText(first?.offsetMin ?? 0)} from UTC at the start{later}.
    </p>
  );
}

export function PlaceBody() {
  return (
    <>
      <TextField path="start.date" type="date" />
      <TextField path="start.time" id="start.time" read={readTime} show={showTime} />
      <TextField path="place.name" wide placeholder="Harbour wall" />
      <TextField path="place.zone" wide list="zones" />
      <datalist id="zones">
        {ZONES.map((zone) => (
          <option key={zone} value={zone} />
        ))}
      </datalist>
      <OffsetFacts />
      <NumberField path="place.latitudeDeg" />
      <NumberField path="place.longitudeDeg" />
      <More title="Clock changes">
        <NumberField path="place.utcOffsetMin" />
        <Segments path="start.whenRepeated" />
      </More>
      <Caution>
        Look at the place by day first: road, tide, edges and heights are harder to see at night. Tell someone
        where you are. Never look at the sun through a finder or lens. Local rules and licensed practice come
        first.
      </Caution>
    </>
  );
}
