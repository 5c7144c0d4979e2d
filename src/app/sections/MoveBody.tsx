/** How the rig moves: its tracks, and what its single moves are like. */
import { Choice, Segments } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { usePlan } from '../store/plan.ts';
import { Tracks } from '../tracks/Tracks.tsx';
import { RingingFields } from './RingingFields.tsx';
import { SubjectFields } from './SubjectFields.tsx';

export function MoveBody() {
  const byRinging = usePlan((plan) => plan.move.settleBy === 'ringing');
  return (
    <>
      <Segments path="move.mode" />
      <Tracks />
      <SubjectFields />
      <Choice path="move.order" />
      <Choice path="move.profile" />
      <NumberField path="move.moveS" placeholder="by motors" />
      <Choice path="move.settleBy" />
      {byRinging ? <RingingFields /> : <NumberField path="move.settleS" />}
    </>
  );
}
