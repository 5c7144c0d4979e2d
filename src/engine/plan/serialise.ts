import { PLAN_FORMAT, PLAN_VERSION } from './constants.ts';
import type { Plan } from './schema.ts';

/** Members of a list that lie together, and their text. */
interface Chunk {
  members: readonly object[];
  text: string;
}

/** By their first member. */
const chunks = new WeakMap<object, Chunk>();

function textOf(members: readonly object[]): string {
  const [first = {}] = members;
  const known = chunks.get(first);
  if (known?.members.length === members.length && known.members.every((member, m) => member === members[m]))
    return known.text;
  // As deep as in the file, without the brackets around it.
  const text = JSON.stringify([[members]], null, 2).slice(12, -12);
  chunks.set(first, { members, text });
  return text;
}

/**
 * A list of the sheet as it stands in the file. A sheet may have tens of thousands of members, and a plan is put into
 * text at every edit, which leaves most of them: so many at a time are put into text together, once.
 */
function listText(list: readonly object[], together: number): string {
  const texts: string[] = [];
  for (let m = 0; m < list.length; m += together) texts.push(textOf(list.slice(m, m + together)));
  return list.length === 0 ? '[]' : `[\n${texts.join(',\n')}\n    ]`;
}

/** The plan as the text of a plan file, indented, with a line end at the end. */
export function serialisePlan(plan: Plan): string {
  const { shots, ticks } = plan.sheet;
  // No text of a plan has such a sign in it.
  const sheet = { ...plan.sheet, shots: '\0shots', ticks: '\0ticks' };
  const text = JSON.stringify({ ...plan, sheet, format: PLAN_FORMAT, version: PLAN_VERSION }, null, 2);
  const parts = text.split(/("\\u0000(?:shots|ticks)")/);
  const whole = parts.map((part) => {
    if (part === '"\\u0000shots"') return listText(shots, 1);
    return part === '"\\u0000ticks"' ? listText(ticks, 256) : part;
  });
  return `${whole.join('')}\n`;
}
