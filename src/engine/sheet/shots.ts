/** The shots of a production; those of a plan without any: its clip as one shot. */
import { paceOf } from '../pacing/pacing.ts';
import { type Action, memberSchemas, type Plan, type Shot } from '../plan/schema.ts';

/** Longest action and longest name that a plan file may have. */
const LONGEST_ACTION = 1_000_000;
const LONGEST_NAME = 40;

/** The plan's clip as actions: one, or some more if it is longer than an action may be. */
function clipActions(plan: Plan): Action[] {
  const hold = plan.clip.holdFrames;
  const most = Math.floor(LONGEST_ACTION / hold) * hold;
  const actions: Action[] = [];
  for (let left = paceOf(plan).frames * hold; left > 0; left -= most)
    actions.push(memberSchemas.action.parse({ frames: Math.min(left, most), holds: [hold] }));
  return actions;
}

function clipShot(plan: Plan): Shot {
  // A name is cut between characters, never within one.
  let name = '';
  for (const character of plan.title) {
    if (name.length + character.length > LONGEST_NAME) break;
    name += character;
  }
  return memberSchemas.shot.parse({ name: name || 'Shot 1', actions: clipActions(plan) });
}

const stoodFor = new WeakMap<Plan, Shot[]>();

/** The shots of a production. A plan without shots stands for one shot with one action: its clip. */
export function shotsOf(plan: Plan): readonly Shot[] {
  if (plan.sheet.shots.length > 0) return plan.sheet.shots;
  const known = stoodFor.get(plan) ?? [clipShot(plan)];
  stoodFor.set(plan, known);
  return known;
}
