/** Ways out of what the energy says. */

import { longerIntervals } from '../cycle/fixes.ts';
import { handsShortS } from '../exposure/fixes.ts';
import { counted } from '../findings/words.ts';
import { numberIn, stepsOf, switchWay, wordIn } from '../fixes/build.ts';
import { fasterRun, shorterRun } from '../fixes/common-ways.ts';
import type { SubjectWays, Way, WaysOut } from '../fixes/types.ts';
import type { Edit } from '../plan/paths.ts';
import type { Plan } from '../plan/schema.ts';

/** More packs to bring. @param wanted - packs in all that should just suffice */
function morePacks(plan: Plan, name: string, wanted: number): Way[] {
  const { power } = plan;
  const index = power.sources.findIndex((source) => source.name === name);
  const brought = power.sources[index]?.count ?? 0;
  return stepsOf(plan, {
    kind: `packs:${name}`,
    path: `power.sources.${index}.count`,
    by: 1,
    wanted,
    label: (count) => `${counted(count - brought, 'pack')} more of ${name}`,
    needs: (count) => `${counted(count - brought, 'pack')} more to bring, charged`,
  });
}

/** What a source feeds, fed from another one that is there. */
function fedFromOthers(plan: Plan, name: string): Way[] {
  const { sources, loads } = plan.power;
  const feeds = (from: string): Edit[] => [
    ...loads.flatMap(({ source }, i): Edit[] => (source === name ? [[`power.loads.${i}.source`, from]] : [])),
    ...plan.rig.axes.flatMap(({ source }, i): Edit[] =>
      source === name ? [[`rig.axes.${i}.source`, from]] : [],
    ),
  ];
  // What has the mains needs no pack at all.
  const others = sources
    .filter((source) => source.name !== name)
    .sort((a, b) => Number(b.kind === 'mains') - Number(a.kind === 'mains'));
  return others.flatMap((other) =>
    switchWay(plan, feeds(other.name), {
      kind: `feed:${name}>${other.name}`,
      label: () => `Feed it all from ${other.name}`,
      needs: `a cable, and a converter where the volts differ`,
    }),
  );
}

const short: WaysOut = (finding, plan, made) => {
  const name = wordIn(finding, 'source');
  const [needed, brought] = [numberIn(finding, 'needed'), numberIn(finding, 'brought')];
  return [
    ...morePacks(plan, name, needed),
    ...fedFromOthers(plan, name),
    ...shorterRun(plan, made, finding.elapsedS ?? 0),
    ...fasterRun(plan, made, (made.totals.dialS * brought) / needed),
  ];
};

const swapDoesNotFit: WaysOut = (finding, plan, made) => [
  ...fedFromOthers(plan, wordIn(finding, 'source')),
  ...longerIntervals(
    plan,
    made,
    handsShortS(made, finding.frame, numberIn(finding, 'swapS')),
    (finding.frame ?? 2) - 1,
  ),
  ...shorterRun(plan, made, (finding.elapsedS ?? 0) - made.totals.intervalS),
];

export const energyWays: SubjectWays<'source-short' | 'swap-does-not-fit' | 'flight-limit'> = {
  'source-short': short,
  'swap-does-not-fit': swapDoesNotFit,
  'flight-limit': () => [],
};
