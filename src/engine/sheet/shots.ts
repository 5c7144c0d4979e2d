/** The shots of a production; those of a plan without any: its clip as one shot. */

import { paceOf } from '../pacing/pacing.ts';
import { MAX_FRAMES, MAX_NAME } from '../plan/constants.ts';
import { type Action, memberSchemas, type Plan, type Shot, type Track } from '../plan/schema.ts';

/** The plan's clip as actions: one, or some more if it is longer than an action may be. */
function clipActions(plan: Plan): Action[] {
  const hold = plan.clip.holdFrames;
  const most = Math.floor(MAX_FRAMES / hold) * hold;
  const actions: Action[] = [];
  for (let left = paceOf(plan).frames * hold; left > 0; left -= most)
    actions.push(memberSchemas.action.parse({ frames: Math.min(left, most), holds: [hold] }));
  return actions;
}

function clipShot(plan: Plan): Shot {
  // A name is cut between characters, never within one.
  let name = '';
  for (const character of plan.title) {
    if (name.length + character.length > MAX_NAME) break;
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

/** The tracks of a shot: its own, or the plan's if it has none. */
export const tracksOf = (plan: Plan, shot: Shot): readonly Track[] =>
  shot.tracks.length > 0 ? shot.tracks : plan.move.tracks;
