/** The helpers that measure what a kind of gear asks for. */
import { exposureBytes } from '../../engine/storage/storage.ts';
import { enterAll } from '../fields/entry.ts';
import { SagHelper, SwingsHelper, TimedWriteHelper } from '../measure/Helpers.tsx';
import { leave } from '../modal.ts';
import type { Desk } from '../store/desk.ts';
import { goToField } from '../store/goTo.ts';
import { currentPlan, usePlan } from '../store/plan.ts';
import type { KitKind } from './kinds.ts';

/** Puts figures into a group of fields as one step. */
const taker =
  (desk: Desk, group: string) =>
  (values: Readonly<Record<string, number>>): string | null => {
    desk.endGesture();
    return enterAll(
      Object.entries(values).map(([figure, value]) => [`${group}.${figure}`, value]),
      null,
      desk,
    );
  };

function ArmMeasures({ desk }: { desk: Desk }) {
  const take = taker(desk, 'ringing');
  return (
    <>
      <SagHelper onTake={take} />
      <SwingsHelper onTake={take} />
    </>
  );
}

function CameraMeasures({ desk }: { desk: Desk }) {
  const frameBytes = usePlan(exposureBytes);
  const toTestFrame = (button: HTMLElement) => {
    leave(button);
    goToField('camera', 'test-frame');
  };
  return (
    <>
      <TimedWriteHelper frameBytes={frameBytes} cards={[]} onTake={taker(desk, 'camera')} />
      <p className="hint">
        A test frame tells the frame size: put this camera into the plan,{' '}
        <button type="button" className="link" onClick={(event) => toTestFrame(event.currentTarget)}>
          drop the frame there
        </button>
        , and keep the camera again.
      </p>
    </>
  );
}

/** The frame size is that of the plan that is open: the card itself knows none. */
const CardMeasures = ({ desk }: { desk: Desk }) => (
  <TimedWriteHelper
    frameBytes={exposureBytes(currentPlan())}
    cards={['The card']}
    camera={false}
    onTake={(values) =>
      'writeS' in values ? null : taker(desk, 'storage.cards.0')({ writeBytesPerS: values.writeBytesPerS })
    }
  />
);

export function Measures({ kind, desk }: { kind: KitKind; desk: Desk }) {
  if (kind === 'arm') return <ArmMeasures desk={desk} />;
  if (kind === 'camera') return <CameraMeasures desk={desk} />;
  return kind === 'card' ? <CardMeasures desk={desk} /> : null;
}
