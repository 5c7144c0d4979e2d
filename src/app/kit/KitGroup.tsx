/** All gear of one kind, and what the plan has of it that the kit does not. */
import { useId } from 'react';
import { usePlan } from '../store/plan.ts';
import { makeNew } from './actions.ts';
import { keptAs } from './edits.ts';
import type { KitItem } from './entry.ts';
import { KitItemRow } from './KitItemRow.tsx';
import { KINDS, type KitKind } from './kinds.ts';
import { keepFromPlan } from './planActions.ts';
import { allGearIn } from './withPlan.ts';

interface GroupProps {
  kind: KitKind;
  /** Gear of that kind on screen. */
  items: readonly KitItem[];
  /** Gear of that kind in the kit. */
  kept: readonly KitItem[];
}

/** The plan's gear that the kit does not have as it is. */
function KeepButtons({ kind, kept }: Omit<GroupProps, 'items'>) {
  const plan = usePlan((present) => present);
  const loose = allGearIn(plan, kind)
    .map((gear, index) => ({ gear, index }))
    .filter(({ gear }) => !keptAs({ items: kept, unread: [] }, gear));
  return loose.map(({ gear, index }) => (
    <button key={gear.name} type="button" className="btn" onClick={() => keepFromPlan(kind, index)}>
      Keep the plan’s {KINDS[kind].name === null ? KINDS[kind].title : gear.name}
    </button>
  ));
}

export function KitGroup({ kind, items, kept }: GroupProps) {
  const id = useId();
  const { many, title } = KINDS[kind];
  return (
    <section className="kit-group" aria-labelledby={id}>
      <header>
        <h3 id={id}>
          {many} {kept.length > 0 && <span className="s">{kept.length}</span>}
        </h3>
        <button type="button" className="btn quiet" onClick={() => makeNew(kind)}>
          New {title}
        </button>
      </header>
      {items.length > 0 && (
        <ul className="plain">
          {items.map((item) => (
            <KitItemRow key={item.id} item={item} />
          ))}
        </ul>
      )}
      <div className="row">
        <KeepButtons kind={kind} kept={kept} />
      </div>
    </section>
  );
}
