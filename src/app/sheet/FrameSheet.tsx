/** The frames of a time-lapse as a table: the run cursor is the row that one is at. */

import {
  type KeyboardEvent,
  type MouseEvent,
  memo,
  useCallback,
  useEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
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
import { CellFoot } from '../working/CellFoot.tsx';
import { openByKey } from '../working/cellFigures.ts';
import { Pieces } from '../working/Pieces.tsx';
import { positionAt, positionText } from './cells.ts';
import { Trace } from './drawings.tsx';
import {
  columnBeside,
  type FrameColumn,
  figuresOfFrame,
  findFrame,
  frameColumns,
  runText,
} from './frameColumns.ts';
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
  /** Column of the cell that one is at; null on other rows, and while one is at all of the row. */
  cell: string | null;
}

const frameId = (index: number): string => `frame-${index + 1}`;
const frameCellId = (index: number, column: string): string =>
  `${frameId(index)}-${column.replace(/\W+/g, '-')}`;

const FrameRow = memo(function FrameRow({ columns, index, frames, at, cell }: RowProps) {
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
          id={cell === id ? frameCellId(index, id) : undefined}
          data-column={id}
          aria-colindex={c + 1}
          className={`cell${figure ? ' m figure' : ''}${axis ? ' axis m' : ''}${c === 0 ? ' exposure' : ''}${cell === id ? ' at' : ''}`}
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
  const [column, setCell] = useState<string | null>(null);
  const cell = columns.some(({ id }) => id === column) ? column : null;
  const chosen = figuresOfFrame(columns, at, cell);
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
    const beside = columnBeside(columns, cell, event.key);
    if (beside !== undefined || (chosen.ofCell && openByKey(event.key, chosen.figures))) {
      if (beside !== undefined) setCell(beside);
      event.preventDefault();
      event.stopPropagation();
      return;
    }
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
    const pressed = (target as Element).closest('[data-column]')?.getAttribute('data-column');
    if (row) go(Number(row.getAttribute('data-index')));
    if (pressed) setCell(pressed);
  };
  const activeId = cell === null ? frameId(at) : frameCellId(at, cell);
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
          active={at >= drawn.first && at < drawn.end ? activeId : undefined}
          onKeyDown={onKeyDown}
          onClick={onClick}
        >
          <GridHead
            columns={columns}
            classOf={({ id, figure }) => `${figure ? 'figure' : ''}${id === 'frame' ? ' exposure' : ''}`}
          />
          <GridBody heightPx={heightPx} shiftPx={drawn.shiftPx}>
            {indices.map((index) => (
              <FrameRow
                key={index}
                {...{ columns, index, frames }}
                at={index === at}
                cell={index === at ? cell : null}
              />
            ))}
          </GridBody>
        </Grid>
        <CellFoot {...chosen} />
      </section>
    </>
  );
}
