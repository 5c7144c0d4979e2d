/**
 * A link that carries a whole plan in its fragment, which browsers keep to themselves: `#p1.` and the compressed plan
 * file, without what the defaults fill in again.
 */
import { MAX_PLAN_CHARACTERS, type Parsed, parsePlan } from '../engine/plan/parse.ts';
import type { Plan } from '../engine/plan/schema.ts';
import { sparsePlan } from '../engine/plan/sparse.ts';
import { PackingError, packed, unpacked } from './deflate.ts';

/** The form of the fragment that is written and read. */
const VERSION = 1;

/** Longest fragment that is made or read, in characters. */
export const LONGEST_FRAGMENT = 64_000;

/** Longer links are cut by many programs on their way. Common practice, no source. */
export const OFTEN_CUT = 8000;

const FRAGMENT = /#p(\d{1,9})\.(\S*)$/;

/** Whether a text is a link that carries a plan, of whichever version, or its fragment; a plan file is none. */
export const isPlanLink = (text: string): boolean => /^[^\s{]*#p\d{1,9}\.\S*$/.test(text.trim());

/** The fragment that carries a plan, `#` included. It may be longer than {@link LONGEST_FRAGMENT}. */
export const planFragment = async (plan: Plan): Promise<string> =>
  `#p${VERSION}.${await packed(JSON.stringify(sparsePlan(plan)))}`;

const fail = (found: string, allowed: string): Parsed => ({
  ok: false,
  faults: [{ path: 'link', found, allowed }],
});

/**
 * Reads the plan that a link carries.
 * @param link - the link, or its fragment alone
 * @returns the plan, or all faults found; those of the link itself have the path `link`. Never throws.
 */
export async function readLink(link: string): Promise<Parsed> {
  const [fragment, version = '', word = ''] = FRAGMENT.exec(link.trim()) ?? [''];
  if (fragment === '') return fail('no plan', 'a link with #p1. and the plan in it');
  if (fragment.length > LONGEST_FRAGMENT)
    return fail(`${fragment.length} characters`, `at most ${LONGEST_FRAGMENT} characters`);
  if (Number(version) !== VERSION)
    return fail(`a link of version ${version}`, `version ${VERSION}; for a later one load the page anew`);
  try {
    return parsePlan(await unpacked(word, MAX_PLAN_CHARACTERS));
  } catch (error) {
    if (!(error instanceof PackingError)) throw error;
    return fail(error.message, 'the whole link as it was made: copy it once more');
  }
}
