/** What happens in one interval, one after another: how the beginning, the length and the end of each came about. */
import { openShutterS } from '../exposure/shutter.ts';
import {
  DEFINITION,
  type Draft,
  ofFrame,
  sameAs,
  term,
  type Worked,
  type Workings,
} from '../working/make.ts';
import type { Term } from '../working/types.ts';
import { cameraPhases, type Phase } from './cycle.ts';

/** A stretch of a lane; its figure where how long it lasts is one. */
interface Stretch {
  words: string;
  lastsS: number;
  figure: string | null;
}

/** A lane with its stretches; what it begins with, if that is not the trigger. */
interface Lane {
  name: 'camera' | 'rig' | 'free';
  from: { expression: string; terms: readonly Term[] } | null;
  stretches: readonly Stretch[];
}

const WORDS: Readonly<Record<Phase['kind'], string>> = {
  lag: 'Shutter lag',
  exposure: 'Exposure',
  dark: 'Dark frame',
  write: 'Write',
};

function cameraLane({ plan, made }: Worked, k: number): Lane {
  const rung = made.exposure?.rungs[made.columns.rung?.[k] ?? 0];
  const phases = cameraPhases(plan, rung?.openS ?? openShutterS(plan));
  const one = plan.exposure.bracketCount === 1;
  const stretches = phases.map(({ kind, durationS }) => ({
    words: WORDS[kind],
    lastsS: durationS,
    figure: one && kind === 'exposure' ? ofFrame(k, 'openS') : null,
  }));
  return { name: 'camera', from: null, stretches };
}

function rigLane({ plan, made: { columns } }: Worked, k: number): Lane {
  const stretch = (words: string, column: Float64Array, what: string): Stretch => ({
    words,
    lastsS: column[k] as number,
    figure: ofFrame(k, what),
  });
  const moves =
    plan.move.order === 'inTurn'
      ? columns.axes.map(({ name, moveS }) => stretch(name, moveS, `axes.${name}.moveS`))
      : [stretch('Move', columns.moveS, 'moveS')];
  const all = [
    stretch('Hold still', columns.holdS, 'holdS'),
    ...moves,
    stretch('Settle', columns.settleS, 'settleS'),
  ];
  const moved = plan.move.mode === 'moveShootMove';
  return { name: 'rig', from: null, stretches: moved ? all : [] };
}

/** What is free after the longer lane. */
function freeLane({ plan, made: { columns } }: Worked, k: number): Lane {
  const lane = (column: 'cameraS' | 'rigS', words: string) =>
    term(column, words, columns[column][k] as number, 's', ofFrame(k, column));
  const spareS = columns.spareS[k] as number;
  return {
    name: 'free',
    from: {
      expression: 'max(cameraS, rigS)',
      terms: [lane('cameraS', 'camera lane'), lane('rigS', 'rig lane')],
    },
    stretches: [
      { words: 'Guard', lastsS: plan.cycle.guardS, figure: null },
      { words: 'Spare', lastsS: spareS, figure: ofFrame(k, 'spareS') },
    ],
  };
}

/** The sum of the stretches before one, or up to its end. */
function upTo({ from, stretches }: Lane, count: number, title: string): Draft {
  const parts = stretches
    .slice(0, count)
    .map(({ words, lastsS, figure }, n) => term(`part${n + 1}S`, words.toLowerCase(), lastsS, 's', figure));
  const sum = [...(from ? [from.expression] : []), ...parts.map(({ symbol }) => symbol)].join(' + ');
  return {
    title,
    unit: 's',
    expression: sum || '0',
    terms: [...(from?.terms ?? []), ...parts],
    remarks: ['From the trigger.'],
    source: DEFINITION,
  };
}

function workingsOf(given: Lane): Workings {
  // What takes no time does not stand in its lane.
  const lane = { ...given, stretches: given.stretches.filter(({ lastsS }) => lastsS > 0) };
  return Object.assign(
    {},
    ...lane.stretches.map(({ words, lastsS, figure }, n) => {
      const name = `lane.${lane.name}.${n + 1}`;
      return {
        [`${name}.startS`]: () => upTo(lane, n, `${words} begins`),
        [`${name}.lastsS`]: () => sameAs(`${words} lasts`, words.toLowerCase(), lastsS, 's', figure),
        [`${name}.endS`]: () => upTo(lane, n + 1, `${words} ends`),
      };
    }),
  );
}

/** Workings of the stretches of one frame's lanes, in their order: `lane.camera.2.startS`. @param k - counted from 0 */
export const frameLaneWorkings = (of: Worked, k: number): Workings =>
  Object.assign({}, ...[cameraLane(of, k), rigLane(of, k), freeLane(of, k)].map(workingsOf));
