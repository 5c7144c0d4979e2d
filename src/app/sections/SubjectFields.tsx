/** What the camera looks at, folded to where that is. */
import { Suspense } from 'react';
import { fetched } from '../fetched.tsx';
import { subjectText } from '../rig/rigText.ts';
import { usePlan } from '../store/plan.ts';
import { More } from './parts.tsx';

const SubjectBody = fetched('The fields of the subject', () =>
  import('./rigBodies.ts').then((part) => part.SubjectBody),
);

export function SubjectFields() {
  const summary = usePlan((plan) => subjectText(plan.subject));
  return (
    <More title="Subject" summary={summary}>
      <Suspense>
        <SubjectBody />
      </Suspense>
    </More>
  );
}
