/** The exposure sheet itself: a grid of which only the rows in sight are drawn. */
import {
  type ClipboardEvent,
  type KeyboardEvent,
  type MouseEvent,
  useCallback,
  useEffect,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import { useWidth } from '../charts/useWidth.ts';
import { CellFoot } from '../working/CellFoot.tsx';
import { openByKey } from '../working/cellFigures.ts';
import type { Onward } from './CellEditor.tsx';
import { editText, rowsText } from './cells.ts';
import { type Column, columnsOf, EDITABLE, NARROW_PX } from './columns.ts';
import { clamped, clampSpot, exposureAt, toggleDone } from './commands.ts';
import { enterCell, pasteAt } from './edits.ts';
import { figuresAt } from './figures.ts';
import { GridBody, Grid as GridBox, GridHead } from './GridParts.tsx';
import { type Grid, gridNow, say, selected, setActionOpen, setGrid, useGrid } from './gridStore.ts';
import { press, type Table } from './keys.ts';
import { pausesOf } from './pauses.ts';
import { cellId, Row, shownColumn } from './Row.tsx';
import { type RowHeights, type RowKind, rowsOf, type Spot } from './rows.ts';
import { type Sheeted, sheetedNow } from './sheeted.ts';
import { useRows } from './useRows.ts';

const WIDE: RowHeights = { shot: 40, action: 44, exposure: 28, next: 36, pause: 32 };
/** As tall as a finger, for what is pressed in them. */
const TOUCHED: RowHeights = { shot: 44, action: 44, exposure: 44, next: 48, pause: 44 };
/** Two lines each, and as tall as a finger. */
const NARROW: RowHeights = { shot: 56, action: 56, exposure: 52, next: 56, pause: 44 };
export const HEAD_PX = 35;
/** Up to so many exposures all actions are open to begin with. */
const OPEN_ALL = 100_000;

/**
 * Which actions are open: as chosen; else, if it was being shot when the sheet was opened, the one that is next. The
 * first tick closes none: what one looks at stays where it is.
 */
function openness(
  { sheet }: Sheeted,
  begun: boolean,
  next: number,
  open: Grid['open'],
  all: boolean | null,
): (action: number) => boolean {
  const current = sheet.columns.action[next] ?? -1;
  const usual = (action: number) =>
    begun ? action === current : sheet.exposures <= OPEN_ALL || action === current;
  return (action) => open.get(action) ?? all ?? usual(action);
}

function useSheetRows(of: Sheeted, next: number, narrow: boolean) {
  const open = useGrid((grid) => grid.open);
  const all = useGrid((grid) => grid.openAll);
  const [begun] = useState(of.sheet.totals.done > 0);
  const pauses = useMemo(() => pausesOf(of.plan, of.sheet), [of]);
  const wide = matchMedia('(pointer: coarse)').matches ? TOUCHED : WIDE;
  const heights = narrow ? NARROW : wide;
  const rows = useMemo(
    () => rowsOf(of.sheet, pauses, openness(of, begun, next, open, all), next, heights),
    [of, begun, pauses, next, open, all, heights],
  );
  return { rows, pauses, heights };
}

const editableAt = (spot: Spot, column: Column | undefined): boolean =>
  column !== undefined &&
  spot.kind !== 'pause' &&
  EDITABLE[spot.kind as Exclude<RowKind, 'pause'>].includes(column.kind);

/** The part of a row that was pressed. */
function pressedAt(target: EventTarget): { spot: Spot; column: string } | null {
  const cell = (target as Element).closest<HTMLElement>('[data-column]');
  const row = cell?.closest<HTMLElement>('[data-kind]');
  if (!cell || !row) return null;
  const spot = {
    kind: row.getAttribute('data-kind') as RowKind,
    index: Number(row.getAttribute('data-index')),
  };
  return { spot, column: cell.getAttribute('data-column') ?? '' };
}

interface Props {
  of: Sheeted;
  next: number;
}

export function SheetTable({ of, next }: Props) {
  const [widthRef, widthPx] = useWidth<HTMLDivElement>();
  const narrow = widthPx > 0 && widthPx < NARROW_PX;
  const columns = useMemo(() => columnsOf(of.plan, of.sheet, widthPx || 1000), [of, widthPx]);
  const { rows, pauses, heights } = useSheetRows(of, next, narrow);
  const scrolled = useRows(rows.ladder, HEAD_PX);
  const grid = useGrid((state) => state);
  const box = useRef<HTMLElement | null>(null);
  const at = clamped(grid.at, of);
  const wanted = columns.find(({ id }) => id === grid.column) ?? columns.find(({ grows }) => grows);
  const column = wanted && shownColumn(columns, at, wanted);
  const range = selected({ at, anchor: grid.anchor });
  const row = rows.count === 0 ? 0 : rows.rowOf(at);
  const chosen = figuresAt(of, at, column);

  const { show } = scrolled;
  // Only where the cell goes, not where an edit moves its row, is followed.
  const seen = useRef({ row: -1 });
  useEffect(() => {
    if (rows.count > 0 && seen.current.row !== row)
      show(row, Math.abs(seen.current.row - row) > 60 ? 'middle' : 'near');
    seen.current.row = row;
  }, [row, rows, show]);
  useEffect(() => clampSpot(of), [of]);
  const columnId = column?.id;
  useEffect(() => {
    const scroller = box.current;
    if (!scroller || !columnId || scroller.scrollWidth <= scroller.clientWidth) return;
    const heads = [...scroller.querySelectorAll<HTMLElement>('.head [data-head]')];
    const head = heads.find((one) => one.getAttribute('data-head') === columnId);
    // The first and the last column stay where they are.
    if (head && head !== heads[0] && head !== heads.at(-1)) bringAcross(scroller, head, heads);
  }, [columnId]);
  useLayoutEffect(() => {
    // What was typed stands on the sheet now.
    if (gridNow().entered && of === sheetedNow()) setGrid({ entered: null });
  }, [of]);

  const edit = useCallback((spot: Spot, of: Column | undefined, typed: string | null) => {
    const text = of && editableAt(spot, of) ? editText(sheetedNow(), spot, of) : null;
    if (of && text !== null)
      setGrid({
        typing: { spot, column: of.id, text: typed ?? text, whole: typed === null, error: null },
        said: null,
      });
  }, []);

  const table = useRef<Table | null>(null);
  useLayoutEffect(() => {
    table.current = {
      rows,
      columns: columns.filter((one) => shownColumn(columns, at, one) === one),
      column: column?.id,
      pageRows: scrolled.pageRows(heights.exposure),
      edit: (text) => {
        show(row);
        edit(at, column, text);
      },
      editable: editableAt(at, column),
      explain: (key) => chosen.ofCell && openByKey(key, chosen.figures),
    };
  });

  const focus = useCallback(() => box.current?.focus({ preventScroll: true }), []);
  const { ref: scrolledRef } = scrolled;
  const ref = useCallback(
    (element: HTMLElement | null) => {
      box.current = element;
      return scrolledRef(element);
    },
    [scrolledRef],
  );

  const onEnter = useCallback(
    (text: string, onward: Onward) => {
      const { typing } = gridNow();
      const now = table.current;
      if (!typing || !now) return;
      const own = columns.find(({ id }) => id === typing.column);
      const before = own ? editText(sheetedNow(), typing.spot, own) : null;
      const error = own && text !== before ? enterCell(typing.spot, own, text) : null;
      if (error !== null && onward !== 'stay') {
        setGrid({ typing: { ...typing, text, whole: false, error } });
        return;
      }
      setGrid({ typing: null });
      // Whoever has gone elsewhere is not called back, but told.
      if (error !== null) say(`“${text}” was not taken: ${error}`, true);
      if (onward !== 'stay') {
        focus();
        // What went into all that is selected leaves it selected.
        if (gridNow().anchor === null) moveOn(now, onward);
      }
    },
    [columns, focus],
  );
  const onEscape = useCallback(() => {
    setGrid({ typing: null });
    focus();
  }, [focus]);

  // A cell that is scrolled away while one types is taken as it is.
  const typed = grid.typing && rows.count > 0 ? rows.rowOf(grid.typing.spot) : null;
  const gone = typed !== null && (typed < scrolled.drawn.first || typed >= scrolled.drawn.end);
  useEffect(() => {
    if (gone) onEnter(gridNow().typing?.text ?? '', 'stay');
  }, [gone, onEnter]);

  const onKeyDown = (event: KeyboardEvent) => {
    if (!table.current || event.nativeEvent.isComposing) return;
    const { key, shiftKey, altKey } = event;
    if (key === 'Tab') return;
    const altGraph = event.getModifierState('AltGraph');
    const mod = (event.ctrlKey || event.metaKey) && !altGraph;
    if (!press(table.current, { key, shiftKey, altKey: altKey && !altGraph, mod })) return;
    event.preventDefault();
    event.stopPropagation();
  };

  const onMouseDown = (event: MouseEvent) => {
    const target = event.target as HTMLElement;
    if (event.button !== 0 || target.closest('.in-cell')) return;
    const pressed = pressedAt(target);
    // With Shift one selects exposures: a pause is none.
    if (!pressed || (event.shiftKey && pressed.spot.kind === 'pause')) return;
    if (target.closest('button')) {
      event.preventDefault();
      focus();
    }
    const keep = event.shiftKey && at.kind === 'exposure' && pressed.spot.kind === 'exposure';
    if (event.shiftKey) event.preventDefault();
    // Taken before the cell moves: it is meant for what is selected now.
    const { typing } = gridNow();
    if (typing) onEnter(typing.text, 'stay');
    setGrid({ at: pressed.spot, column: pressed.column, anchor: keep ? (grid.anchor ?? at.index) : null });
  };

  const onClick = (event: MouseEvent) => {
    const { tick, fold } =
      (event.target as Element).closest<HTMLElement>('[data-tick],[data-fold]')?.dataset ?? {};
    if (tick !== undefined) toggleDone({ first: Number(tick) + 1, last: Number(tick) + 1 });
    if (fold !== undefined) setActionOpen(Number(fold), !rows.isOpen(Number(fold)));
  };

  const onDoubleClick = (event: MouseEvent) => {
    const pressed = (event.target as Element).closest('button, input') ? null : pressedAt(event.target);
    if (pressed)
      edit(
        pressed.spot,
        columns.find(({ id }) => id === pressed.column),
        null,
      );
  };

  const onCopy = (event: ClipboardEvent) => {
    if (grid.typing || !range) return;
    event.preventDefault();
    event.clipboardData.setData('text/plain', rowsText(sheetedNow(), range.first, range.last));
    say(
      `Copied: ${range.first === range.last ? `exposure ${range.first}` : `exposures ${range.first} to ${range.last}`}.`,
    );
  };

  const onPaste = (event: ClipboardEvent) => {
    if (grid.typing) return;
    event.preventDefault();
    const of = sheetedNow();
    pasteAt(
      range ? range.last - 1 : (exposureAt(of, at) ?? of.sheet.exposures - 1),
      event.clipboardData.getData('text/plain'),
    );
  };

  const { drawn } = scrolled;
  const spots = Array.from({ length: drawn.end - drawn.first }, (_, n) => rows.spotAt(drawn.first + n));
  const inSight = row >= drawn.first && row < drawn.end;
  return (
    <div className="grid-place" ref={widthRef}>
      <GridBox
        ref={ref}
        className={narrow ? 'narrow' : ''}
        label="Exposure sheet"
        columns={columns}
        rows={rows.count}
        active={inSight && column ? cellId(at, column.id) : undefined}
        multiple
        onKeyDown={onKeyDown}
        onMouseDown={onMouseDown}
        onClick={onClick}
        onDoubleClick={onDoubleClick}
        onCopy={onCopy}
        onPaste={onPaste}
      >
        <GridHead columns={columns} classOf={({ kind }) => kind} />
        <GridBody heightPx={scrolled.heightPx} shiftPx={drawn.shiftPx}>
          {spots.map((spot, n) => {
            const here = spot.kind === at.kind && spot.index === at.index;
            const isNext = spot.kind === 'exposure' && spot.index === next;
            return (
              <Row
                key={`${spot.kind} ${spot.index}`}
                of={of}
                kind={spot.kind}
                index={spot.index}
                columns={columns}
                rowIndex={drawn.first + n + 2}
                heightPx={isNext ? heights.next : heights[spot.kind]}
                cell={here ? (column?.id ?? null) : null}
                selected={
                  spot.kind === 'exposure' &&
                  range !== null &&
                  spot.index + 1 >= range.first &&
                  spot.index < range.last
                }
                next={isNext}
                open={spot.kind === 'action' && rows.isOpen(spot.index)}
                pause={spot.kind === 'pause' ? (pauses[spot.index] ?? null) : null}
                typing={isAt(grid.typing, spot)}
                entered={isAt(grid.entered, spot)}
                onEnter={onEnter}
                onEscape={onEscape}
              />
            );
          })}
        </GridBody>
      </GridBox>
      {rows.count > 0 && <CellFoot {...chosen} />}
    </div>
  );
}

/** Scrolls sideways so far that a column is seen between those that stay. */
function bringAcross(scroller: HTMLElement, head: HTMLElement, heads: readonly HTMLElement[]): void {
  const left = head.offsetLeft - (heads[0]?.offsetWidth ?? 0);
  const right = head.offsetLeft + head.offsetWidth + (heads.at(-1)?.offsetWidth ?? 0) - scroller.clientWidth;
  if (left < scroller.scrollLeft) scroller.scrollLeft = left;
  else if (right > scroller.scrollLeft) scroller.scrollLeft = right;
}

const isAt = <T extends { spot: Spot }>(one: T | null, { kind, index }: Spot): T | null =>
  one?.spot.kind === kind && one.spot.index === index ? one : null;

function moveOn(table: Table, onward: Onward): void {
  const key = { down: 'ArrowDown', up: 'ArrowUp', right: 'ArrowRight', left: 'ArrowLeft', stay: '' }[onward];
  press(table, { key, shiftKey: false, altKey: false, mod: false });
}
