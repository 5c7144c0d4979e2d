/** A schedule in plain words: what the prompt prints, and what goes into a text file. */
import { cameraPhases } from '../engine/cycle/cycle.ts';
import type { Rung } from '../engine/exposure/ladder.ts';
import { rungWords } from '../engine/exposure/ramp-words.ts';
import { bytes, counted, figure, seconds, withUnit } from '../engine/findings/words.ts';
import type { Plan } from '../engine/plan/schema.ts';
import type { AxisColumns, Schedule, SourceSummary } from '../engine/schedule-types.ts';
import type { Sheet } from '../engine/sheet/types.ts';
import { clockAt as clockText } from '../engine/time/clock.ts';
import { cautionsOf } from './cautions.ts';
import { cleanText } from './clean.ts';
import { hanging, plainText, TEXT_WIDTH, wrapped } from './paragraphs.ts';
import { rigRows } from './rig-rows.ts';
import { sheetRows } from './sheet-rows.ts';

/** A line of a section: a label and what is said under it. */
type Row = readonly [label: string, text: string];

/** More events than this are counted, not listed. */
const MOST_EVENTS = 100;

const dayName = new Intl.DateTimeFormat('en-GB', { weekday: 'short', timeZone: 'UTC' });

/** `Sat 2026-08-08 20:31:10 +02:00` of an ISO time with its offset. */
function momentText(iso: string): string {
  const [date = '', rest = ''] = iso.split('T');
  const [clock = '', offset = ''] = [rest.slice(0, -6), rest.slice(-6)];
  return `${dayName.format(Date.parse(`${date}T00:00:00Z`))} ${date} ${clock} ${offset}`;
}

const clockAt = ({ columns, startMs, offsets }: Schedule, frame: number): string =>
  clockText(startMs + (columns.elapsedS[frame - 1] ?? 0) * 1000, offsets);

const frameText = (schedule: Schedule, frame: number): string =>
  `frame ${frame} (${clockAt(schedule, frame)})`;

function pacing(plan: Plan, { totals }: Schedule): Row[] {
  const { frames, clipFrames, rawIntervalS, intervalS, dialS } = totals;
  const { handlesFrames, frameRate, holdFrames } = plan.clip;
  const handles = handlesFrames > 0 ? `, ${handlesFrames} of them a handle at each end` : '';
  const held = holdFrames > 1 ? `, each held for ${holdFrames}: ${counted(clipFrames, 'clip frame')}` : '';
  const asked = rawIntervalS === intervalS ? '' : ` (${withUnit(rawIntervalS, 's')} asked for)`;
  const counts = plan.trigger.counts === 'startToStart' ? 'start to start' : 'end to start';
  return [
    [
      'Clip',
      `${seconds(totals.clipLengthS)} at ${frameRate} fps: ${counted(frames, 'frame')}${held}${handles}`,
    ],
    [
      'Interval',
      `${withUnit(intervalS, 's')}${asked}; set the trigger to ${withUnit(dialS, 's')}, ${counts}`,
    ],
    ['Event', `${seconds(totals.eventDurationS)}, shown ${figure(totals.speedUp)} times faster`],
    ['First frame', momentText(totals.firstFrameAt)],
    ['Last frame', momentText(totals.lastFrameAt)],
  ];
}

const PHASES = { lag: 'lag', exposure: 'exposure', dark: 'dark frame', write: 'write' } as const;

/** The camera lane of a frame, counted from 0, as a sum: the stretches of one kind together. */
function cameraText(plan: Plan, { columns, exposure }: Schedule, k: number): string {
  const sums = new Map<string, number>();
  const rung = exposure?.rungs[columns.rung?.[k] ?? 0];
  for (const { kind, durationS } of cameraPhases(plan, rung?.openS)) {
    sums.set(PHASES[kind], (sums.get(PHASES[kind]) ?? 0) + durationS);
  }
  return [...sums].map(([phase, durationS]) => `${phase} ${withUnit(durationS, 's')}`).join(' + ');
}

function cycle(plan: Plan, schedule: Schedule): Row[] {
  const { columns, totals } = schedule;
  const k = totals.longestCycleFrame - 1;
  const s = (values: Float64Array) => withUnit(values[k] ?? 0, 's');
  const rig = `hold ${s(columns.holdS)} + move ${s(columns.moveS)} + settle ${s(columns.settleS)} = ${s(columns.rigS)}`;
  return [
    ['Longest', frameText(schedule, totals.longestCycleFrame)],
    ['Camera', `${cameraText(plan, schedule, k)} = ${s(columns.cameraS)}`],
    ['Rig', plan.move.mode === 'moveShootMove' ? rig : 'asks for no time of its own'],
    [
      'Spare',
      `${withUnit(totals.tightestSpareS, 's')} at the tightest, ${frameText(schedule, totals.tightestFrame)}`,
    ],
    [
      'Shortest',
      `${withUnit(totals.shortestIntervalS, 's')}, guard of ${withUnit(plan.cycle.guardS, 's')} included`,
    ],
  ];
}

/** Settings and light at the ends of the run, and how they change; nothing if the light is not planned. */
function exposure(_plan: Plan, { columns, exposure: planned, totals }: Schedule): Row[] {
  const { rung, evScene, evError } = columns;
  if (!planned || !rung || !evScene || !evError) return [];
  const end = (label: string, k: number): Row => {
    const words = rungWords(planned.rungs[rung[k] ?? 0] as Rung);
    const off = Math.abs(evError[k] ?? 0) < 0.05 ? '' : `, ${evErrorWords(evError[k] ?? 0)}`;
    return [label, `${words} for a scene of ${withUnit(evScene[k] ?? 0, 'EV')}${off}`];
  };
  if (!planned.follows) return [end('All frames', 0)];
  const changes: Row = ['Changes', `${counted(planned.changes.length, 'change')}, listed under Events`];
  return [end('First', 0), end('Last', totals.frames - 1), changes];
}

const evErrorWords = (stops: number): string =>
  `${withUnit(Math.abs(stops), 'stops')} ${stops > 0 ? 'brighter' : 'darker'} than wanted`;

const MODES = {
  still: 'The rig does not move',
  moveShootMove: 'The rig moves only between exposures',
  continuous: 'The rig moves all the time',
} as const;

function axisText({ steps, stepsPerUnit, unit, largestMoveSteps: largest }: AxisColumns): string {
  const first = (steps[0] ?? 0) / stepsPerUnit;
  const last = (steps.at(-1) ?? 0) / stepsPerUnit;
  const most = largest === 0 ? 'does not move' : `at most ${withUnit(largest / stepsPerUnit, unit)} a frame`;
  return `${withUnit(first, unit)} to ${withUnit(last, unit)}, ${most}`;
}

const move = (plan: Plan, { columns }: Schedule): Row[] => [
  ['Mode', `${MODES[plan.move.mode]}.`],
  ...columns.axes.map((axis): Row => [axis.name, axisText(axis)]),
];

function sourceText(schedule: Schedule, source: SourceSummary): string {
  const drawn = `${withUnit(source.drawnWh, 'Wh')} drawn, ${withUnit(source.meanW, 'W')} on average`;
  if (source.kind === 'mains') return `${drawn}, from the mains`;
  const [next, ...later] = source.swapFrames;
  const more = later.length > 0 ? ` and ${counted(later.length, 'time')} after that` : '';
  const swaps = next === undefined ? '' : `; swap before ${frameText(schedule, next)}${more}`;
  const short =
    source.shortAtFrame === null ? '' : `; NOT ENOUGH from ${frameText(schedule, source.shortAtFrame)}`;
  const each = withUnit(source.ratedWh ?? 0, 'Wh');
  const packs = `${counted(source.needed, 'pack')} of ${each} needed, ${source.brought} brought`;
  return `${drawn}; ${packs}${swaps}${short}`;
}

const power = (_plan: Plan, schedule: Schedule): Row[] =>
  schedule.sources.map((source) => [source.name, sourceText(schedule, source)]);

function storage(plan: Plan, { cards, totals }: Schedule): Row[] {
  const { copies } = plan.storage;
  const withCopies = copies > 1 ? `, ${bytes(totals.copiesBytes)} in ${copies} copies` : '';
  return [
    ...cards.map(({ name, firstFrame, lastFrame, usedBytes, usableBytes }): Row => {
      const frames = firstFrame === null ? 'not used' : `frames ${firstFrame} to ${lastFrame}`;
      return [name, `${frames}, ${bytes(usedBytes)} of ${bytes(usableBytes)} usable`];
    }),
    ['In all', `${bytes(totals.storageBytes)} at ${bytes(totals.frameBytes)} a frame${withCopies}`],
  ];
}

function events(_plan: Plan, { events: all }: Schedule): Row[] {
  const shown = all.slice(0, MOST_EVENTS).map(({ at, frame, text, lostFrames }): Row => {
    const lost = lostFrames > 0 ? `; ${counted(lostFrames, 'frame')} lost` : '';
    return [momentText(at), `frame ${frame}: ${text}${lost}`];
  });
  const left = all.length - shown.length;
  return left > 0
    ? [...shown, ['…', `and ${counted(left, 'event')} more: --json and --frames have them all`]]
    : shown;
}

const findings = (_plan: Plan, schedule: Schedule): Row[] =>
  schedule.findings.map(({ severity, message, frame }) => [
    severity === 'stop' ? 'STOP' : severity,
    frame === null ? message : `${message} (${clockAt(schedule, frame)})`,
  ]);

const inUnit = (value: number, unit: string): string =>
  unit === 'bytes' ? bytes(value) : withUnit(value, unit);

const margins = (_plan: Plan, schedule: Schedule): Row[] =>
  schedule.margins.map(({ label, used, available, left, unit, when }) => [
    label,
    `${inUnit(used, unit)} of ${inUnit(available, unit)}, ${inUnit(left, unit)} left; ${when}`,
  ]);

const SECTIONS: readonly [
  heading: string,
  rows: (plan: Plan, schedule: Schedule, sheet: Sheet | null) => Row[],
][] = [
  ['Findings', findings],
  ['Pacing', pacing],
  ['Exposure', exposure],
  ['Cycle', cycle],
  ['Move', move],
  ['Rig', (_plan, schedule) => rigRows(schedule)],
  ['Sheet', (plan, _schedule, sheet) => (sheet ? sheetRows(plan, sheet) : [])],
  ['Power', power],
  ['Cards', storage],
  ['Events', events],
  ['Margins', margins],
];

function section(heading: string, rows: readonly Row[]): string[] {
  if (rows.length === 0) return [];
  const longest = Math.max(...rows.map(([label]) => label.length));
  const column = Math.min(longest, 32) + 4;
  return ['', heading, ...rows.flatMap(([label, text]) => hanging(label, plainText(text), column))];
}

/**
 * The schedule in plain words, at most 100 characters a line: the verdict first, then what is wrong, pacing,
 * cycle, move, power, cards, events, margins, and the cautions that the plan gives cause for.
 * @param sheet - exposure sheet of a stop-motion plan, else null
 */
export function summaryText(plan: Plan, schedule: Schedule, sheet: Sheet | null): string {
  const lines = [
    ...wrapped(plainText(plan.title), TEXT_WIDTH),
    ...wrapped(plainText(schedule.verdict), TEXT_WIDTH),
    ...SECTIONS.flatMap(([heading, rows]) => section(heading, rows(plan, schedule, sheet))),
    '',
    'Cautions',
    ...cautionsOf(plan, schedule).flatMap((caution) => hanging('-', caution, 4)),
  ];
  return `${cleanText(lines.join('\n'))}\n`;
}
