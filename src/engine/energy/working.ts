/** How the energy came about: packs, loads, and what is drawn in which phase. */
import { cameraLane } from '../cycle/cycle.ts';
import type { Plan, Source } from '../plan/schema.ts';
import type { SourceSummary } from '../schedule-types.ts';
import {
  DEFINITION,
  type Draft,
  none,
  PRACTICE,
  sameAs,
  term,
  type Worked,
  type Workings,
} from '../working/make.ts';
import { ofMargin } from '../working/margins.ts';
import type { Term } from '../working/types.ts';
import { capacityShare, ratedWh } from './battery.ts';

const ofSource = (name: string, what: string): string => `sources.${name}.${what}`;

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

const phasesOf = ({ plan, made }: Worked): Phases => ({
  runS: runSeconds(made),
  exposingS: total(made.columns.exposureS),
  writingS: writingSeconds(plan, made),
  movingS: total(made.columns.moveS),
  axesS: made.columns.axes.map(({ moveS }) => total(moveS)),
});

function run({ made }: Worked, { runS }: Phases): Draft {
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

function drawn(of: Worked, source: Source, summary: SourceSummary): Draft {
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

function rated(source: Source, summary: SourceSummary): Draft {
  const base = { title: `${source.name}: rated`, value: summary.ratedWh ?? 0, unit: 'Wh' };
  if (source.energyWh !== null)
    return {
      ...base,
      expression: 'printedWh',
      terms: [term('printedWh', 'energy as printed on it', source.energyWh, 'Wh')],
      source: DEFINITION,
    };
  return {
    ...base,
    expression: 'voltageV * capacityMah / 1000',
    terms: [
      term('voltageV', 'nominal voltage', source.voltageV, 'V'),
      term('capacityMah', 'capacity', source.capacityMah, 'mAh'),
    ],
    remarks: ['By the nominal voltage, never the charging voltage.'],
    source: 'Rated energy is nominal volts by ampere-hours (as in the guidance of IATA, second-hand).',
  };
}

/** Share of the rated energy at the temperature, between the two points of the curve about it. */
function capacity(plan: Plan, source: Source): Draft {
  const { temperatureC } = plan.power;
  const points = [...source.capacityCurve].sort((a, b) => a.temperatureC - b.temperatureC);
  const above = points.findIndex((point) => point.temperatureC >= temperatureC);
  const [lower, upper] = [points[above - 1], points[above]];
  const base = {
    title: `${source.name}: capacity at the temperature`,
    value: capacityShare(source, temperatureC),
    unit: '',
  };
  const SOURCE =
    'Straight lines between the points of the curve. The curve of a new plan is common practice, no source: the data sheet of the cells knows better.';
  if (!lower || !upper)
    return {
      ...sameAs('', 'share at the nearest point of the curve', base.value, '', null),
      ...base,
      remarks: ['Level beyond the ends of the curve.'],
      source: SOURCE,
    };
  return {
    ...base,
    expression: 'lowerShare + (temperatureC - lowerC) / (upperC - lowerC) * (upperShare - lowerShare)',
    terms: [
      term('lowerShare', 'share at the point below', lower.share, ''),
      term('temperatureC', 'temperature', temperatureC, '°C'),
      term('lowerC', 'temperature of the point below', lower.temperatureC, '°C'),
      term('upperC', 'temperature of the point above', upper.temperatureC, '°C'),
      term('upperShare', 'share at the point above', upper.share, ''),
    ],
    source: SOURCE,
  };
}

const ratedTerm = (source: Source): Term =>
  term('ratedWh', 'rated', ratedWh(source), 'Wh', ofSource(source.name, 'ratedWh'));
const capacityTerm = (plan: Plan, source: Source): Term =>
  term(
    'capacityShare',
    'capacity at the temperature',
    capacityShare(source, plan.power.temperatureC),
    '',
    ofSource(source.name, 'capacityShare'),
  );

const usable = ({ plan }: Worked, source: Source, summary: SourceSummary): Draft => ({
  title: `${source.name}: usable, one pack`,
  value: summary.usableWh ?? 0,
  unit: 'Wh',
  expression: 'ratedWh * capacityShare * (1 - reserveShare)',
  terms: [
    ratedTerm(source),
    capacityTerm(plan, source),
    term('reserveShare', 'reserve', source.reserveShare, ''),
  ],
  source: PRACTICE,
});

const drawnTerm = (summary: SourceSummary): Term =>
  term('drawnWh', 'drawn', summary.drawnWh, 'Wh', ofSource(summary.name, 'drawnWh'));

function mean(of: Worked, summary: SourceSummary): Draft {
  const { runS } = phasesOf(of);
  return {
    title: `${summary.name}: mean draw`,
    value: summary.meanW,
    unit: 'W',
    expression: runS > 0 ? '3600 * drawnWh / runS' : '0',
    terms: runS > 0 ? [drawnTerm(summary), term('runS', 'length of the run', runS, 's', 'run.lengthS')] : [],
    source: 'Power is energy by time.',
  };
}

function needed(summary: SourceSummary): Draft {
  const { name, needed: packs, drawnWh, usableWh, swapFrames } = summary;
  const listed = swapFrames.slice(0, 12).join(', ');
  return {
    title: `${name}: packs needed`,
    value: packs,
    unit: 'packs',
    expression: 'swaps + 1',
    terms: [term('swaps', 'swaps', packs - 1, 'swaps')],
    remarks: [
      'A pack is swapped before the frame that it would not last through: counted frame by frame.',
      ...(swapFrames.length > 0
        ? [`Fresh packs from frame ${listed}${swapFrames.length > 12 ? ' and so on' : ''}.`]
        : []),
      ...(usableWh ? [`Drawn by usable is ${drawnWh / usableWh}: no fewer packs than that could do.`] : []),
    ],
    source: DEFINITION,
  };
}

function sourceMargin({ plan, made }: Worked, source: Source, summary: SourceSummary): Workings {
  const margin = made.margins.find(({ id }) => id === `source:${source.name}`);
  if (!margin) return {};
  return {
    [ofMargin(margin, 'used')]: () =>
      sameAs(`${source.name}: used`, 'drawn', margin.used, 'Wh', ofSource(source.name, 'drawnWh'), {
        value: summary.drawnWh,
      }),
    [ofMargin(margin, 'available')]: () => ({
      title: `${source.name}: available`,
      value: margin.available,
      unit: 'Wh',
      expression: 'ratedWh * capacityShare * packs',
      terms: [
        ratedTerm(source),
        capacityTerm(plan, source),
        term('packs', 'packs brought', source.count, 'packs'),
      ],
      source: PRACTICE,
    }),
  };
}

function workingsOf(of: Worked, source: Source, summary: SourceSummary): Workings {
  const mains = source.kind === 'mains';
  const name = (what: string) => ofSource(source.name, what);
  return {
    ...(!mains && {
      [name('ratedWh')]: () => rated(source, summary),
      [name('capacityShare')]: () => capacity(of.plan, source),
      [name('usableWh')]: () => usable(of, source, summary),
    }),
    [name('drawnWh')]: () => drawn(of, source, summary),
    [name('meanW')]: () => mean(of, summary),
    [name('needed')]: () => needed(summary),
    ...sourceMargin(of, source, summary),
  };
}

function energy({ made: { sources, totals } }: Worked): Draft {
  return {
    title: 'Energy',
    value: totals.energyWh,
    unit: 'Wh',
    expression: sources.length === 0 ? '0' : sources.map((_, i) => `drawn${i + 1}Wh`).join(' + '),
    terms: sources.map(({ name, drawnWh }, i) =>
      term(`drawn${i + 1}Wh`, `drawn from ${name}`, drawnWh, 'Wh', ofSource(name, 'drawnWh')),
    ),
    source: DEFINITION,
  };
}

/** Workings of the energy. */
export const energyWorkings = (of: Worked): Workings => ({
  'totals.energyWh': () => energy(of),
  'run.lengthS': () => run(of, phasesOf(of)),
  ...Object.assign(
    {},
    ...of.made.sources.map((summary, i) => {
      const source = of.plan.power.sources[i];
      return source ? workingsOf(of, source, summary) : {};
    }),
  ),
});
