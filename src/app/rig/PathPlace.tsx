/** Where the path of the camera is drawn: fetched as one comes near it, and following the edits at leisure. */
import { memo, type RefObject, Suspense, useEffect, useRef, useState } from 'react';
import { hasPose } from '../../engine/path/pose.ts';
import { fetched } from '../fetched.tsx';
import { usePlan } from '../store/plan.ts';
import { useAtLeisure, workedOut } from '../store/schedules.ts';
import { useCursor } from '../store/view.ts';

const PathPanel = fetched('The drawing of the camera path', () =>
  import('./PathPanel.tsx').then((part) => memo(part.PathPanel)),
);

/** From how far below the window on. */
const NEAR = '240px';

/** True from when an element has first come near the window. */
function useNear(ref: RefObject<Element | null>): boolean {
  const [near, setNear] = useState(false);
  useEffect(() => {
    if (near || !ref.current) return;
    const observer = new IntersectionObserver(
      ([entry]) => {
        if (entry?.isIntersecting) setNear(true);
      },
      { rootMargin: NEAR },
    );
    observer.observe(ref.current);
    return () => observer.disconnect();
  }, [near, ref]);
  return near;
}

const Blank = () => <div className="panel blank-path" aria-hidden="true" />;

function Drawn() {
  const { plan, schedule } = useAtLeisure('path', usePlan(workedOut));
  const [cursor, setCursor] = useCursor();
  // What follows at leisure may still be of a rig that has nothing to draw.
  if (!hasPose(plan) || schedule.totals.frames === 0) return <Blank />;
  return <PathPanel schedule={schedule} plan={plan} cursor={cursor} onCursor={setCursor} />;
}

/** The panel of the camera's path. */
export function PathPlace() {
  const place = useRef<HTMLDivElement>(null);
  const near = useNear(place);
  return (
    <div ref={place} className="path-place">
      {near ? (
        <Suspense fallback={<Blank />}>
          <Drawn />
        </Suspense>
      ) : (
        <Blank />
      )}
    </div>
  );
}
