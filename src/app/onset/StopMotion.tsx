/** Stop-motion on set: the next exposure with one large button, and when the work is finished. */

import { untick } from '../../engine/sheet/edits.ts';
import { exposureText, passesOf, timecodeAt } from '../../engine/sheet/texts.ts';
import { ofExposure } from '../../engine/working/names.ts';
import { durationText } from '../format/durations.ts';
import { plural } from '../format/numbers.ts';
import { framesText, positionAt, positionText } from '../sheet/cells.ts';
import { momentText, spansOf } from '../sheet/clock.ts';
import { markNext, nextOf } from '../sheet/commands.ts';
import { doIt } from '../sheet/edits.ts';
import { useSheeted } from '../sheet/sheeted.ts';
import { showScreen } from '../store/screen.ts';
import { How } from '../working/How.tsx';
import { Pieces } from '../working/Pieces.tsx';
import { DoneComb } from './DoneComb.tsx';

function NextExposure({ next }: { next: number }) {
  const { plan, sheet } = useSheeted();
  const passes = passesOf(plan, sheet, next);
  const { firstFrame, frames, axes } = sheet.columns;
  return (
    <section aria-label="Next exposure" className="on-count">
      <p>Next exposure</p>
      <p className="on-figure long">{next + 1}</p>
      <p className="on-state">
        <b>{exposureText(plan, sheet, next)}</b>
      </p>
      <p>
        <Pieces
          pieces={[
            'frames ',
            {
              text: framesText(firstFrame[next] ?? 0, frames[next] ?? 0),
              of: ofExposure(next, 'lastFrame'),
            },
            ', ',
            { text: timecodeAt(plan, sheet, next), of: ofExposure(next, 'timecode') },
          ]}
        />
        {passes.length > 1 && `; passes: ${passes.join(', ')}`}
      </p>
      {axes.map((axis) => (
        <p key={axis.name}>
          {axis.name} to{' '}
          <How
            of={ofExposure(next, `axes.${axis.name}.position`)}
            what={`${positionText(axis, positionAt(axis, next))} ${axis.unit}, ${axis.name}`}
          >
            <b className="m">{positionText(axis, positionAt(axis, next))}</b> {axis.unit}
          </How>
        </p>
      ))}
    </section>
  );
}

export function StopMotion() {
  const of = useSheeted();
  const { plan, sheet } = of;
  const next = nextOf(of);
  const { done, finishMs } = sheet.totals;
  const nowMs = Date.now();
  const undoLast = () => {
    const last = next < 0 ? sheet.exposures : next;
    doIt(`Exposure ${last} not done after all.`, (present) => untick(present, { first: last, last }));
  };
  return (
    <>
      {next >= 0 ? (
        <NextExposure next={next} />
      ) : (
        <p className="on-state">
          <b>{sheet.exposures === 0 ? 'No exposures yet.' : 'All exposures are done.'}</b>
        </p>
      )}
      {next >= 0 && (
        <button type="button" className="btn main on-big" onClick={markNext}>
          Done: exposure {next + 1}
        </button>
      )}
      <section aria-label="Progress" className="on-progress">
        <p className="line">
          <span>
            <How of="sheet.done" what={`Exposure ${done}, done`}>
              Exposure <b className="m">{done}</b>
            </How>{' '}
            <How of="sheet.exposures" what={`/ ${sheet.exposures}, exposures`}>
              <span className="m">/ {sheet.exposures}</span>
            </How>
          </span>
          <span className="r">
            <span>
              <Pieces
                pieces={[{ text: `${plural(sheet.exposures - done, 'exposure')} left`, of: 'sheet.left' }]}
              />
            </span>
            {next >= 0 && Number.isFinite(finishMs) && (
              <span>
                <Pieces
                  pieces={[
                    {
                      text: `Finished ${momentText(finishMs, spansOf(plan, sheet), nowMs)}`,
                      of: 'sheet.finishAt',
                    },
                  ]}
                />
                {finishMs - nowMs > 0 && finishMs - nowMs < 86_400_000 && (
                  <>, in {durationText(Math.round((finishMs - nowMs) / 60_000) * 60)}</>
                )}
              </span>
            )}
          </span>
        </p>
        <DoneComb begun={done} frames={sheet.exposures} marks={[]} />
      </section>
      <div className="on-actions">
        {next > 0 && sheet.columns.doneMs[next - 1] !== undefined && (
          <button type="button" className="btn" onClick={undoLast}>
            Exposure {next} is not done
          </button>
        )}
        <button type="button" className="btn" onClick={() => showScreen('sheet')}>
          Open the sheet
        </button>
      </div>
    </>
  );
}
