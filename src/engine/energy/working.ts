import type { Plan, Source } from '../plan/schema.ts';
import type { SourceSummary } from '../schedule-types.ts';
import {
  DEFINITION,
  type Draft,
  framesUntil,
  PRACTICE,
  sameAs,
  term,
  type Worked,
  type Workings,
} from '../working/make.ts';
import { ofMargin } from '../working/margins.ts';
import type { Term } from '../working/types.ts';
import { capacityShare, ratedWh } from './battery.ts';
import { drawn, left, leftPercent, ofSource, phasesOf, run } from './drawn-working.ts';
import { swapWorkings } from './swap-working.ts';

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
  const { name, kind, needed: packs, drawnWh, usableWh, swapFrames } = summary;
  const counted = kind === 'battery' && packs - 1 === swapFrames.length;
  const listed = swapFrames.slice(0, 12).join(', ');
  return {
    title: `${name}: packs needed`,
    value: packs,
    unit: 'packs',
    expression: 'swaps + 1',
    terms: [term('swaps', 'swaps', packs - 1, 'swaps', counted ? ofSource(name, 'swaps') : null)],
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

function workingsOf(of: Worked, source: Source, summary: SourceSummary, i: number): Workings {
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
    ...swapWorkings(of, source, summary, i),
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

function swaps({ made: { sources } }: Worked): Draft {
  return {
    title: 'Swaps',
    value: sources.reduce((sum, { swapFrames }) => sum + swapFrames.length, 0),
    unit: 'swaps',
    expression: sources.length === 0 ? '0' : sources.map((_, i) => `swaps${i + 1}`).join(' + '),
    terms: sources.map(({ name, kind, swapFrames }, i) =>
      term(
        `swaps${i + 1}`,
        `swaps of ${name}`,
        swapFrames.length,
        'swaps',
        kind === 'mains' ? null : ofSource(name, 'swaps'),
      ),
    ),
    remarks: ['A pack is swapped before the frame that it would not last through: counted frame by frame.'],
    source: DEFINITION,
  };
}

/** Workings of the energy. */
export const energyWorkings = (of: Worked): Workings => ({
  'totals.energyWh': () => energy(of),
  'run.swaps': () => swaps(of),
  'run.lengthS': () => run(of, phasesOf(of)),
  ...Object.assign(
    {},
    ...of.made.sources.map((summary, i) => {
      const source = of.plan.power.sources[i];
      return source ? workingsOf(of, source, summary, i) : {};
    }),
  ),
});

/** Workings of the energy at one frame. */
export function frameEnergyWorkings(of: Worked, k: number): Workings {
  const swapFrames = of.made.sources.flatMap((source) => source.swapFrames).filter((frame) => frame > k + 1);
  return {
    ...(swapFrames.length > 0 && {
      toSwap: () =>
        framesUntil(
          'Swap in',
          'swapFrame',
          'frame before which a pack is swapped next',
          k,
          Math.min(...swapFrames),
        ),
    }),
    ...Object.fromEntries(
      of.plan.power.sources.flatMap((source, i) =>
        source.kind === 'mains'
          ? []
          : [
              [ofSource(source.name, 'leftWh'), () => left(of, source, i, k)],
              [ofSource(source.name, 'leftPercent'), () => leftPercent(of, source, i, k)],
            ],
      ),
    ),
  };
}
