/** The ways out of one finding: a button each, cheapest first. */
import { memo } from 'react';
import { type Finding, keyOf } from '../../engine/findings/types.ts';
import type { Fix } from '../../engine/fixes/types.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { ofFix } from '../../engine/working/names.ts';
import { usePlan } from '../store/plan.ts';
import { Pieces } from '../working/Pieces.tsx';
import type { Piece } from '../working/sentence.ts';
import { useFixes } from './fixStore.ts';
import { lookAt, lookAway } from './previewing.ts';
import { takeFix } from './taking.ts';

interface FixButtonProps {
  /** Name of the figures of what it costs, up to the last word. */
  named: (figure: string) => string;
  fix: Fix;
  /** The plan for which it was worked out. */
  plan: Plan;
  /** Whether that is still the plan. */
  current: boolean;
  at: number;
}

/** What a fix costs, in words. @param named - names of its figures; null for words alone */
function costPieces({ cost: { parts } }: Fix, named: FixButtonProps['named'] | null): Piece[] {
  if (parts.length === 0) return ['costs nothing'];
  return parts.flatMap(({ text, of }, n): Piece[] => {
    const piece = of === null || named === null ? text : { text, of: named(`cost.${of}`) };
    return n > 0 ? [', ', piece] : [piece];
  });
}

function FixButton({ named, fix, plan, current, at }: FixButtonProps) {
  const { label } = fix;
  return (
    <li className="way">
      <button
        type="button"
        className="fix"
        aria-disabled={!current}
        onClick={() => current && takeFix(plan, fix, at)}
        onPointerEnter={({ pointerType }) => current && pointerType !== 'touch' && lookAt(plan, fix)}
        onPointerLeave={lookAway}
        onFocus={({ target }) => current && target.matches(':focus-visible') && lookAt(plan, fix)}
        onBlur={lookAway}
      >
        {label}
      </button>
      <span>
        <Pieces pieces={costPieces(fix, current ? named : null)} about={`cost of ${label}`} />
      </span>
    </li>
  );
}

export const Ways = memo(function Ways({ finding, at }: { finding: Finding; at: number }) {
  const plan = usePlan((present) => present);
  const remedy = useFixes(({ remedies }) => remedies.get(keyOf(finding)));
  const over = useFixes(({ rested, failed }) => rested === plan || failed !== null);
  const current = remedy?.plan === plan;
  if (over && !current) return null;
  if (!remedy) return <p className="s">Looking for ways out…</p>;
  const { fixes, whyNone } = remedy.is;
  if (fixes.length === 0) return <p className="s">{whyNone}</p>;
  return (
    <ul className="plain fixes" aria-label="Ways out">
      {fixes.map((fix, n) => (
        <FixButton
          key={fix.label}
          named={(figure) => ofFix(keyOf(finding), n + 1, figure)}
          {...{ fix, plan: remedy.plan, current, at }}
        />
      ))}
    </ul>
  );
});
