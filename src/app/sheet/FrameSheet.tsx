/** The frames of a time-lapse as a table: the run cursor is the row that one is at. */

import { type KeyboardEvent, type MouseEvent, memo, useCallback, useEffect, useMemo, useRef } from 'react';
import { cursorIndex } from '../charts/cursor.ts';
import { neighbouringEvent } from '../charts/runView.ts';
import { plural } from '../format/numbers.ts';
import { SavePicture } from '../picture/SavePicture.tsx';
import { SheetOutputs } from '../print/SheetOutputs.tsx';
import { usePlan } from '../store/plan.ts';
import { useAtLeisure, workedOut } from '../store/schedules.ts';
import { setCycleFrame, useCursor } from '../store/view.ts';
import { Strip } from '../strip/Strip.tsx';
import { Verdict } from '../strip/Verdict.tsx';
import { Pieces } from '../working/Pieces.tsx';
import { positionAt, positionText } from './cells.ts';
import { Trace } from './drawings.tsx';
import { type FrameColumn, findFrame, frameColumns, runText } from './frameColumns.ts';
import { Grid, GridBody, GridCell, GridHead, GridRow } from './GridParts.tsx';
import { JumpBox } from './Jump.tsx';
import { evenLadder } from './ladder.ts';
import { useRows } from './useRows.ts';

const ROW_PX = 28;
const HEAD_PX = 35;

interface RowProps {
  columns: readonly FrameColumn[];
  index: number;
  frames: number;
  at: boolean;
}

const frameId = (index: number): string => `frame-${index + 1}`;

const FrameRow = memo(function FrameRow({ columns, index, frames, at }: RowProps) {
  return (
    <GridRow
      id={frameId(index)}
      aria-rowindex={index + 2}
      aria-selected={at}
      className={`r frame${at ? ' sel' : ''}`}
      data-index={index}
    >
      {columns.map(({ id, figure, text, axis }, c) => (
        <GridCell
          key={id}
          aria-colindex={c + 1}
          className={`cell${figure ? ' m figure' : ''}${axis ? ' axis m' : ''}${c === 0 ? ' exposure' : ''}`}
        >
          {axis ? (
            <>
              <Trace
                axis={axis.columns}
                n={axis.n}
                i={index}
                heightPx={ROW_PX}
                next={at}
                isFirst={index === 0}
                isLast={index === frames - 1}
              />
              <span className="to-right">{positionText(axis.columns, positionAt(axis.columns, index))}</span>
            </>
          ) : figure ? (
            text(index)
          ) : (
            <span className="words">{text(index)}</span>
          )}
        </GridCell>
      ))}
    </GridRow>
  );
});

export function FrameSheet() {
  const { plan, schedule } = useAtLeisure('sheet', usePlan(workedOut));
  const [cursor, setCursor] = useCursor();
  const columns = useMemo(() => frameColumns(plan, schedule), [plan, schedule]);
  const frames = schedule.columns.elapsedS.length;
  const ladder = useMemo(() => evenLadder(frames, ROW_PX), [frames]);
  const { ref, drawn, heightPx, show, pageRows } = useRows(ladder, HEAD_PX);
  const at = cursorIndex(schedule, cursor);
  const shown = useRef(-1);
  useEffect(() => {
    if (shown.current !== at) show(at, Math.abs(shown.current - at) > 60 ? 'middle' : 'near');
    shown.current = at;
  }, [at, show]);
  const go = useCallback(
    (index: number) => {
      const to = Math.max(0, Math.min(frames - 1, index));
      setCursor(to);
      setCycleFrame(to);
    },
    [frames, setCursor],
  );
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey) return;
    const page = pageRows(ROW_PX);
    const event_ = (way: 1 | -1) => neighbouringEvent(schedule.events, at, way);
    const step = event.shiftKey ? 10 : 1;
    const to = {
      ArrowDown: event.altKey ? event_(1) : at + step,
      ArrowUp: event.altKey ? event_(-1) : at - step,
      PageDown: at + page,
      PageUp: at - page,
      Home: 0,
      End: frames - 1,
    }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    go(to);
  };
  const onClick = ({ target }: MouseEvent) => {
    const row = (target as Element).closest<HTMLElement>('[data-index]');
    if (row) go(Number(row.getAttribute('data-index')));
  };
  const indices = Array.from({ length: drawn.end - drawn.first }, (_, n) => drawn.first + n);
  return (
    <>
      <Strip>
        <Verdict />
      </Strip>
      <section className="panel sheet-panel frames-panel" aria-labelledby="frames-title">
        <header>
          <h2 id="frames-title">Frames</h2>
          <span className="s">
            <Pieces
              pieces={[
                { text: plural(frames, 'frame'), of: 'totals.frames' },
                ', ',
                { text: runText(schedule), of: 'totals.intervalS' },
              ]}
            />
          </span>
          <JumpBox
            label="Go to"
            placeholder="frame or clock"
            onAsk={(text) => {
              const found = findFrame(schedule, text, at);
              if (!('error' in found)) go(found.index);
              return found;
            }}
          />
          <SheetOutputs />
          <SavePicture of="Frames" sentence="The rows in sight" />
        </header>
        <Grid
          ref={ref}
          label="Frames"
          columns={columns}
          rows={frames}
          active={at >= drawn.first && at < drawn.end ? frameId(at) : undefined}
          onKeyDown={onKeyDown}
          onClick={onClick}
        >
          <GridHead
            columns={columns}
            classOf={({ id, figure }) => `${figure ? 'figure' : ''}${id === 'frame' ? ' exposure' : ''}`}
          />
          <GridBody heightPx={heightPx} shiftPx={drawn.shiftPx}>
            {indices.map((index) => (
              <FrameRow key={index} columns={columns} index={index} frames={frames} at={index === at} />
            ))}
          </GridBody>
        </Grid>
      </section>
    </>
  );
}
