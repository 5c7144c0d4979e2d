/** Edits of the production's passes: what refers to them by name goes with them. */
import type { Action, Plan } from '../../engine/plan/schema.ts';

/** All lists of passes in the shots, each made anew; null stays null: all of the production's. */
function withNames(plan: Plan, edit: (names: string[]) => string[]): Plan['sheet']['shots'] {
  const names = (list: string[] | null) => list && edit(list);
  const ofAction = (action: Action): Action => ({
    ...action,
    passes: names(action.passes),
    details: action.details.map((detail) => ({ ...detail, passes: names(detail.passes) })),
  });
  return plan.sheet.shots.map((shot) => ({ ...shot, actions: shot.actions.map(ofAction) }));
}

export function renamePass(plan: Plan, index: number, name: string): Plan {
  const old = plan.sheet.passes[index]?.name;
  const passes = plan.sheet.passes.map((pass, p) => (p === index ? { ...pass, name } : pass));
  const shots = withNames(plan, (names) => names.map((one) => (one === old ? name : one)));
  return { ...plan, sheet: { ...plan.sheet, passes, shots } };
}

/** Takes a pass out of the production and of every exposure. */
export function removePass(plan: Plan, index: number): Plan {
  const gone = plan.sheet.passes[index]?.name;
  const passes = plan.sheet.passes.filter((_, p) => p !== index);
  const shots = withNames(plan, (names) => names.filter((one) => one !== gone));
  return { ...plan, sheet: { ...plan.sheet, passes, shots } };
}
