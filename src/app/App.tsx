/** The Plan page. */
import { lazy, memo, Suspense, useDeferredValue, useEffect, useRef, useState } from 'react';
import { TopBar } from './bar/TopBar.tsx';
import { CyclePanel } from './charts/CyclePanel.tsx';
import { MarginsPanel } from './charts/MarginsPanel.tsx';
import { Findings } from './findings/Findings.tsx';
import { Inputs } from './sections/Inputs.tsx';
import { useDrop, useShortcuts } from './shortcuts.ts';
import { usePlan, useSchedule } from './store/plan.ts';
import { useHeld } from './store/schedules.ts';
import { setCycleFrame, useCursor, useView } from './store/view.ts';
import { MiniStrip } from './strip/MiniStrip.tsx';
import { Strip } from './strip/Strip.tsx';
import { Verdict } from './strip/Verdict.tsx';

const RunPanel = lazy(() =>
  import('./charts/RunPanel.tsx').then((part) => ({ default: memo(part.RunPanel) })),
);

const Dialogs = lazy(() => import('./bar/Dialogs.tsx'));

/** True once the figures have been painted. */
function usePainted(): boolean {
  const [painted, setPainted] = useState(false);
  useEffect(() => {
    const timer = requestAnimationFrame(() => setTimeout(() => setPainted(true)));
    return () => cancelAnimationFrame(timer);
  }, []);
  return painted;
}

/** The charts follow the figures, as soon as there is time. */
function Run() {
  const plan = useDeferredValue(usePlan((present) => present));
  const schedule = useHeld(useDeferredValue(useSchedule()));
  const [cursor, setCursor] = useCursor();
  const painted = usePainted();
  const blank = <div className="panel blank" aria-hidden="true" />;
  return (
    <div id="run" className="run-place">
      {painted ? (
        <Suspense fallback={blank}>
          <RunPanel schedule={schedule} plan={plan} cursor={cursor} onCursor={setCursor} />
        </Suspense>
      ) : (
        blank
      )}
    </div>
  );
}

function Figures() {
  const plan = usePlan((present) => present);
  const schedule = useSchedule();
  const chosen = useView((view) => view.cycleFrame);
  const { frames, longestCycleFrame } = schedule.totals;
  const frame = chosen === null || chosen >= frames ? longestCycleFrame - 1 : chosen;
  return (
    <div className="figures">
      <CyclePanel schedule={schedule} plan={plan} frameIndex={frame} onFrame={setCycleFrame} />
      <MarginsPanel schedule={schedule} />
    </div>
  );
}

/** Dialogs and fields are fetched once the figures stand, so that they open at once. */
function Later() {
  const painted = usePainted();
  useEffect(() => {
    if (painted) void import('./sections/bodies.ts');
  }, [painted]);
  return <Suspense>{painted && <Dialogs />}</Suspense>;
}

const FindingsNow = () => <Findings schedule={useSchedule()} />;

export function App() {
  const strip = useRef<HTMLDivElement>(null);
  useShortcuts();
  useDrop();
  return (
    <>
      <TopBar />
      <MiniStrip strip={strip} />
      <main className="page">
        <div ref={strip}>
          <Strip>
            <Verdict />
          </Strip>
        </div>
        <div className="cols">
          <FindingsNow />
          <Inputs />
          <Figures />
        </div>
        <Run />
      </main>
      <Later />
    </>
  );
}
