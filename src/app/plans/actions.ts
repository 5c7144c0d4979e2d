/** What one does with kept plans. Nothing that is kept is overwritten, and what was deleted can be put back. */
import { faultSentence } from '../../engine/plan/fault.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { plural } from '../format/numbers.ts';
import { refuse, say } from '../kit/ui.ts';
import { fetchChecks } from '../store/checker.ts';
import { enter, newId, presentEntry } from '../store/entries.ts';
import type { Listed } from '../store/facts.ts';
import { handOver } from '../store/files.ts';
import { keepable } from '../store/keepable.ts';
import { me, tell, writeNewest } from '../store/keeping.ts';
import { readKept } from '../store/kept.ts';
import { DEMOS, demoPlan, openPlan } from '../store/opening.ts';
import { changeField, endGesture, planStore } from '../store/plan.ts';
import { look, plansNow, setDeleted } from './listStore.ts';
import { writePlans } from './plansFile.ts';
import { allRecords, changeRecords, keptOf, type PlanRecord, textOf } from './records.ts';
import { freeTitle } from './words.ts';

export const quoted = (title: string): string => `‘${title}’`;

/** Why the browser did not do it. */
export const reason = (error: unknown): string =>
  (error as DOMException | null)?.name === 'QuotaExceededError'
    ? 'This browser has no room left. Delete plans that are no longer needed, or save them as a file first.'
    : 'This browser does not store it.';

/** Does something with what is kept; says why if the browser refuses. */
async function attempt(what: string, work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (error) {
    refuse(`${what} ${reason(error)}`);
  }
  await look();
}

/** A kept plan, or null after saying why it cannot be read. */
async function planOf({ id, title }: Listed): Promise<{ plan: Plan; kept: unknown } | null> {
  const kept = await keptOf(id);
  const plan = await readKept(kept);
  if (plan) return { plan, kept };
  const read = (await fetchChecks()).parsePlan(textOf(kept));
  const lines = read.ok ? [] : read.faults.map(faultSentence);
  const why = kept === undefined ? 'is no longer kept.' : 'cannot be read. It stays as it is.';
  refuse(`${quoted(title)} ${why}`, lines);
  return null;
}

/** Whether a kept plan is on screen, and this tab keeps it. */
function isHere({ id }: Listed): boolean {
  const present = presentEntry();
  return present.id === id && !present.elsewhere;
}

/** Shows a kept plan. @returns whether it is on screen */
export async function open(listed: Listed): Promise<boolean> {
  const { id } = listed;
  if (isHere(listed)) return true;
  let shown = false;
  await attempt(`${quoted(listed.title)} was not opened.`, async () => {
    const found = await planOf(listed);
    if (!found) return;
    const { plan } = found;
    openPlan(enter(plan, { id, kept: plan }));
    shown = true;
    await writeNewest();
  });
  return shown;
}

/** Tells other tabs that a plan is no longer what they have. */
const tellGone = (id: string) => tell({ id, by: me });

/** Gives a kept plan another title. */
export const rename = (listed: Listed, title: string): Promise<void> =>
  attempt(`${quoted(listed.title)} keeps its title.`, async () => {
    const { id } = listed;
    if (isHere(listed)) {
      await fetchChecks();
      endGesture();
      changeField('title', title);
      endGesture();
      return writeNewest();
    }
    const found = await planOf(listed);
    if (!found) return;
    const renamed = { ...listed, title, changedMs: Date.now(), by: '' };
    await changeRecords([{ listed: renamed, kept: keepable({ ...found.plan, title }) }]);
    tellGone(id);
  });

/** Keeps a copy beside a kept plan. */
export const duplicate = (listed: Listed): Promise<void> =>
  attempt(`${quoted(listed.title)} was not duplicated.`, async () => {
    await writeNewest();
    const found = await planOf(listed);
    if (!found) return;
    const title = freeTitle(
      (plansNow().list ?? []).map((one) => one.title),
      listed.title,
    );
    const copy = { ...listed, title, id: newId(), changedMs: Date.now(), by: '' };
    await changeRecords([{ listed: copy, kept: keepable({ ...found.plan, title }) }]);
    say(`${quoted(title)} is a copy of ${quoted(listed.title)}.`, () => void removeAll([copy.id]));
  });

const removeAll = (ids: readonly string[]): Promise<void> =>
  attempt('Nothing was removed.', async () => {
    await changeRecords([], ids);
    for (const id of ids) tellGone(id);
  });

/** Shows something else in place of a plan that is about to go: another kept one, else a demo. */
async function leave(id: string): Promise<void> {
  const others = (plansNow().list ?? []).filter((one) => one.id !== id);
  for (const other of others) {
    const plan = await readKept(await keptOf(other.id));
    if (!plan) continue;
    openPlan(enter(plan, { id: other.id, kept: plan }));
    return writeNewest();
  }
  const plan = await demoPlan(DEMOS[0]);
  if (plan) openPlan(plan);
}

/** Takes a plan from the shelf; it can be put back until the page is closed. */
export const remove = (listed: Listed): Promise<void> =>
  attempt(`${quoted(listed.title)} was not deleted.`, async () => {
    await writeNewest();
    const record = { listed, kept: await keptOf(listed.id) };
    if (record.kept === undefined) return;
    if (isHere(listed)) {
      await leave(listed.id);
      // An undo would lead back into the deleted plan.
      planStore.temporal.getState().clear();
    }
    await changeRecords([], [listed.id]);
    tellGone(listed.id);
    setDeleted([...plansNow().deleted, record]);
    say(`${quoted(listed.title)} is deleted.`, () => void putBack([record]));
    // There may be room again for what could not be kept.
    await writeNewest();
  });

/** Puts deleted plans back where they were. */
export const putBack = (records: readonly PlanRecord[]): Promise<void> =>
  attempt('The plan was not put back.', async () => {
    await changeRecords(records.map(({ listed, kept }) => ({ listed: { ...listed, by: '' }, kept })));
    setDeleted(plansNow().deleted.filter((record) => !records.includes(record)));
  });

/** Hands all kept plans over as one file. */
export const saveAll = (): Promise<void> =>
  attempt('The plans were not saved.', async () => {
    await writeNewest();
    const all = await allRecords();
    const texts = all.map(({ listed, kept }) => ({ text: textOf(kept), changedMs: listed.changedMs }));
    handOver(`escapement-plans-${new Date().toISOString().slice(0, 10)}.json`, writePlans(texts));
    say(`${plural(all.length, 'plan')} saved as one file.`);
  });

export { removeAll };
