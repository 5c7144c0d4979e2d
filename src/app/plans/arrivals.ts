/** Brings plans in from files: what is new is added, nothing that is here is touched. */
import { faultSentence } from '../../engine/plan/fault.ts';
import { parsePlan, readPlan } from '../../engine/plan/parse.ts';
import { serialisePlan } from '../../engine/plan/serialise.ts';
import { schedule } from '../../engine/schedule.ts';
import { bytesText } from '../format/bytes.ts';
import { plural } from '../format/numbers.ts';
import { refuse, say } from '../kit/ui.ts';
import { newId } from '../store/entries.ts';
import { factsOf } from '../store/facts.ts';
import { keepable } from '../store/keepable.ts';
import { reason, removeAll } from './actions.ts';
import { look } from './listStore.ts';
import { type Arrived, type LeftOut, MAX_PLANS_BYTES, readPlans } from './plansFile.ts';
import { allRecords, changeRecords, type PlanRecord, textOf } from './records.ts';

/** A file that was picked, or the text of one. */
export type Arriving = Pick<File, 'name' | 'size' | 'text'>;

/** Faults of one plan that are listed; a broken one may have thousands. */
const MOST_FAULTS = 5;

interface Harvest {
  arrived: Arrived[];
  /** One line for each fault, with the name of its file and plan. */
  lines: string[];
  leftOut: number;
}

function faultLines(fileName: string, { name, faults }: LeftOut): string[] {
  const where = name === '' ? fileName : `${fileName}, ${name}`;
  const lines = faults.slice(0, MOST_FAULTS).map((fault) => `${where}: ${faultSentence(fault)}`);
  const more = faults.length - lines.length;
  return more > 0 ? [...lines, `${where}: ${plural(more, 'more fault')}`] : lines;
}

async function harvestOf(file: Arriving): Promise<Harvest> {
  if (file.size > MAX_PLANS_BYTES) {
    const found = `found ${bytesText(file.size)}; allowed: at most ${bytesText(MAX_PLANS_BYTES)}`;
    return { arrived: [], lines: [`${file.name}: ${found}`], leftOut: 1 };
  }
  const read = readPlans(await file.text(), { parsePlan, readPlan });
  if ('fault' in read)
    return { arrived: [], lines: [`${file.name}: ${faultSentence(read.fault)}`], leftOut: 1 };
  const lines = read.leftOut.flatMap((one) => faultLines(file.name, one));
  return { arrived: read.arrived, lines, leftOut: read.leftOut.length };
}

const turn = () => new Promise((resume) => setTimeout(resume));

/** Works their facts out, a few at a time: the page stays usable. */
async function recordsOf(arrived: readonly Arrived[], nowMs: number): Promise<PlanRecord[]> {
  const records: PlanRecord[] = [];
  for (const { plan, changedMs } of arrived) {
    if (records.length % 10 === 9) await turn();
    const facts = factsOf(plan, schedule(plan, { nowMs }));
    const listed = { ...facts, id: newId(), changedMs: changedMs ?? nowMs, by: '' };
    records.push({ listed, kept: keepable(plan) });
  }
  return records;
}

/** Those that are not kept already, each once. */
async function newOnes(arrived: readonly Arrived[]): Promise<Arrived[]> {
  const known = new Set((await allRecords()).map(({ kept }) => textOf(kept)));
  return arrived.filter(({ plan }) => {
    const text = serialisePlan(plan);
    const isNew = !known.has(text);
    known.add(text);
    return isNew;
  });
}

const countText = (added: number, known: number, leftOut: number): string =>
  [
    `${plural(added, 'plan')} added`,
    known > 0 && `${known} here already`,
    leftOut > 0 && `${leftOut} left out`,
  ]
    .filter(Boolean)
    .join(', ');

/** Adds the plans of files, each a plan file or a file of plans; says what was left out and why. */
export async function addFiles(files: readonly Arriving[]): Promise<void> {
  try {
    const harvests: Harvest[] = [];
    for (const file of files) harvests.push(await harvestOf(file));
    const arrived = harvests.flatMap((one) => one.arrived);
    const lines = harvests.flatMap((one) => one.lines);
    const leftOut = harvests.reduce((sum, one) => sum + one.leftOut, 0);
    const fresh = await newOnes(arrived);
    const records = await recordsOf(fresh, Date.now());
    await changeRecords(records);
    const text = `${countText(fresh.length, arrived.length - fresh.length, leftOut)}.`;
    const takeBack = () => void removeAll(records.map(({ listed }) => listed.id));
    if (leftOut > 0 && fresh.length === 0) refuse(`${text} Nothing was changed.`, lines);
    else say(text, fresh.length > 0 ? takeBack : null, lines);
  } catch (error) {
    refuse(`No plan was added. ${reason(error)}`);
  }
  await look();
}
