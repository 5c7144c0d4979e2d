/** How the figures came about that the finding of lamps on the mains states. */
import type { Finding } from '../findings/types.ts';
import { percent } from '../findings/words.ts';
import { type LampShutter, nearestFlickerFree } from '../light/lamps.ts';
import { ofFrame, sameAs, term, type Worked } from '../working/make.ts';
import { numberOf, type Said, type Sayer } from '../working/said.ts';
import { fixedLadder, type Rung } from './ladder.ts';
import { bracketS } from './shutter.ts';
import { rippleAt } from './working.ts';

/** The settings at which frames differ most, and the first frame with them, counted from 0. */
function worstOf({ plan, made }: Worked, finding: Finding): { rung: Rung; k: number } | null {
  const openS = numberOf(finding, 'openS');
  const rungs = made.exposure?.rungs ?? fixedLadder(plan).rungs;
  for (const rung of rungs) {
    const k = made.columns.rung ? made.columns.rung.indexOf(rung.index) : 0;
    if (k >= 0 && bracketS(plan, rung.openS).includes(openS)) return { rung, k };
  }
  return null;
}

const openSaid = (finding: Finding, k: number, one: boolean): Said => {
  const openS = numberOf(finding, 'openS');
  const text = /(?<=really ).+?(?=, frames)/.exec(finding.message)?.[0] ?? '';
  if (one) return { text, of: ofFrame(k, 'openS') };
  const words = 'exposure of the bracket that leaves most';
  return {
    text,
    what: 'openS',
    draft: () => sameAs('Shutter open', words, openS, 's', null, { frame: k + 1 }),
  };
};

/** What a shutter time next to it would leave. */
const better = ({ plan }: Worked, mainsHz: number, shutter: LampShutter, n: number): Said => ({
  text: percent(shutter.changeShare),
  what: `better${n + 1}`,
  draft: () => {
    const draft = rippleAt(
      plan,
      mainsHz,
      term('openS', `shutter open, marked ${shutter.mark}`, shutter.openS, 's'),
    );
    return { ...draft, title: `${draft.title}, at ${shutter.mark}` };
  },
});

export const rippleSays: Sayer = (of, finding) => {
  const worst = worstOf(of, finding);
  if (worst === null) return [];
  const { rung, k } = worst;
  const marks = nearestFlickerFree(of.plan, rung.shutterS);
  return [
    openSaid(finding, k, of.plan.exposure.bracketCount === 1),
    { text: percent(numberOf(finding, 'worstChangeShare')), of: ofFrame(k, 'rippleShare') },
    ...marks.map((shutter, n) => better(of, numberOf(finding, 'mainsHz'), shutter, n)),
  ];
};
