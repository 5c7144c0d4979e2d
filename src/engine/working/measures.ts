/** How what is measured beside the rig came about, from the numbers that were read there. */
import { crossingIntervalS } from '../pacing/pacing.ts';
import { dampingFromSwings, frequencyFromSag, frequencyFromSwings } from '../ringing/measure.ts';
import { DEFINITION, type Draft, term, type Workings } from './make.ts';

const RAO = 'Rao, Mechanical Vibrations, ch. 2 (from memory)';

/** What is measured, and which numbers it takes. */
interface Measure {
  /** Last part of its name. */
  what: string;
  numbers: number;
  /** Throws RangeError if the numbers make no sense. */
  draft: (...numbers: readonly number[]) => Draft;
}

function positive(...numbers: readonly number[]): void {
  for (const number of numbers)
    if (!(number > 0 && number < Number.POSITIVE_INFINITY))
      throw new RangeError(`measured: found ${number}, allowed: more than 0`);
}

const DECREMENT = 'log(first / later) / swings';

const MEASURES = {
  /** How much lower the tip is with the payload, mm. */
  sag: {
    what: 'frequencyHz',
    numbers: 1,
    draft: (sagMm = 0) => ({
      title: 'Rings at, from the sag',
      value: frequencyFromSag(sagMm),
      unit: 'Hz',
      expression: 'sqrt(gravity / sagMm) / (2 * pi)',
      terms: [
        term('gravity', 'gravity', 9806.65, 'mm/s^2'),
        term('sagMm', 'sag that the payload adds', sagMm, 'mm'),
      ],
      source: `Static deflection: ${RAO}; g is 9.80665 m/s² (CGPM 1901).`,
    }),
  },
  /** Swings counted, and the seconds that they took. */
  swings: {
    what: 'frequencyHz',
    numbers: 2,
    draft: (swings = 0, tookS = 0) => ({
      title: 'Rings at, from counted swings',
      value: frequencyFromSwings(swings, tookS),
      unit: 'Hz',
      expression: 'swings / tookS',
      terms: [term('swings', 'swings counted', swings, ''), term('tookS', 'time that they took', tookS, 's')],
      source: DEFINITION,
    }),
  },
  /** A swing, a later one, and the swings between. */
  decay: {
    what: 'dampingRatio',
    numbers: 3,
    draft: (first = 0, later = 0, swings = 0) => ({
      title: 'Damping ratio, from swings that die away',
      value: dampingFromSwings(first, later, swings),
      unit: '',
      expression: `${DECREMENT} / sqrt(4 * pi ^ 2 + (${DECREMENT}) ^ 2)`,
      terms: [
        term('first', 'first swing', first, 'mm'),
        term('later', 'later swing', later, 'mm'),
        term('swings', 'swings between', swings, ''),
      ],
      source: `Logarithmic decrement: ${RAO}.`,
    }),
  },
  /** Frames, and the seconds until they were written. */
  write: {
    what: 'writeS',
    numbers: 2,
    draft: (frames = 0, tookS = 0) => {
      positive(frames, tookS);
      return {
        title: 'Write, as timed',
        unit: 's',
        expression: 'tookS / frames',
        terms: [
          term('tookS', 'time that they took', tookS, 's'),
          term('frames', 'frames taken', frames, 'frames'),
        ],
        source: DEFINITION,
      };
    },
  },
  /** The same, and bytes of a frame. */
  card: {
    what: 'bytesPerS',
    numbers: 3,
    draft: (frames = 0, tookS = 0, frameBytes = 0) => {
      positive(frames, tookS, frameBytes);
      return {
        title: 'Rate of the card, as timed',
        unit: 'bytes/s',
        expression: 'frames * frameBytes / tookS',
        terms: [
          term('frames', 'frames taken', frames, 'frames'),
          term('frameBytes', 'bytes of a frame', frameBytes, 'bytes'),
          term('tookS', 'time that they took', tookS, 's'),
        ],
        source: DEFINITION,
      };
    },
  },
  /** Seconds that a subject takes to cross the frame, those on screen, and frames a second of exposures. */
  crossing: {
    what: 'intervalS',
    numbers: 3,
    draft: (realS = 0, screenS = 0, exposureRate = 0) => ({
      title: 'Interval for a crossing',
      value: crossingIntervalS(realS, screenS, exposureRate),
      unit: 's',
      expression: 'realS / (screenS * exposureRate)',
      terms: [
        term('realS', 'crosses the frame in', realS, 's'),
        term('screenS', 'should take on screen', screenS, 's'),
        term('exposureRate', 'exposures in a second of the clip', exposureRate, 'fps'),
      ],
      source: DEFINITION,
    }),
  },
} satisfies Readonly<Record<string, Measure>>;

export type MeasureKind = keyof typeof MEASURES;

/** Name of what follows from something measured: `measure.swings.10:4.1.frequencyHz`. */
export const ofMeasure = (kind: MeasureKind, numbers: readonly number[]): string =>
  `measure.${kind}.${numbers.join(':')}.${MEASURES[kind].what}`;

/** How it came about. @throws RangeError if the numbers make no sense */
export const measureDraft = (kind: MeasureKind, numbers: readonly number[]): Draft =>
  (MEASURES[kind] as Measure).draft(...numbers);

/** Workings of one measurement. @param which - `swings.10:4.1` */
export function measureWorkings(which: string): Workings {
  const [, kind = '', read = ''] = /^(\w+)\.(\d[\d.:e+-]*)$/.exec(which) ?? [];
  const numbers = read.split(':').map(Number);
  const measure = Object.hasOwn(MEASURES, kind) ? (MEASURES[kind as MeasureKind] as Measure) : null;
  if (measure?.numbers !== numbers.length) return {};
  try {
    const draft = measure.draft(...numbers);
    return { [measure.what]: () => draft };
  } catch {
    return {};
  }
}
