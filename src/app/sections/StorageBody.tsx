import type { Card } from '../../engine/plan/schema.ts';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { bytesText } from '../format/bytes.ts';
import { plural } from '../format/numbers.ts';
import { FromKit, KeepInKit } from '../kit/FromKit.tsx';
import { addCard, removeCard } from '../store/members.ts';
import { usePlan, useSchedule } from '../store/plan.ts';
import { How } from '../working/How.tsx';
import { act } from './act.ts';
import { Member } from './Member.tsx';
import { Facts } from './parts.tsx';

function CardBlock({ card, index, only }: { card: Card; index: number; only: boolean }) {
  const path = `storage.cards.${index}`;
  const used = useSchedule().cards[index]?.usedBytes ?? 0;
  return (
    <Member
      name={card.name}
      summary={`${bytesText(used)} of ${bytesText(card.cardBytes)}`}
      onRemove={only ? undefined : () => act((plan) => removeCard(plan, index))}
    >
      <TextField path={`${path}.name`} wide />
      <NumberField path={`${path}.cardBytes`} />
      <NumberField path={`${path}.reserveShare`} />
      <NumberField path={`${path}.writeBytesPerS`} />
      <p className="hint w2">
        <How of={`cards.${card.name}.usedBytes`} what={`${bytesText(used)} used, ${card.name}`}>
          {bytesText(used)} used
        </How>
      </p>
      <KeepInKit kind="card" index={index} name={card.name} />
    </Member>
  );
}

/** What the run comes to, on all cards and over all copies. */
function Totals() {
  const { storageBytes, copiesBytes } = useSchedule().totals;
  const copies = usePlan((plan) => plan.storage.copies);
  const figure = (of: string, bytes: number) => ({ text: bytesText(bytes), of: `totals.${of}` });
  return (
    <Facts
      of={[
        ['All frames together are ', figure('storageBytes', storageBytes), '.'],
        [`${plural(copies, 'copy', 'copies')}: `, figure('copiesBytes', copiesBytes), '.'],
      ]}
    />
  );
}

export function StorageBody() {
  const cards = usePlan((plan) => plan.storage.cards);
  return (
    <>
      {cards.map((card, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a card keeps its place while it is renamed
        <CardBlock key={index} card={card} index={index} only={cards.length === 1} />
      ))}
      <div className="row w2">
        <button type="button" className="btn" onClick={() => act(addCard)}>
          Add a card
        </button>
        <FromKit kinds={['card']} />
      </div>
      <NumberField path="storage.cardChangeS" />
      <NumberField path="storage.copies" />
      <Totals />
    </>
  );
}
