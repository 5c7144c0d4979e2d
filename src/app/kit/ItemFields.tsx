/** The figures of a piece of gear, in the same fields and with the same checks as in a plan. */
import { type KeyboardEvent, useEffect, useState } from 'react';
import { getAt } from '../../engine/plan/paths.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { exposureBytes } from '../../engine/storage/storage.ts';
import { Choice, FedBy, Flag, Segments } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { CapacityCurve } from '../sections/CapacityCurve.tsx';
import { createDesk, type Desk } from '../store/desk.ts';
import { infoAt } from '../store/infos.ts';
import { DeskContext, usePlan } from '../store/plan.ts';
import { put } from './edits.ts';
import { figuresIn, type KitItem, planWith, sameGear } from './entry.ts';
import { KINDS } from './kinds.ts';
import { currentKit, editKit } from './kitStore.ts';
import { Measures } from './Measures.tsx';

const sourceNames = (): string[] =>
  currentKit().items.flatMap(({ kind, name }) => (kind === 'source' ? [name] : []));

/** A plan of its own for the gear; what changes in it is kept, and what changes in the kit shows in it. */
function useDeskOf(item: KitItem): Desk {
  const [desk] = useState(() => createDesk(planWith(item, sourceNames())));
  const { id, kind } = item;
  useEffect(
    () =>
      desk.store.subscribe(({ plan }) => {
        const there = currentKit().items.find((one) => one.id === id);
        const next = there && { ...there, figures: figuresIn(plan, kind) };
        if (next && !sameGear(there, next)) editKit(put(next));
      }),
    [desk, id, kind],
  );
  useEffect(() => {
    const figures = figuresIn(desk.store.getState().plan, kind);
    if (!sameGear(item, { ...item, figures })) desk.replace(planWith(item, sourceNames()));
  }, [desk, kind, item]);
  return desk;
}

/** Fields that say nothing beside what stands in another one. */
function isIdle(field: string, { camera, rig: { axes }, power: { sources } }: Plan): boolean {
  if (field === 'camera.noiseReductionFromS') return !camera.noiseReduction;
  if (field === 'rig.axes.0.overrun') return axes[0]?.arrive === 'eitherWay';
  return field.startsWith('power.sources.0.') && !field.endsWith('.kind') && sources[0]?.kind === 'mains';
}

/** What counts where a field is left empty. */
function workedOutOf(field: string, plan: Plan): number | undefined {
  const [source, axis] = [plan.power.sources[0], plan.rig.axes[0]];
  if (field === 'camera.frameBytes') return exposureBytes(plan);
  if (field === 'power.sources.0.energyWh' && source) return (source.voltageV * source.capacityMah) / 1000;
  return field === 'rig.axes.0.overrun' && axis ? 2 * axis.backlash : undefined;
}

function Field({ field }: { field: string }) {
  const plan = usePlan((present) => present);
  const { words } = infoAt(field);
  if (isIdle(field, plan)) return null;
  if (field.endsWith('.capacityCurve')) return <CapacityCurve index={0} />;
  if (field.endsWith('.source')) return <FedBy path={field} />;
  if (words) return words.length === 2 ? <Segments path={field} /> : <Choice path={field} />;
  if (typeof getAt(plan, field) === 'boolean') return <Flag path={field} />;
  return <NumberField path={field} axisUnit={plan.rig.axes[0]?.unit} workedOut={workedOutOf(field, plan)} />;
}

/** Escape takes back what is being typed and leaves the dialog open; undo and redo are those of these fields. */
function onKeys(event: KeyboardEvent, desk: Desk): void {
  const path = (event.target as HTMLElement).getAttribute('data-path') ?? '';
  const typed = desk.drafts.store.getState().drafts[path] !== undefined || desk.inGesture(path);
  if (event.key === 'Escape' && path !== '' && typed) event.preventDefault();
  if (path === '' || !(event.ctrlKey || event.metaKey)) return;
  const key = event.key.toLowerCase();
  if (key !== 'z' && key !== 'y') return;
  event.preventDefault();
  if (key === 'y' || event.shiftKey) desk.redo();
  else desk.undo();
}

export function ItemFields({ item }: { item: KitItem }) {
  const desk = useDeskOf(item);
  return (
    <DeskContext value={desk}>
      <div className="grid" onKeyDownCapture={(event) => onKeys(event, desk)}>
        {KINDS[item.kind].fields.map((field) => (
          <Field key={field} field={field} />
        ))}
        <Measures kind={item.kind} desk={desk} />
      </div>
    </DeskContext>
  );
}
