/** The page: its bar, and one of the views of the plan. */
import {
  Activity,
  memo,
  type ReactNode,
  Suspense,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import { hasPose } from '../engine/path/pose.ts';
import { TopBar } from './bar/TopBar.tsx';
import { fetched } from './fetched.tsx';
import { Findings } from './findings/Findings.tsx';
import { Inputs } from './sections/Inputs.tsx';
import { fetchChecks } from './store/checker.ts';
import { usePlan, useSchedule } from './store/plan.ts';
import { afterPaint, useAtLeisure, workedOut } from './store/schedules.ts';
import { type Screen, useScreen } from './store/screen.ts';
import { setCycleFrame, useCursor, useView } from './store/view.ts';
import { Strip } from './strip/Strip.tsx';
import { Verdict } from './strip/Verdict.tsx';

const RunPanel = fetched('The charts of the run', () =>
  import('./charts/RunPanel.tsx').then((part) => memo(part.RunPanel)),
);

const CyclePanel = fetched('The drawing of the cycle', () =>
  import('./charts/CyclePanel.tsx').then((part) => memo(part.CyclePanel)),
);

const MarginsPanel = fetched('The margins', () =>
  import('./charts/MarginsPanel.tsx').then((part) => memo(part.MarginsPanel)),
);

const PathPlace = fetched('The drawing of the camera path', () =>
  import('./rig/PathPlace.tsx').then((part) => part.PathPlace),
);

const LadderPanel = fetched('The interval ladder', () =>
  import('./ladder/LadderPanel.tsx').then((part) => part.LadderPanel),
);

/** Seen only once the page has been scrolled. */
const MiniStrip = fetched(null, () => import('./strip/MiniStrip.tsx').then((part) => part.MiniStrip));

const Dialogs = fetched(null, () => import('./bar/Dialogs.tsx').then((part) => part.default));

/** Views that stand in the place of the plan. */
const VIEWS = {
  days: fetched('The view of days', () => import('./days/DaysView.tsx').then((part) => part.default)),
  sheet: fetched('The sheet', () => import('./sheet/SheetView.tsx').then((part) => part.default)),
  onset: fetched('The view for the set', () => import('./onset/OnSetView.tsx').then((part) => part.default)),
};

/** Keeps the page itself for use without a network. */
const Offline = fetched(null, () => import('./offline/Offline.tsx').then((part) => part.Offline));

/** What waits until the figures have been painted. */
interface Painted {
  painted: boolean;
}

/** True once the figures have been painted. */
function usePainted(): boolean {
  const [painted, setPainted] = useState(false);
  useEffect(() => {
    afterPaint(() => setPainted(true));
  }, []);
  return painted;
}

/** Room kept for what is fetched once the figures stand. */
function Awaited({ painted, blank, children }: Painted & { blank: string; children: ReactNode }) {
  const room = <div className={`panel ${blank}`} aria-hidden="true" />;
  return <Suspense fallback={room}>{painted ? children : room}</Suspense>;
}

/** The charts follow the figures, as soon as there is time. */
function Run() {
  const { plan, schedule } = useAtLeisure('run', usePlan(workedOut));
  const [cursor, setCursor] = useCursor();
  return <RunPanel schedule={schedule} plan={plan} cursor={cursor} onCursor={setCursor} />;
}

function Cycle() {
  const { plan, schedule } = useAtLeisure('cycle', usePlan(workedOut));
  const chosen = useView((view) => view.cycleFrame);
  const { frames, longestCycleFrame } = schedule.totals;
  const frame = chosen === null || chosen >= frames ? longestCycleFrame - 1 : chosen;
  return <CyclePanel schedule={schedule} plan={plan} frameIndex={frame} onFrame={setCycleFrame} />;
}

const Margins = () => <MarginsPanel schedule={useSchedule()} />;

/** Keys pressed before what acts on them has come. */
const early: KeyboardEvent[] = [];
const noteKey = (event: KeyboardEvent): void => void early.push(event);
addEventListener('keydown', noteKey);

/** Dialogs and fields are fetched once the figures stand, so that they open at once. */
function Later({ painted }: Painted) {
  useEffect(() => {
    if (!painted) return;
    void fetchChecks().catch(() => null);
    void import('./sections/bodies.ts');
    void import('./shortcuts.ts').then((part) => {
      removeEventListener('keydown', noteKey);
      part.listenEverywhere(early.splice(0));
    });
    void import('./store/expectWays.ts').then((part) => part.expectWays());
  }, [painted]);
  return (
    <Suspense>
      {painted && <Dialogs />}
      {painted && <Offline />}
    </Suspense>
  );
}

const FindingsNow = () => <Findings schedule={useSchedule()} />;

function PlanView({ painted }: Painted) {
  const strip = useRef<HTMLDivElement>(null);
  // A rig that neither moves nor turns the camera has no path to draw.
  const posed = usePlan(hasPose);
  return (
    <>
      <Suspense>{painted && <MiniStrip strip={strip} />}</Suspense>
      <main className="page">
        <div ref={strip}>
          <Strip>
            <Verdict />
          </Strip>
        </div>
        <div className="cols">
          <FindingsNow />
          <Inputs />
          <div className="beside">
            <div className="figures">
              <Awaited painted={painted} blank="blank-cycle">
                <Cycle />
              </Awaited>
              <Awaited painted={painted} blank="blank-margins">
                <Margins />
              </Awaited>
              <Awaited painted={painted} blank="blank-ladder">
                <LadderPanel />
              </Awaited>
              {posed && (
                <Awaited painted={painted} blank="blank-path">
                  <PathPlace />
                </Awaited>
              )}
            </div>
          </div>
        </div>
        <div id="run" className="run-place">
          <Awaited painted={painted} blank="blank">
            <Run />
          </Awaited>
        </div>
      </main>
    </>
  );
}

/** A view that one goes to is seen from its top. */
function useTopOf(screen: Screen): void {
  const last = useRef(screen);
  useLayoutEffect(() => {
    if (last.current !== screen) scrollTo(0, 0);
    last.current = screen;
  }, [screen]);
}

export function App() {
  const screen = useScreen();
  const painted = usePainted();
  useTopOf(screen);
  const View = screen === 'plan' ? null : VIEWS[screen];
  return (
    <>
      <TopBar painted={painted} />
      {/* Kept while another view is on screen, as it was left; it does not follow the edits meanwhile. */}
      <Activity mode={screen === 'plan' ? 'visible' : 'hidden'}>
        <PlanView painted={painted} />
      </Activity>
      {View && (
        <Suspense key={screen} fallback={<main className="page" />}>
          <View />
        </Suspense>
      )}
      <Later painted={painted} />
    </>
  );
}
