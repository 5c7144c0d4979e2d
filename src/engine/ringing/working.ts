/** How ring and settle came about. */

import { ringGiven } from '../motion/moves.ts';
import type { MoveShape } from '../motion/profile.ts';
import { type AxisOf, axesOf, moveAt, ofAxis } from '../motion/working.ts';
import { focalPx } from '../path/pose.ts';
import { frameFound } from '../working/found.ts';
import {
  DEFINITION,
  type Draft,
  none,
  ofFrame,
  sameAs,
  term,
  type Worked,
  type Workings,
  worth,
} from '../working/make.ts';
import type { Term } from '../working/types.ts';
import { pixelsPerUnit, subjectMm } from './pixels.ts';
import { quietWorkings } from './quiet-working.ts';

const DUHAMEL =
  'Duhamel’s integral over the move for a damped oscillator (Thomson, Theory of Vibration, ch. 4: from memory).';
const DECREMENT = 'Logarithmic decrement (Rao, Mechanical Vibrations, ch. 2: from memory).';

const goesByRinging = ({ plan }: Worked): boolean => ringGiven(plan) !== null;

const omegaOf = ({ plan }: Worked): number => 2 * Math.PI * plan.ringing.frequencyHz;
const decayRateOf = (of: Worked): number => of.plan.ringing.dampingRatio * omegaOf(of);
const rootOf = ({ plan }: Worked): number => Math.sqrt(1 - plan.ringing.dampingRatio ** 2);

const frequency = ({ plan }: Worked): Term =>
  term('frequencyHz', 'natural frequency', plan.ringing.frequencyHz, 'Hz');
const damping = ({ plan }: Worked): Term =>
  term('dampingRatio', 'damping ratio', plan.ringing.dampingRatio, '');
const decay = (of: Worked): Term =>
  term('decayRate', 'decay rate', decayRateOf(of), '1/s', 'ringing.decayRate');

/** Frequency, period and decay of the ring. */
const constants = (of: Worked): Workings => ({
  'ringing.angularFrequency': () => ({
    title: 'Natural angular frequency',
    value: omegaOf(of),
    unit: 'rad/s',
    expression: '2 * pi * frequencyHz',
    terms: [frequency(of)],
    source: DEFINITION,
  }),
  'ringing.dampedFrequency': () => ({
    title: 'Damped angular frequency',
    value: omegaOf(of) * rootOf(of),
    unit: 'rad/s',
    expression: '2 * pi * frequencyHz * sqrt(1 - dampingRatio ^ 2)',
    terms: [frequency(of), damping(of)],
    source: DECREMENT,
  }),
  'ringing.periodS': () => ({
    title: 'Period of the ring',
    unit: 's',
    expression: '1 / (frequencyHz * sqrt(1 - dampingRatio ^ 2))',
    terms: [frequency(of), damping(of)],
    source: DECREMENT,
  }),
  'ringing.decayRate': () => ({
    title: 'Decay rate of the ring',
    value: decayRateOf(of),
    unit: '1/s',
    expression: 'dampingRatio * 2 * pi * frequencyHz',
    terms: [damping(of), frequency(of)],
    source: DECREMENT,
  }),
});

/** |1 − e^(−L x)| of a length x, L = decay rate and i times the damped frequency. */
const pulse = (x: string): string =>
  `sqrt((1 - exp(-decayRate * ${x})) ^ 2 + 4 * exp(-decayRate * ${x}) * sin(ringRate * ${x} / 2) ^ 2)`;

/** Ring of one leg of a move at its end. */
function legText({ jerkS }: MoveShape, n: string): string {
  const box = pulse(jerkS > 0 ? `(accelS${n} - jerkS${n})` : `accelS${n}`);
  const stop = pulse(`(durationS${n} - accelS${n})`);
  const spread = jerkS > 0 ? ` * ${pulse(`jerkS${n}`)} / (omega * jerkS${n})` : '';
  return `pxPerUnit * accel${n} / (omega * ringRate) * ${box} * ${stop}${spread}`;
}

function legTerms({ accel, accelS, durationS, jerkS }: MoveShape, n: string, unit: string): Term[] {
  const which = n === '' ? '' : ', way back';
  return [
    term(`accel${n}`, `acceleration of the move${which}`, accel, `${unit}/s^2`),
    term(`accelS${n}`, `time to speed up${which}`, accelS, 's'),
    term(`durationS${n}`, `time of the move${which}`, durationS, 's'),
    ...(jerkS > 0 ? [term(`jerkS${n}`, `time of a phase of jerk${which}`, jerkS, 's')] : []),
  ];
}

/** Ring of one axis at the end of its own move. */
function axisRing(of: Worked, own: AxisOf, k: number): Draft {
  const { axis } = own;
  const title = `${axis.name}: ring`;
  const shapes = moveAt(of, own, k)?.shapes ?? [];
  const pxPerUnit = pixelsPerUnit(of.plan, axis);
  if (shapes.length === 0) return none(title, 'px', `${axis.name} does not move after this frame.`);
  if (pxPerUnit === 0) return none(title, 'px', `${axis.name} does not shake the camera.`);
  const numbers = shapes.map((_, i) => (i === 0 ? '' : String(i + 1)));
  // What the way out leaves has the way back to die down.
  const legs = shapes.map((shape, i) => {
    const later = numbers.slice(i + 1).map((n) => ` * exp(-decayRate * durationS${n})`);
    return `${legText(shape, numbers[i] as string)}${later.join('')}`;
  });
  return {
    title,
    unit: 'px',
    expression: legs.join(' + '),
    terms: [
      term(
        'pxPerUnit',
        `shift of the picture for each ${axis.unit}`,
        pxPerUnit,
        `px/${axis.unit}`,
        ofAxis(axis.name, 'pxPerUnit'),
      ),
      ...shapes.flatMap((shape, i) => legTerms(shape, numbers[i] as string, axis.unit)),
      term('omega', 'natural angular frequency', omegaOf(of), 'rad/s', 'ringing.angularFrequency'),
      term(
        'ringRate',
        'damped angular frequency',
        omegaOf(of) * rootOf(of),
        'rad/s',
        'ringing.dampedFrequency',
      ),
      decay(of),
    ],
    remarks: ['Envelope of the free ring when the move ends: speeding up and braking each set it off.'],
    source: DUHAMEL,
  };
}

/** Ring of an axis at the end of its own move, px. */
const ringOf = (of: Worked, own: AxisOf, k: number): number => moveAt(of, own, k)?.ringPx ?? 0;

/** Ring of all axes when the last one has arrived. */
function ring(of: Worked, k: number): Draft {
  const { plan, made } = of;
  const moving = axesOf(of).filter((own) => moveAt(of, own, k) !== null);
  const shaking = moving.filter((own) => ringOf(of, own, k) > 0);
  if (shaking.length === 0) return none('Ring', 'px', 'Nothing rings after this frame.');
  const inTurn = plan.move.order === 'inTurn';
  const ends = (own: AxisOf): number => own.columns.moveS[k] as number;
  const restS = (own: AxisOf): number =>
    inTurn
      ? moving.slice(moving.indexOf(own) + 1).reduce((sum, later) => sum + ends(later), 0)
      : (made.columns.moveS[k] as number) - ends(own);
  const one = shaking.length === 1 && shaking.every((own) => restS(own) === 0);
  return {
    title: 'Ring',
    unit: 'px',
    expression: one
      ? 'ring1Px'
      : shaking.map((_, i) => `ring${i + 1}Px * exp(-decayRate * rest${i + 1}S)`).join(' + '),
    terms: [
      ...shaking.flatMap((own, i) => [
        term(
          `ring${i + 1}Px`,
          `ring of ${own.axis.name}`,
          ringOf(of, own, k),
          'px',
          ofFrame(k, ofAxis(own.axis.name, 'ringPx')),
        ),
        ...(one ? [] : [term(`rest${i + 1}S`, `from its end to the end of the last`, restS(own), 's')]),
      ]),
      ...(one ? [] : [decay(of)]),
    ],
    remarks: ['At the end of the move after this frame. At the worst the rings of all axes add up.'],
    source: DUHAMEL,
  };
}

function settle(of: Worked, k: number): Draft {
  const { plan, made } = of;
  const settleS = made.columns.settleS[k] as number;
  const base = { title: 'Settle', value: settleS, unit: 's' };
  const moves = (made.columns.moveS[k] as number) > 0;
  if (plan.move.mode !== 'moveShootMove' || !moves)
    return none('Settle', 's', 'The rig does not move after this frame.');
  if (!goesByRinging(of))
    return {
      ...sameAs('', 'settle as set', plan.move.settleS, 's', null),
      ...base,
      remarks: ['The same time after every move.'],
    };
  const { measuredSettleS, tolerancePx } = plan.ringing;
  if (measuredSettleS !== null)
    return {
      ...sameAs('', 'settle as measured', measuredSettleS, 's', null),
      ...base,
      remarks: ['The measured time counts after every move.'],
    };
  return {
    ...base,
    expression: 'log(max(ringPx, tolerancePx) / tolerancePx) / decayRate',
    terms: [
      term('ringPx', 'ring', worth(ring(of, k)), 'px', ofFrame(k, 'ringPx')),
      term('tolerancePx', 'what no longer shows', tolerancePx, 'px'),
      decay(of),
    ],
    remarks: [
      'Until the envelope of the ring has died down to what no longer shows; nothing if it never shows.',
    ],
    source: DECREMENT,
  };
}

/** Pixels for each unit of an axis's ring. */
function pxPerUnit({ plan }: Worked, { axis }: AxisOf): Draft {
  const base = {
    title: `${axis.name}: shift of the picture`,
    unit: `px/${axis.unit}`,
    source:
      'Pinhole projection; slope at the tip of an end-loaded cantilever, 1.5 times deflection over length (Gere & Timoshenko, Mechanics of Materials: from memory).',
  };
  const focal = term('focalPx', 'focal length in pixels', focalPx(plan.camera), 'px', 'camera.focalPx');
  switch (axis.kind) {
    case 'pan':
    case 'tilt':
      return { ...base, expression: 'focalPx * pi / 180', terms: [focal] };
    case 'roll':
      return {
        ...base,
        expression: 'widthPx / 2 * pi / 180',
        terms: [term('widthPx', 'width of the image', plan.camera.imageWidthPx, 'px')],
        remarks: ['At the edges of the width.'],
      };
    case 'boom':
    case 'slide': {
      const byDegree = axis.kind === 'boom' && axis.unit === 'deg';
      return {
        ...base,
        expression: `focalPx * (1.5 / flexMm${plan.subject.used ? ' + 1 / subjectMm' : ''})${byDegree ? ' * armMm * pi / 180' : ''}`,
        terms: [
          focal,
          term('flexMm', 'length that bends', plan.ringing.flexMm, 'mm'),
          ...(plan.subject.used ? [term('subjectMm', 'distance of the subject', subjectMm(plan), 'mm')] : []),
          ...(byDegree ? [term('armMm', 'length of the arm', plan.rig.arm.lengthMm, 'mm')] : []),
        ],
        remarks: ['The camera nods, and is elsewhere.'],
      };
    }
    case 'turntable':
    case 'focus':
      return { ...none(base.title, base.unit, 'It does not shake the camera.') };
  }
}

/** Workings of ring and settle after one frame. */
export const frameRingingWorkings = (of: Worked, k: number): Workings => ({
  settleS: () => settle(of, k),
  ...(goesByRinging(of) && {
    ringPx: () => ring(of, k),
    ...Object.assign(
      {},
      ...axesOf(of).map((own) => ({ [ofAxis(own.axis.name, 'ringPx')]: () => axisRing(of, own, k) })),
    ),
  }),
});

/** Workings of the ringing over the run. */
export function ringingWorkings(of: Worked): Workings {
  const summary = of.made.rig.ringing;
  if (summary === null) return {};
  const { worstFrame, quiet } = summary;
  const settles = of.made.columns.settleS;
  const longest = () => settles.indexOf(settles.reduce((most, seconds) => Math.max(most, seconds), 0));
  return {
    ...constants(of),
    'ringing.longestSettleS': () =>
      sameAs('Longest settle', 'settle', summary.longestSettleS, 's', ofFrame(longest(), 'settleS'), {
        value: summary.longestSettleS,
        frame: longest() + 1,
        remarks: ['Found by going through all frames.'],
      }),
    ...(goesByRinging(of) && {
      ...Object.assign(
        {},
        ...axesOf(of).map((own) => ({ [ofAxis(own.axis.name, 'pxPerUnit')]: () => pxPerUnit(of, own) })),
      ),
      ...(worstFrame !== null && {
        'ringing.worstPx': () => ({
          ...ring(of, worstFrame - 2),
          title: 'Largest ring',
          frame: worstFrame - 1,
        }),
        'ringing.worstFrame': () =>
          frameFound(
            'Frame after the largest ring',
            'frame after the move with the largest ring',
            worstFrame,
          ),
      }),
    }),
    ...(quiet && quietWorkings(of, quiet)),
  };
}
