/** Sheet: the exposure sheet of a stop-motion plan, or the frames of a time-lapse, as a table of any length. */
import { useEffect } from 'react';
import { SavePicture } from '../picture/SavePicture.tsx';
import { SheetOutputs } from '../print/SheetOutputs.tsx';
import { usePlan } from '../store/plan.ts';
import { useView } from '../store/view.ts';
import { CalendarPanel } from './CalendarPanel.tsx';
import { goToExposure, nextOf } from './commands.ts';
import { FrameSheet } from './FrameSheet.tsx';
import { resetGrid } from './gridStore.ts';
import { Jump } from './Jump.tsx';
import { NextPanel } from './NextPanel.tsx';
import { PacePanel } from './PacePanel.tsx';
import { Production } from './Production.tsx';
import { followUndo } from './places.ts';
import { SheetFindings } from './SheetFindings.tsx';
import { SheetTable } from './SheetTable.tsx';
import { ShotStrip } from './ShotStrip.tsx';
import { sheetedNow, useSheeted } from './sheeted.ts';
import { Saying, Tools } from './Tools.tsx';
import './sheet.css';

function ExposureSheet() {
  const of = useSheeted();
  const next = nextOf(of);
  const opened = useView((view) => view.opened);
  useEffect(followUndo, []);
  return (
    <>
      <ShotStrip of={of} />
      <div className="sheet-cols">
        <section className="panel sheet-panel" aria-labelledby="sheet-title">
          <header>
            <h2 id="sheet-title">Exposure sheet</h2>
            <Jump />
            {next >= 0 && (
              <button type="button" className="chart-link" onClick={() => goToExposure(next)}>
                Go to {next + 1}
              </button>
            )}
            <SheetOutputs />
            <SavePicture of="Exposure sheet" sentence="The rows in sight" />
          </header>
          <Tools of={of} />
          <Saying />
          <SheetTable key={opened} of={of} next={next} />
        </section>
        <div className="rail">
          <NextPanel of={of} next={next} />
          <PacePanel of={of} />
          <CalendarPanel of={of} />
          <SheetFindings of={of} />
          <Production />
        </div>
      </div>
    </>
  );
}

/** The cell goes where the run cursor went, also while another view was on screen. */
function useRunCursor(shot: boolean): void {
  const cursor = useView((view) => view.cursor);
  useEffect(() => {
    if (shot && cursor !== null && cursor !== followed && cursor < sheetedNow().sheet.exposures)
      goToExposure(cursor);
    followed = cursor;
  }, [cursor, shot]);
}

let followed: number | null = null;

export default function SheetView() {
  const technique = usePlan((plan) => plan.technique);
  const opened = useView((view) => view.opened);
  // Where one was belongs to the plan that was open.
  useEffect(() => {
    if (opened !== shownFor) resetGrid();
    shownFor = opened;
  }, [opened]);
  useRunCursor(technique === 'stopMotion');
  return (
    <main className="page sheet">{technique === 'stopMotion' ? <ExposureSheet /> : <FrameSheet />}</main>
  );
}

let shownFor = 0;
