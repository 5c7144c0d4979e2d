/** What the camera looks at: where it is, whether it is kept framed, and how fast the picture may go by. */
import { Flag } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { hasKind } from '../rig/rigText.ts';
import { subjectFacts } from '../rig/subjectFacts.ts';
import { usePlan, useSchedule } from '../store/plan.ts';
import { Facts } from './parts.tsx';

const Figures = ({ names }: { names: readonly string[] }) =>
  names.map((name) => <NumberField key={name} path={`subject.${name}`} />);

function Outcome() {
  const plan = usePlan((present) => present);
  const { columns, rig } = useSchedule();
  return <Facts of={subjectFacts(plan, columns.axes, rig.aim)} />;
}

export function SubjectBody() {
  const used = usePlan((plan) => plan.subject.used);
  const turns = usePlan((plan) => hasKind(plan.rig, 'turntable'));
  const continuous = usePlan((plan) => plan.move.mode === 'continuous');
  return (
    <>
      <Flag path="subject.used" />
      {used && (
        <>
          <Figures names={['rightMm', 'forwardMm', 'heightMm', 'backgroundM']} />
          {turns && <Flag path="subject.onTurntable" />}
          <Flag path="subject.aimed" />
          <Outcome />
          <Figures names={continuous ? ['crossingMinS', 'blurMaxPx'] : ['crossingMinS']} />
        </>
      )}
    </>
  );
}
