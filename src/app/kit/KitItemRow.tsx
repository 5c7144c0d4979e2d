/** One piece of gear: a line that opens to its name and figures, and the way into the plan. */
import { memo, useState } from 'react';
import { EntryBox } from '../fields/EntryBox.tsx';
import { ChevronDown, ChevronRight, CrossIcon, StandingIcon } from '../icons.tsx';
import { usePlan } from '../store/plan.ts';
import { deleteItem, duplicate } from './actions.ts';
import { named, put } from './edits.ts';
import { type KitItem, LONGEST_NAME } from './entry.ts';
import { ItemFields } from './ItemFields.tsx';
import { itemText } from './itemText.ts';
import { oneOf } from './kinds.ts';
import { currentKit, editKit } from './kitStore.ts';
import { takeIntoPlan } from './planActions.ts';
import { openItem, useOpen } from './ui.ts';
import { isIn } from './withPlan.ts';

/** Why a name cannot be this gear's. */
function nameError(item: KitItem, name: string): string | null {
  if (name === '' || name.length > LONGEST_NAME) return `Allowed: 1 to ${LONGEST_NAME} characters.`;
  const other = named(currentKit(), item.kind, name);
  return other && other.id !== item.id ? `The kit has ${oneOf(item.kind)} of this name already.` : null;
}

function NameBox({ item }: { item: KitItem }) {
  const [text, setText] = useState<string | null>(null);
  const error = text === null ? null : nameError(item, text);
  const type = (name: string) => {
    setText(name);
    if (nameError(item, name) === null) editKit(put({ ...item, name }));
  };
  return (
    <EntryBox
      label="Name"
      hint="What you call it."
      text={text ?? item.name}
      error={error}
      onText={type}
      onLeave={() => error === null && setText(null)}
      onRestore={() => setText(null)}
    />
  );
}

function TakeButton({ item }: { item: KitItem }) {
  const there = usePlan((plan) => isIn(plan, item));
  return (
    <button
      type="button"
      className={`btn take${there ? ' there' : ''}`}
      aria-disabled={there}
      aria-label={`${there ? 'In the plan' : 'Put into the plan'}: ${item.name}`}
      onClick={() => takeIntoPlan(item)}
    >
      {there && <StandingIcon standing="fine" size={14} />}
      {there ? 'In the plan' : 'Put into the plan'}
    </button>
  );
}

export const KitItemRow = memo(function KitItemRow({ item }: { item: KitItem }) {
  const open = useOpen(item.id);
  const line = itemText(item);
  const body = `kit-${item.id}`;
  return (
    <li className="kit-item">
      <div className="kit-head">
        <button
          type="button"
          className="h"
          aria-expanded={open}
          aria-controls={body}
          onClick={() => openItem(open ? null : item.id)}
        >
          {open ? <ChevronDown /> : <ChevronRight />}
          <b>{item.name}</b>
          {line !== item.name && <span className="s">{line}</span>}
        </button>
        <TakeButton item={item} />
      </div>
      <div id={body} hidden={!open} className="kit-figures">
        {open && (
          <>
            <div className="kit-name">
              <NameBox item={item} />
              <button
                type="button"
                className="btn"
                aria-label={`Duplicate: ${item.name}`}
                onClick={() => duplicate(item)}
              >
                Duplicate
              </button>
              <button
                type="button"
                className="btn"
                aria-label={`Delete from the kit: ${item.name}`}
                onClick={() => deleteItem(item)}
              >
                <CrossIcon /> Delete
              </button>
            </div>
            <ItemFields item={item} />
          </>
        )}
      </div>
    </li>
  );
});
