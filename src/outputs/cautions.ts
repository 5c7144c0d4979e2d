/** The usual cautions of the trade, where the plan gives cause for them. Common practice, no source. */
import { balanceCautions } from '../engine/balance/cautions.ts';
import type { Plan } from '../engine/plan/schema.ts';
import type { Schedule } from '../engine/schedule-types.ts';

const when = (cause: boolean, caution: string): string[] => (cause ? [caution] : []);

/** Cautions for one plan, the gravest first; the last always says who decides. */
export function cautionsOf(plan: Plan, { rig }: Schedule): string[] {
  const { axes } = plan.rig;
  const { sources } = plan.power;
  // An arm's own cautions say it already.
  const moves = plan.move.mode !== 'still' && axes.length > 0 && !rig.balance?.arm;
  return [
    ...(rig.balance ? balanceCautions(rig.balance).map(({ text }) => text) : []),
    ...when(
      rig.balance === null && axes.some(({ kind }) => kind === 'boom'),
      'Boom: keep everybody from under the arm and the counterweight. Balance it, tether it, weigh the tripod down.',
    ),
    ...when(
      moves,
      'Moving axes start by themselves: keep fingers, straps and cables out of the pinch points.',
    ),
    ...when(
      sources.some(({ kind }) => kind === 'mains'),
      'Mains: behind a residual-current device, dry, and never improvised. Fixed wiring is licensed work.',
    ),
    ...when(
      sources.some(({ kind }) => kind === 'battery'),
      'Lithium packs: cover the terminals, use no swollen or dented one, and ask the carrier before you fly.',
    ),
    ...when(
      plan.place.latitudeDeg !== null,
      'Outdoors: never look at the sun through an optical finder; a photographic ND filter is no eye protection. ' +
        'Mind roads, tides, night and heights.',
    ),
    'Local rules and licensed practice come first. The tool plans; the operator decides.',
  ];
}
