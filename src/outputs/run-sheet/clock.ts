/** The clock of the day: what is done before the run, what happens in it, and what is done after. */
import { counted } from '../../engine/findings/words.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule, ScheduleEvent } from '../../engine/schedule-types.ts';
import { BLOCK_WORDS, type BlockKind, type DayBlock, dayBlocks } from '../day-blocks.ts';
import { type HandMoment, handMoments } from '../hand-moments.ts';
import { skyMoments } from './sky.ts';
import type { ClockLine } from './types.ts';
import { dateWords, whenOf } from './when.ts';

/** More moments than this are counted at once: two pages never hold them. */
const MOST_MOMENTS = 48;

type Bare = Omit<ClockLine, 'date' | 'clock'> & { toTheMinute: boolean };

const lengthText = ({ fromMs, toMs }: DayBlock): string => {
  const minutes = Math.round((toMs - fromMs) / 60_000);
  return minutes < 120 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
};

const BLOCKS: Readonly<Partial<Record<BlockKind, string>>> = {
  travel: 'Leave',
  packUp: 'Pack up',
  home: 'Leave for home',
};

/** What must not be forgotten while an arm is loaded. */
const armText = ({ rig }: Schedule, kind: BlockKind): string => {
  if (!rig.balance?.arm || rig.balance.arm.needsNone) return '';
  if (kind === 'packUp') return ': weights off first, the camera last';
  return kind === 'balance' ? ': camera on first, then the weights' : '';
};

const prepared = (made: Schedule, block: DayBlock): Bare => ({
  ms: block.fromMs,
  frame: null,
  text: `${BLOCKS[block.kind] ?? BLOCK_WORDS[block.kind]}, ${lengthText(block)}${armText(made, block.kind)}`,
  hand: block.kind !== 'inHand',
  kind: 'step',
  toTheMinute: true,
});

const atRun = ({ kind, frame, elapsedS, text }: ScheduleEvent, startMs: number): Bare => ({
  ms: startMs + elapsedS * 1000,
  frame,
  text: text.charAt(0).toUpperCase() + text.slice(1),
  hand: kind === 'firstFrame' || kind === 'lastFrame',
  kind: 'step',
  toTheMinute: false,
});

const byHand = ({ ms, frame, text, lostFrames, kind }: HandMoment): Bare => ({
  ms,
  frame: kind === 'pane' ? null : frame,
  text:
    text.charAt(0).toUpperCase() +
    text.slice(1) +
    (lostFrames > 0 ? `; ${counted(lostFrames, 'frame')} lost` : ''),
  hand: true,
  kind: kind === 'exposureChange' ? 'settings' : 'moment',
  toTheMinute: false,
});

/** The first ones; settings, which stand in their own list too, only where there is room besides. */
function firstHands(hands: readonly HandMoment[]): HandMoment[] {
  const isSetting = ({ kind }: HandMoment) => kind === 'exposureChange';
  const others = hands.filter((moment) => !isSetting(moment));
  return [...others, ...hands.filter(isSetting)].slice(0, MOST_MOMENTS);
}

/** First and last frame, and what the clocks do: settings are in the list of changes. */
const runEvents = ({ events, startMs }: Schedule): Bare[] =>
  events
    .filter(({ kind }) => kind === 'firstFrame' || kind === 'lastFrame' || kind === 'clockChange')
    .map((event) => atRun(event, startMs));

function dated(plan: Plan, lines: readonly Bare[]): ClockLine[] {
  const when = whenOf(plan, lines[0]?.ms ?? 0, lines.at(-1)?.ms ?? 0);
  return lines.map(({ toTheMinute, ...line }) => ({
    ...line,
    date: dateWords(when.date(line.ms)),
    clock: toTheMinute ? when.minute(line.ms) : when.second(line.ms),
  }));
}

/** The lines in order of time, and how many moments of the run are left out. */
export function clockLines(plan: Plan, made: Schedule): { lines: ClockLine[]; left: number } {
  const blocks = dayBlocks(plan, made);
  const hands = handMoments(plan, made);
  const shown = firstHands(hands);
  const span = { fromMs: blocks[0]?.fromMs ?? 0, toMs: blocks.at(-1)?.toMs ?? 0 };
  const sky = skyMoments(plan, made, span).map(
    ({ ms, text }): Bare => ({ ms, frame: null, text, hand: false, kind: 'sky', toTheMinute: false }),
  );
  const home: Bare[] = [
    {
      ms: span.toMs,
      frame: null,
      text: plan.day.travelMin > 0 ? 'Home' : 'Done',
      hand: false,
      kind: 'step',
      toTheMinute: true,
    },
  ];
  const lines = [
    ...blocks.filter(({ kind }) => kind !== 'run').map((block) => prepared(made, block)),
    ...runEvents(made),
    ...shown.map(byHand),
    ...sky,
    ...home,
  ].sort((a, b) => a.ms - b.ms);
  return { lines: dated(plan, lines), left: hands.length - shown.length };
}
