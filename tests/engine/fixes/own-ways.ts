/** A few ways out of the tests' own, so that the trying is tested without what the subjects know. */
import type { FindingId } from '../../../src/engine/findings/types.ts';
import type { Way, WaysOut } from '../../../src/engine/fixes/types.ts';
import { WAYS } from '../../../src/engine/fixes/ways.ts';
import { type Edit, editAll, setAt } from '../../../src/engine/plan/paths.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';

export type Ways = Readonly<Record<FindingId, WaysOut>>;

/** A way in plain edits. */
export const wayOf = (kind: string, steps: number, first: number, at: (n: number) => Plan | null): Way => ({
  kind,
  steps,
  first,
  at,
  label: () => kind,
  needs: () => null,
});

const held = ({ pacing }: Plan): Plan['pacing']['workedOut'] =>
  pacing.workedOut === 'interval' ? 'clip' : pacing.workedOut;

/** Longer intervals, a dial step each. */
export const longer: WaysOut = (_finding, plan, { totals }) => {
  const at = (n: number) =>
    editAll(plan, [
      ['pacing.intervalS', totals.intervalS + n * plan.trigger.stepS],
      ['pacing.workedOut', held(plan)],
    ]);
  return [
    { ...wayOf('interval', 100_000, 1, at), label: ({ pacing }) => `Interval to ${pacing.intervalS} s` },
  ];
};

/** More of something that is counted. */
export const more =
  (kind: string, path: (about: string | null, plan: Plan) => string, most = 50): WaysOut =>
  (finding, plan) => {
    const at = (n: number) => setAt(plan, path(finding.about, plan), n + 1);
    return [{ ...wayOf(kind, most, 1, at), needs: () => `${kind} more to bring` }];
  };

export const packs = more('packs', (about, { power }) => {
  const index = power.sources.findIndex(({ name }) => name === about);
  return `power.sources.${index}.count`;
});

export const cards: WaysOut = (_finding, plan) => {
  const [card] = plan.storage.cards;
  const at = (n: number): Plan | null =>
    card
      ? setAt(plan, 'storage.cards', [
          ...plan.storage.cards,
          ...Array.from({ length: n }, (_, i) => ({ ...card, name: `More ${i}` })),
        ])
      : null;
  return [{ ...wayOf('cards', 60, 1, at), needs: () => 'cards to bring' }];
};

/** Less of a number, in tenths of it. */
const less =
  (kind: string, path: string, of: (plan: Plan) => number): WaysOut =>
  (_finding, plan) => {
    const at = (n: number) => setAt(plan, path, (of(plan) * (10 - n)) / 10);
    return [{ ...wayOf(kind, 10, 1, at), needs: () => `${kind} is less` }];
  };

export const guard = less('guard', 'cycle.guardS', ({ cycle }) => cycle.guardS);
export const settle = less('settle', 'move.settleS', ({ move }) => move.settleS);

/** The same edits whatever is wrong. */
export const edits =
  (kind: string, ...list: Edit[]): WaysOut =>
  (_finding, plan) => [wayOf(kind, 1, 1, () => editAll(plan, list))];

export const all =
  (...ways: WaysOut[]): WaysOut =>
  (finding, plan, made) =>
    ways.flatMap((way) => way(finding, plan, made));

const NONE = Object.fromEntries(Object.keys(WAYS).map((id) => [id, () => []])) as unknown as Ways;

/** A registry with these ways and no others. */
export const only = (some: Partial<Ways>): Ways => ({ ...NONE, ...some });

export const FEW: Ways = only({
  'cycle-overrun': all(longer, settle),
  'camera-not-ready': longer,
  'guard-used': all(longer, settle, guard),
  'buffer-fills': longer,
  'source-short': packs,
  'swap-does-not-fit': longer,
  'card-full': cards,
  'card-change-does-not-fit': longer,
  'interval-not-settable': longer,
  speed: longer,
  'motion-blur': longer,
  'no-clip': edits('handles', ['clip.handlesFrames', 0]),
});
