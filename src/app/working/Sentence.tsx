/** The sentence of a finding, or the verdict: its figures open their workings, once these have been fetched. */
import { memo, Suspense } from 'react';
import type { Finding } from '../../engine/findings/types.ts';
import { fetched } from '../fetched.tsx';
import { useSchedule } from '../store/plan.ts';

interface SentenceProps {
  finding?: Finding;
}

function Plain({ finding }: SentenceProps) {
  const { verdict } = useSchedule();
  return finding?.message ?? verdict;
}

const Stated = fetched(null, () =>
  import('./WorkingBody.tsx').then(
    (part) => part.Stated,
    () => Plain,
  ),
);

export const Sentence = memo(function Sentence(props: SentenceProps) {
  return (
    <Suspense fallback={<Plain {...props} />}>
      <Stated {...props} />
    </Suspense>
  );
});
