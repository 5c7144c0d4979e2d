/** How what a source gives came about: seconds by what happens in them, and the watts over them. */
import { cameraLane } from '../cycle/cycle.ts';
import type { Plan, Source } from '../plan/schema.ts';
import type { SourceSummary } from '../schedule-types.ts';
import { DEFINITION, type Draft, none, ofFrame, term, type Worked } from '../working/make.ts';
import type { Term } from '../working/types.ts';
import { fullWh } from './battery.ts';

export const ofSource = (name: string, what: string): string => `sources.${name}.${what}`;

/** Seconds of some frames by what happens in them. */
interface Phases {
  runS: number;
  exposingS: number;
  writingS: number;
  movingS: number;
  axesS: number[];
}

/** Frames by their indices: from one to before another. */
interface Span {
  from: number;
  to: number;
}

const total = (column: Float64Array, { from, to }: Span): number =>
  column.subarray(from, to).reduce((sum, value) => sum + value, 0);

/** Seconds that a frame's load goes on: its interval, or the longer lane if that overruns or no frame follows. */
function runSeconds({ columns: { intervalS, cameraS, rigS } }: Worked['made'], { from, to }: Span): number {
  const last = intervalS.length - 1;
  let sum = 0;
  for (let k = from; k < to; k += 1) {
    const longer = Math.max(cameraS[k] as number, rigS[k] as number);
    sum += k < last ? Math.max(intervalS[k] as number, longer) : longer;
  }
  return sum;
}

/** Seconds that the camera is busy after closing. */
function writingSeconds(plan: Plan, { columns, exposure }: Worked['made'], { from, to }: Span): number {
  const { rung } = columns;
  if (rung === null || exposure === null) return (to - from) * cameraLane(plan).busyS;
  const busyS = exposure.rungs.map(({ openS }) => cameraLane(plan, openS).busyS);
  return rung.subarray(from, to).reduce((sum, index) => sum + (busyS[index] as number), 0);
}

/** Seconds of the whole run, or of some of its frames. */
export function phasesOf({ plan, made }: Worked, span = { from: 0, to: made.totals.frames }): Phases {
  const { exposureS, moveS, axes } = made.columns;
  return {
    runS: runSeconds(made, span),
    exposingS: total(exposureS, span),
    writingS: writingSeconds(plan, made, span),
    movingS: total(moveS, span),
    axesS: axes.map((axis) => total(axis.moveS, span)),
  };
}

export function run({ made }: Worked, { runS }: Phases): Draft {
  const { eventDurationS, frames } = made.totals;
  const { cameraS, rigS } = made.columns;
  const lastS = Math.max(cameraS[frames - 1] as number, rigS[frames - 1] as number);
  return {
    title: 'Length of the run',
    value: runS,
    unit: 's',
    expression: 'eventS + lastS + overrunS',
    terms: [
      term('eventS', 'event', eventDurationS, 's', 'totals.eventDurationS'),
      term('lastS', 'longer lane of the last frame', lastS, 's'),
      term(
        'overrunS',
        'by which longer lanes overrun their intervals',
        Math.max(0, runS - eventDurationS - lastS),
        's',
      ),
    ],
    source: DEFINITION,
  };
}

type LoadWatts = 'alwaysOnW' | 'idleW' | 'exposingW' | 'writingW' | 'movingW' | 'holdingW';

/** What all loads of a source draw from it, over their feeds. */
const watts = (plan: Plan, source: Source, which: LoadWatts): number =>
  plan.power.loads
    .filter((load) => load.source === source.name)
    .reduce((sum, load) => sum + load[which] / load.efficiencyShare, 0);

/** One part of what is drawn: watts over seconds. */
interface Part {
  symbol: LoadWatts;
  words: string;
  secondsText: string;
}

const PARTS: readonly Part[] = [
  { symbol: 'alwaysOnW', words: 'always on', secondsText: 'runS' },
  { symbol: 'exposingW', words: 'exposing', secondsText: 'exposingS' },
  { symbol: 'writingW', words: 'writing', secondsText: 'writingS' },
  { symbol: 'idleW', words: 'idle', secondsText: '(runS - exposingS - writingS)' },
  { symbol: 'movingW', words: 'moving', secondsText: 'movingS' },
  { symbol: 'holdingW', words: 'holding', secondsText: '(runS - movingS)' },
];

/** What the motors of the axes on a source draw: symbols by the place of the axis. */
function axisParts(plan: Plan, source: Source, { axesS }: Phases): { texts: string[]; terms: Term[] } {
  const parts = plan.rig.axes.flatMap(({ name, source: from, moveW, holdW }, i) => {
    if (from !== source.name || (moveW === 0 && holdW === 0)) return [];
    const n = i + 1;
    return [
      {
        text: `axis${n}MoveW * axis${n}S + axis${n}HoldW * (runS - axis${n}S)`,
        terms: [
          term(`axis${n}MoveW`, `${name} moving`, moveW, 'W'),
          term(`axis${n}S`, `seconds that ${name} moves`, axesS[i] ?? 0, 's'),
          term(`axis${n}HoldW`, `${name} holding`, holdW, 'W'),
        ],
      },
    ];
  });
  return { texts: parts.map(({ text }) => text), terms: parts.flatMap(({ terms }) => terms) };
}

const SECONDS: readonly [keyof Phases & `${string}S`, string][] = [
  ['exposingS', 'seconds exposing'],
  ['writingS', 'seconds writing'],
  ['movingS', 'seconds moving'],
];

/** What is drawn over some seconds, as a formula in watt-seconds, and its numbers; null if nothing draws. */
function drawnParts(
  plan: Plan,
  source: Source,
  phases: Phases,
  runFigure: string | null,
): { text: string; terms: Term[] } | null {
  const loads = PARTS.map((part) => ({ ...part, drawW: watts(plan, source, part.symbol) })).filter(
    ({ drawW }) => drawW !== 0,
  );
  const axes = axisParts(plan, source, phases);
  const texts = [...loads.map(({ symbol, secondsText }) => `${symbol} * ${secondsText}`), ...axes.texts];
  if (texts.length === 0) return null;
  const text = texts.join(' + ');
  const seconds = SECONDS.filter(([symbol]) => text.includes(symbol)).map(([symbol, words]) =>
    term(symbol, words, phases[symbol] as number, 's'),
  );
  return {
    text,
    terms: [
      ...loads.map(({ symbol, words, drawW }) => term(symbol, `watts ${words}`, drawW, 'W')),
      ...axes.terms,
      ...(text.includes('runS') ? [term('runS', 'seconds in all', phases.runS, 's', runFigure)] : []),
      ...seconds,
    ],
  };
}

const REMARKS = [
  'All loads on this source together, each divided by the efficiency of its feed; seconds of all frames together.',
  'Idle is what is left when the camera neither exposes nor writes; holding, when the rig does not move.',
];
const SOURCE = 'Energy is power by time: 1 Wh is 3600 J (SI). The watts are your own.';

/** What is drawn over some frames. @param runFigure - name of the figure that their seconds are */
export function drawnOver(of: Worked, source: Source, span: Span, runFigure: string | null = null): Draft {
  const title = `${source.name}: drawn`;
  const parts = drawnParts(of.plan, source, phasesOf(of, span), runFigure);
  if (parts === null) return none(title, 'Wh', 'Nothing draws from it.');
  return {
    title,
    unit: 'Wh',
    expression: `(${parts.text}) / 3600`,
    terms: parts.terms,
    remarks: REMARKS,
    source: SOURCE,
  };
}

/** What is drawn over the run. */
export const drawn = (of: Worked, source: Source, { drawnWh }: SourceSummary): Draft => ({
  ...drawnOver(of, source, { from: 0, to: of.made.totals.frames }, 'run.lengthS'),
  value: drawnWh,
});

/** The same in percent of a full pack. */
export function leftPercent(of: Worked, source: Source, i: number, k: number): Draft {
  const full = fullWh(source, of.plan.power.temperatureC);
  const leftWh = of.made.columns.sources[i]?.leftWh[k] ?? 0;
  const title = `${source.name}: left of a full pack`;
  if (full === 0) return none(title, '%', 'At this temperature even a full pack gives nothing.');
  return {
    title,
    unit: '%',
    expression: '100 * leftWh / packWh',
    terms: [
      term('leftWh', 'left in the pack', leftWh, 'Wh', ofFrame(k, ofSource(source.name, 'leftWh'))),
      term('packWh', 'a full pack at the temperature', full, 'Wh'),
    ],
    source: DEFINITION,
  };
}

/** What is left in the pack in use when a frame's shutter opens. */
export function left({ plan, made }: Worked, source: Source, i: number, k: number): Draft {
  const swaps = made.sources[i]?.swapFrames ?? [];
  const from = Math.max(1, ...swaps.filter((frame) => frame <= k + 1)) - 1;
  const parts = drawnParts(plan, source, phasesOf({ plan, made }, { from, to: k }), null);
  const full = term(
    'packWh',
    'a full pack at the temperature',
    fullWh(source, plan.power.temperatureC),
    'Wh',
  );
  return {
    title: `${source.name}: left`,
    value: made.columns.sources[i]?.leftWh[k] ?? 0,
    unit: 'Wh',
    expression: parts === null ? 'packWh' : `max(0, packWh - (${parts.text}) / 3600)`,
    terms: [full, ...(parts?.terms ?? [])],
    remarks: [
      from === 0
        ? 'On the first pack.'
        : `The pack came before frame ${from + 1}; the seconds are those since then.`,
      ...REMARKS,
    ],
    source: SOURCE,
  };
}
