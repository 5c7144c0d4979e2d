/** How what a source gives came about: seconds by what happens in them, and the watts over them. */
import { cameraLane } from '../cycle/cycle.ts';
import type { Plan, Source } from '../plan/schema.ts';
import type { SourceSummary } from '../schedule-types.ts';
import { DEFINITION, type Draft, none, term, type Worked } from '../working/make.ts';
import type { Term } from '../working/types.ts';

export const ofSource = (name: string, what: string): string => `sources.${name}.${what}`;

/** Seconds of a run by what happens in them; together from all frames. */
interface Phases {
  runS: number;
  exposingS: number;
  writingS: number;
  movingS: number;
  axesS: number[];
}

const total = (column: Float64Array): number => column.reduce((sum, value) => sum + value, 0);

/** Seconds that a frame's load goes on: its interval, or the longer lane if that overruns or no frame follows. */
function runSeconds({ columns: { intervalS, cameraS, rigS } }: Worked['made']): number {
  const last = intervalS.length - 1;
  return intervalS.reduce((sum, interval, k) => {
    const longer = Math.max(cameraS[k] as number, rigS[k] as number);
    return sum + (k < last ? Math.max(interval, longer) : longer);
  }, 0);
}

/** Seconds that the camera is busy after closing, all frames together. */
function writingSeconds(plan: Plan, { columns, exposure, totals }: Worked['made']): number {
  const { rung } = columns;
  if (rung === null || exposure === null) return totals.frames * cameraLane(plan).busyS;
  const busyS = exposure.rungs.map(({ openS }) => cameraLane(plan, openS).busyS);
  return rung.reduce((sum, index) => sum + (busyS[index] as number), 0);
}

export const phasesOf = ({ plan, made }: Worked): Phases => ({
  runS: runSeconds(made),
  exposingS: total(made.columns.exposureS),
  writingS: writingSeconds(plan, made),
  movingS: total(made.columns.moveS),
  axesS: made.columns.axes.map(({ moveS }) => total(moveS)),
});

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

export function drawn(of: Worked, source: Source, summary: SourceSummary): Draft {
  const phases = phasesOf(of);
  const loads = PARTS.map((part) => ({ ...part, drawW: watts(of.plan, source, part.symbol) })).filter(
    ({ drawW }) => drawW !== 0,
  );
  const axes = axisParts(of.plan, source, phases);
  const texts = [...loads.map(({ symbol, secondsText }) => `${symbol} * ${secondsText}`), ...axes.texts];
  const title = `${source.name}: drawn`;
  if (texts.length === 0) return none(title, 'Wh', 'Nothing draws from it.');
  const whole = texts.join(' + ');
  const seconds = SECONDS.filter(([symbol]) => whole.includes(symbol)).map(([symbol, words]) =>
    term(symbol, words, phases[symbol] as number, 's'),
  );
  return {
    title,
    value: summary.drawnWh,
    unit: 'Wh',
    expression: `(${whole}) / 3600`,
    terms: [
      ...loads.map(({ symbol, words, drawW }) => term(symbol, `watts ${words}`, drawW, 'W')),
      ...axes.terms,
      ...(whole.includes('runS') ? [term('runS', 'length of the run', phases.runS, 's', 'run.lengthS')] : []),
      ...seconds,
    ],
    remarks: [
      'All loads on this source together, each divided by the efficiency of its feed; seconds of all frames together.',
      'Idle is what is left when the camera neither exposes nor writes; holding, when the rig does not move.',
    ],
    source: 'Energy is power by time: 1 Wh is 3600 J (SI). The watts are your own.',
  };
}
