/** A plan's link at the prompt. */
import type { Plan } from '../engine/plan/schema.ts';
import { LONGEST_FRAGMENT, OFTEN_CUT, planFragment } from '../outputs/share-link.ts';

const tooLong = (length: number): string | null => {
  if (length > LONGEST_FRAGMENT)
    return `The link has ${length} characters, more than the ${LONGEST_FRAGMENT} read`;
  return length > OFTEN_CUT ? `The link has ${length} characters, which many programs cut` : null;
};

/**
 * The link to the plan; says so, beside what is printed, where it may not arrive whole.
 * @param page - address that it begins with; empty for the fragment alone
 */
export async function* linkText(plan: Plan, page: string): AsyncGenerator<string, void, undefined> {
  const link = page + (await planFragment(plan));
  const warning = tooLong(link.length);
  if (warning) process.stderr.write(`${warning}: share the file instead\n`);
  yield `${link}\n`;
}
