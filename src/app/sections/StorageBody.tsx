import type { Card } from '../../engine/plan/schema.ts';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { bytesText } from '../format/bytes.ts';
import { FromKit, KeepInKit } from '../kit/FromKit.tsx';
import { addCard, removeCard } from '../store/members.ts';
import { usePlan, useSchedule } from '../store/plan.ts';
import { How } from '../working/How.tsx';
import { act } from './act.ts';
import { Member } from './Member.tsx';

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
        {', '}
        <How of="totals.copiesBytes" what="all copies">
          all copies
        </How>
      </p>
      <KeepInKit kind="card" index={index} name={card.name} />
    </Member>
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
    </>
  );
}
