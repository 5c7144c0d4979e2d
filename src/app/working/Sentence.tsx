/** The sentence of a finding, or the verdict: its figures open their workings, once these have been fetched. */
import { memo, Suspense } from 'react';
import type { Finding } from '../../engine/findings/types.ts';
import { fetched } from '../fetched.tsx';
import { useSchedule } from '../store/plan.ts';

const Stated = fetched(null, () => import('./WorkingBody.tsx').then((part) => part.Stated));

export const Sentence = memo(function Sentence({ finding }: { finding?: Finding }) {
  const { verdict } = useSchedule();
  return (
    <Suspense fallback={finding?.message ?? verdict}>
      <Stated {...(finding && { finding })} />
    </Suspense>
  );
});
