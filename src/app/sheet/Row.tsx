/** One row of the exposure sheet. */
import { memo, type ReactNode } from 'react';
import { cuesAt, exposureText, passesOf, tickAt, timecodeAt } from '../../engine/sheet/texts.ts';
import { doneIn } from '../../engine/sheet/ticks.ts';
import { durationText } from '../format/durations.ts';
import { NBSP, plural } from '../format/numbers.ts';
import { ArrowRight, ChevronDown, ChevronRight, StandingIcon } from '../icons.tsx';
import { CellEditor, type Onward } from './CellEditor.tsx';
import { framesText, positionAt, positionText } from './cells.ts';
import { clockText, dayText, spansOf } from './clock.ts';
import type { Column } from './columns.ts';
import { Arrives, Hold, Trace, TraceOver } from './drawings.tsx';
import { GridCell, GridCheck, GridRow } from './GridParts.tsx';
import { type Entered, gridNow, setGrid, type Typing } from './gridStore.ts';
import type { Pause } from './pauses.ts';
import type { Spot } from './rows.ts';
import type { Sheeted } from './sheeted.ts';

export interface RowProps {
  of: Sheeted;
  spot: Spot;
  columns: readonly Column[];
  /** Counted from 1, the heading included. */
  rowIndex: number;
  heightPx: number;
  /** Column of the cell that one is at; null on other rows. */
  cell: string | null;
  selected: boolean;
  next: boolean;
  open: boolean;
  pause: Pause | null;
  typing: Typing | null;
  entered: Entered | null;
  onEnter: (text: string, onward: Onward) => void;
  onEscape: () => void;
}

export const rowId = ({ kind, index }: Spot): string => `row-${kind}-${index}`;
export const cellId = (spot: Spot, column: string): string => `${rowId(spot)}-${column.replace(/\W+/g, '-')}`;

/** Kinds of column whose figures line up. */
const NUMERIC = new Set(['exposure', 'frames', 'timecode', 'clock', 'axis', 'hold']);

/** Its columns are cells of a kind; what stands in them is given. */
function Cells({ content, ...props }: RowProps & { content: (column: Column) => Content | null }) {
  const { spot, columns, cell, typing, entered, heightPx, rowIndex, selected } = props;
  return (
    <GridRow
      id={rowId(spot)}
      aria-rowindex={rowIndex}
      aria-selected={spot.kind === 'exposure' ? selected : undefined}
      className={classOf(props)}
      style={{ height: heightPx }}
      data-kind={spot.kind}
      data-index={spot.index}
    >
      {columns.map((column, c) => {
        const shown = content(column);
        if (!shown) return null;
        const edited = typing?.column === column.id ? typing : null;
        const fresh = entered?.column === column.id ? entered.text : null;
        return (
          <GridCell
            key={column.id}
            id={cellId(spot, column.id)}
            aria-colindex={c + 1}
            aria-colspan={shown.span}
            data-column={column.id}
            className={`cell ${column.kind}${NUMERIC.has(column.kind) && !shown.words ? ' m' : ''}${cell === column.id ? ' at' : ''}`}
            style={shown.span === undefined ? undefined : { gridColumnEnd: `span ${shown.span}` }}
          >
            {edited ? (
              <CellEditor
                typing={edited}
                label={`${column.heading}${spot.kind === 'exposure' ? ` of exposure ${spot.index + 1}` : ''}`}
                onText={onText}
                onEnter={props.onEnter}
                onEscape={props.onEscape}
              />
            ) : (
              (fresh ?? shown.node)
            )}
          </GridCell>
        );
      })}
    </GridRow>
  );
}

const onText = (text: string): void => {
  const { typing } = gridNow();
  if (typing) setGrid({ typing: { ...typing, text } });
};

/** What stands in a cell, over how many columns. */
interface Content {
  node: ReactNode;
  span?: number;
  /** Words, where the column has figures. */
  words?: boolean;
}

const only = (node: ReactNode): Content => ({ node });

function classOf({ of, spot, selected, next }: RowProps): string {
  const done = spot.kind === 'exposure' && !Number.isNaN(of.sheet.columns.doneMs[spot.index]);
  return `r ${spot.kind}${selected ? ' sel' : ''}${next ? ' next' : ''}${done ? ' is-done' : ''}`;
}

function Tick({ index, done, retakes }: { index: number; done: boolean; retakes: number }) {
  return (
    <GridCheck className="tick" checked={done} aria-label={`Exposure ${index + 1} done`} data-tick={index}>
      <span className="box-of">{done && <StandingIcon standing="fine" size={13} />}</span>
      {retakes > 0 && <small title={plural(retakes, 'retake')}>+{retakes}</small>}
    </GridCheck>
  );
}

function Passes({ names, all }: { names: readonly string[]; all: number }) {
  if (all === 1) return <span className="u">{names[0] ?? 'none'}</span>;
  return (
    <>
      <span className="m">{names.length}</span> <span className="u">{names.join(', ')}</span>
    </>
  );
}

function exposureContent(props: RowProps, { kind, axis: a }: Column): ReactNode {
  const { of, spot, next, heightPx } = props;
  const { plan, sheet } = of;
  const { columns } = sheet;
  const i = spot.index;
  switch (kind) {
    case 'exposure':
      return i + 1;
    case 'frames':
      return framesText(columns.firstFrame[i] ?? 0, columns.frames[i] ?? 0);
    case 'timecode':
      return timecodeAt(plan, sheet, i);
    case 'text':
      return <Text of={of} i={i} />;
    case 'what':
      return <What of={of} i={i} />;
    case 'hold':
      return <Hold frames={columns.frames[i] ?? 0} />;
    case 'passes':
      return <Passes names={passesOf(plan, sheet, i)} all={plan.sheet.passes.length} />;
    case 'cues':
      return <Cues of={of} i={i} />;
    case 'clock':
      return clockText(columns.startMs[i] ?? Number.NaN, spansOf(plan, sheet));
    case 'done':
      return (
        <Tick
          index={i}
          done={!Number.isNaN(columns.doneMs[i])}
          retakes={tickAt(plan, sheet, i)?.retakes ?? 0}
        />
      );
    case 'axis': {
      const axis = columns.axes[a ?? -1];
      if (!axis) return null;
      const ofShot = (index: number) => columns.shot[index] === columns.shot[i];
      const edges = { isFirst: i === 0 || !ofShot(i - 1), isLast: !ofShot(i + 1) };
      return (
        <>
          <Trace axis={axis} n={a ?? 0} i={i} heightPx={heightPx} next={next} {...edges} />
          <Arrives from={axis.from[i] ?? 0} />
          <span>{positionText(axis, positionAt(axis, i))}</span>
        </>
      );
    }
  }
}

function Text({ of: { plan, sheet }, i }: { of: Sheeted; i: number }) {
  const note = tickAt(plan, sheet, i)?.note;
  return (
    <>
      <span className="words">{exposureText(plan, sheet, i)}</span>
      {note && (
        <span className="note-sign" title={note}>
          note
        </span>
      )}
    </>
  );
}

/** What goes on is shown by its first words where it begins, by a rule where it lasts. */
function Cues({ of: { plan, sheet }, i }: { of: Sheeted; i: number }) {
  const first = sheet.columns.firstFrame[i] ?? 0;
  const cues = cuesAt(plan, sheet, i);
  if (cues.length === 0) return null;
  const begin = cues.filter(({ frame }) => frame >= first);
  const title = cues.map(({ kind, text }) => `${kind}: ${text}`).join('\n');
  return (
    <span className={begin.length === 0 ? 'cue lasts' : 'cue'} title={title}>
      {begin.length === 0 ? <span className="vh">{title}</span> : begin.map(({ text }) => text).join('; ')}
    </span>
  );
}

/** All of an exposure in two lines. */
function What({ of, i }: { of: Sheeted; i: number }) {
  const { plan, sheet } = of;
  const { columns } = sheet;
  const positions = columns.axes.map((axis) => `${axis.name} ${positionText(axis, positionAt(axis, i))}`);
  const line = [
    `${framesText(columns.firstFrame[i] ?? 0, columns.frames[i] ?? 0)}`,
    clockText(columns.startMs[i] ?? Number.NaN, spansOf(plan, sheet)),
    ...positions,
  ];
  return (
    <span className="two-lines">
      <Text of={of} i={i} />
      <small className="m">{line.join('  ')}</small>
    </span>
  );
}

function Fold({ open, name, action }: { open: boolean; name: string; action: number }) {
  return (
    <button
      type="button"
      className="fold"
      tabIndex={-1}
      aria-expanded={open}
      aria-label={`Exposures of ${name || 'the action'}`}
      data-fold={action}
    >
      {open ? <ChevronDown /> : <ChevronRight />}
    </button>
  );
}

const Ends = ({ from, to }: { from: string; to: string }) => (
  <span className="ends">
    {from}
    <ArrowRight />
    {to}
  </span>
);

function actionContent({ of, spot, open, columns: shown }: RowProps, column: Column): Content | null {
  const { plan, sheet } = of;
  const action = sheet.actions[spot.index];
  if (!action) return null;
  const { firstExposure, exposures, firstFrame, frames, text, holdsText, lastShort } = action;
  const [first, last] = [firstExposure - 1, firstExposure + exposures - 2];
  const seconds = durationText(frames / rateOf(of), 1);
  const count = `exp. ${framesText(firstExposure, exposures)}`;
  const spans = spansOf(plan, sheet);
  const startMs = sheet.columns.startMs[first] ?? Number.NaN;
  const day = sheet.days.length > 1 && Number.isFinite(startMs) ? `, ${dayText(startMs, spans)}` : '';
  switch (column.kind) {
    case 'exposure':
      return only(<Fold open={open} name={text} action={spot.index} />);
    case 'frames':
      return only(framesText(firstFrame, frames));
    case 'timecode':
      return only(timecodeAt(plan, sheet, first));
    case 'text':
      return only(<b className={text ? 'words' : 'words none'}>{text || 'No words yet'}</b>);
    case 'what':
      return only(
        <span className="two-lines">
          <b className={text ? 'words' : 'words none'}>{text || 'No words yet'}</b>
          <small>
            {count}, {holdsText}
            {day}
          </small>
        </span>,
      );
    case 'hold':
      return {
        span: 2,
        node: (
          <span
            className="u words"
            title={`${count}, ${seconds}, ${holdsText}${lastShort ? ', the last one shorter' : ''}${day}`}
          >
            {count}, {holdsText}
            {lastShort && ', last shorter'}
          </span>
        ),
      };
    case 'passes':
      return null;
    case 'axis': {
      const axis = sheet.columns.axes[column.axis ?? -1];
      const at = (i: number) => (axis ? positionText(axis, positionAt(axis, i)) : '');
      return only(<Ends from={at(first)} to={at(last)} />);
    }
    case 'cues':
      return only(day && <span className="u words">{day.slice(2).split(NBSP).slice(1).join(NBSP)}</span>);
    case 'clock':
      return only(clockText(startMs, spans));
    case 'done': {
      const done = doneIn(sheet.columns, action);
      if (done === exposures) return only(<DoneSign />);
      return only(
        <span className="m">
          {done}/{exposures}
        </span>,
      );
    }
  }
  return shown.length > 0 ? only(null) : null;
}

const DoneSign = () => (
  <span className="sev fine">
    <StandingIcon standing="fine" />
    <span className="vh">All done</span>
  </span>
);

function rateOf({ plan }: Sheeted): number {
  const [num = 24, den = 1] = plan.clip.frameRate.split('/').map(Number);
  return num / den;
}

function shotContent({ of, spot, columns }: RowProps, column: Column): Content | null {
  const shot = of.sheet.shots[spot.index];
  if (!shot) return null;
  const { name, frames, exposures, setUpMin, timecode } = shot;
  const tests = of.plan.sheet.testFrames;
  const about = `${plural(frames, 'frame')}, ${plural(exposures, 'exposure')}; set-up ${durationText(setUpMin * 60)}${tests > 0 ? `, ${plural(tests, 'test frame')}` : ''}`;
  switch (column.kind) {
    case 'exposure':
      return only(<span className="u">{spot.index + 1}</span>);
    case 'what':
      return only(
        <span className="two-lines">
          <b className="words">{name}</b>
          <small>{about}</small>
        </span>,
      );
    case 'frames':
      return only(framesText(1, Math.max(1, frames)));
    case 'timecode':
      return only(timecode);
    case 'text':
      return only(<b className="words">{name}</b>);
    case 'hold':
      return { span: columns.length - 5, node: <span className="u words">{about}</span> };
    case 'done': {
      const done = doneIn(of.sheet.columns, shot);
      return only(
        exposures > 0 && done === exposures ? (
          <DoneSign />
        ) : (
          <span className="m">{`${done}/${exposures}`}</span>
        ),
      );
    }
    default:
      return null;
  }
}

function pauseWords({ plan, sheet }: Sheeted, { kind, day: d, index, ms, toMs }: Pause): string {
  if (kind === 'break') {
    const { from, to } = plan.sheet.breaks[index] ?? { from: '', to: '' };
    return `Break, ${from} to ${to}`;
  }
  const spans = spansOf(plan, sheet);
  const day = sheet.days[d];
  const ends = `${dayText(ms, spans)} ends: exposure ${day?.lastExposure}, frame ${day?.frame}`;
  return `${ends}; on ${dayText(toMs, spans)}, ${clockText(toMs, spans)}`;
}

/** How many columns, from the second on, the words of a pause go over: up to the first axis. */
function wordColumns(columns: readonly Column[]): number {
  const axis = columns.findIndex(({ kind }) => kind === 'axis');
  return axis < 0 ? columns.length - 1 : axis - 1;
}

/** The column whose cell stands at another on a row: the words of a pause go over several. */
export function shownColumn(columns: readonly Column[], { kind }: Spot, column: Column): Column {
  const c = columns.indexOf(column);
  return kind === 'pause' && c > 1 && c <= wordColumns(columns) ? (columns[1] ?? column) : column;
}

function pauseContent({ of, pause, columns, heightPx }: RowProps, column: Column): Content | null {
  if (!pause) return null;
  const words = wordColumns(columns);
  switch (column.id) {
    case columns[0]?.id:
      return only(null);
    case columns[1]?.id:
      return { span: words, words: true, node: <span className="words">{pauseWords(of, pause)}</span> };
  }
  const c = columns.indexOf(column);
  if (c <= words) return null;
  const axis = of.sheet.columns.axes[column.axis ?? -1];
  if (column.kind === 'clock') return only(clockText(pause.ms, spansOf(of.plan, of.sheet)));
  return only(axis && <TraceOver axis={axis} n={column.axis ?? 0} after={pause.after} heightPx={heightPx} />);
}

const CONTENT = {
  exposure: (props: RowProps, column: Column) => only(exposureContent(props, column)),
  action: actionContent,
  shot: shotContent,
  pause: pauseContent,
} as const;

/** Kind and index are given apart, so that a row is drawn again only if something of it has changed. */
export const Row = memo(function Row({ kind, index, ...rest }: Omit<RowProps, 'spot'> & Spot) {
  const props = { ...rest, spot: { kind, index } };
  const content = CONTENT[kind];
  return <Cells {...props} content={(column) => content(props, column)} />;
});
