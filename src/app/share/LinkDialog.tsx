/** A link holds another plan than the one that is open: what it is, and whether to open it. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { Plan } from '../../engine/plan/schema.ts';
import { schedule } from '../../engine/schedule.ts';
import { CloseButton, Dialog } from '../bar/Dialog.tsx';
import { clockOf, dateOf } from '../format/clock.ts';
import { durationText } from '../format/durations.ts';
import { plural } from '../format/numbers.ts';
import { leave } from '../modal.ts';
import { usePlan } from '../store/plan.ts';
import { leaveOffered, offerStore, openOffered } from './openLink.ts';
import './share.css';

function Held({ plan }: { plan: Plan }) {
  const { totals, verdict } = useMemo(() => schedule(plan, { nowMs: Date.now() }), [plan]);
  const facts: readonly (readonly [string, string])[] = [
    ['Title', plan.title || 'without a title'],
    ['Frames', plural(totals.frames, 'frame')],
    ['Clip', `${durationText(totals.clipLengthS)} at ${plan.clip.frameRate} fps`],
    ['First frame', `${dateOf(totals.firstFrameAt)}, ${clockOf(totals.firstFrameAt)}`],
    ['Place', plan.place.name || 'not named'],
    ['Verdict', verdict],
  ];
  return (
    <dl className="held">
      {facts.map(([name, text]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{text}</dd>
        </div>
      ))}
    </dl>
  );
}

export default function LinkDialog() {
  const offered = useStore(offerStore, (state) => state.offered);
  const title = usePlan((plan) => plan.title);
  if (!offered) return null;
  return (
    <Dialog title="Open the plan in the link?" onClose={leaveOffered}>
      <Held plan={offered} />
      <p>
        <b className="whose">{title || 'A plan without a title'}</b> is open now. If you open the other one,
        Undo brings it back.
      </p>
      <div className="row">
        <button
          type="button"
          className="btn main"
          onClick={(event) => {
            openOffered();
            leave(event.currentTarget);
          }}
        >
          Open it
        </button>
        <CloseButton text="Leave it" />
      </div>
    </Dialog>
  );
}
