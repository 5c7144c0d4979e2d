/** Where the lens is at one frame, where it looks and how far it is from the subject: how that came about. */
import { DEFINITION, type Draft, none, ofFrame, term, type Worked, type Workings } from '../working/make.ts';
import type { Term } from '../working/types.ts';
import { poseAt } from './camera-pose.ts';
import { type At, standing } from './image-working.ts';
import { armRad, lensAt, poseAxis, RAD, subjectAt, type Vector } from './pose.ts';

export const CIRCLE = 'Geometry of a circle on a leaning plane.';

/** Terms and pieces of formula for where the lens is. */
function lensParts(
  { plan }: Worked,
  { geometry, stance }: At,
): { boom: boolean; slides: boolean; terms: Term[] } {
  const boom = geometry.boom !== null;
  const slides = poseAxis(plan, 'slide') !== -1;
  return {
    boom,
    slides,
    terms: [
      ...(slides
        ? [
            term('slideMm', 'slide', stance.slide, 'mm'),
            term('inclineDeg', 'incline of the slide', plan.rig.slide.inclineDeg, 'deg'),
          ]
        : []),
      ...(boom
        ? [
            term('armMm', 'length of the arm', plan.rig.arm.lengthMm, 'mm'),
            term('armDeg', 'angle of the arm from level', armRad(geometry, stance) / RAD, 'deg'),
            term('leanDeg', 'lean of the arc', plan.rig.arm.planeTiltDeg, 'deg'),
          ]
        : []),
    ],
  };
}

/** The same for its place on the level: pieces of sums to the right and forward, and their terms. */
export function levelParts(of: Worked, at: At): { x: string[]; y: string[]; terms: Term[] } {
  const { boom, slides, terms } = lensParts(of, at);
  const level = 'slideMm * cos(inclineDeg * pi / 180)';
  return {
    x: [
      ...(slides ? [`${level} * sin(bearingDeg * pi / 180)`] : []),
      ...(boom ? ['armMm * sin(armDeg * pi / 180) * sin(leanDeg * pi / 180)'] : []),
    ],
    y: [
      ...(slides ? [`${level} * cos(bearingDeg * pi / 180)`] : []),
      ...(boom ? ['armMm * cos(armDeg * pi / 180)'] : []),
    ],
    terms: [
      ...terms,
      ...(slides ? [term('bearingDeg', 'bearing of the slide', of.plan.rig.slide.bearingDeg, 'deg')] : []),
    ],
  };
}

/** Height of the lens over the floor at a frame, counted from 0. */
export function height(of: Worked, k: number): Draft {
  const at = standing(of, k);
  const { boom, slides, terms } = lensParts(of, at);
  const slide = slides ? ' + slideMm * sin(inclineDeg * pi / 180)' : '';
  const arm = boom ? ' + armMm * sin(armDeg * pi / 180) * cos(leanDeg * pi / 180)' : '';
  return {
    title: 'Lens above the floor',
    value: lensAt(at.geometry, at.stance).z,
    unit: 'mm',
    expression: `pivotMm${slide}${arm}`,
    terms: [term('pivotMm', 'height of the pivot', of.plan.rig.pivotHeightMm, 'mm'), ...terms],
    source: CIRCLE,
  };
}

/** Its way forward from the pivot, or to the right of it. */
function level(of: Worked, k: number, title: string, side: 'x' | 'y'): Draft {
  const at = standing(of, k);
  const { terms, ...sums } = levelParts(of, at);
  const expression = sums[side].join(' + ');
  if (expression === '') return none(title, 'mm', 'The lens is over the pivot.');
  return {
    title,
    value: lensAt(at.geometry, at.stance)[side],
    unit: 'mm',
    expression,
    terms: terms.filter(({ symbol }) => new RegExp(`\\b${symbol}\\b`).test(expression)),
    remarks: ['From the pivot.'],
    source: CIRCLE,
  };
}

const BEARING = 'Bearing and elevation of a direction (textbook).';

function looksTo({ x, y }: Vector): Draft {
  return {
    title: 'Looks to',
    unit: 'deg',
    expression: 'atan2(right, forward) * 180 / pi',
    terms: [
      term('right', 'direction of the lens: to the right', x, ''),
      term('forward', 'direction of the lens: forward', y, ''),
    ],
    remarks: ['From forward, clockwise seen from above.'],
    source: BEARING,
  };
}

const looksUp = ({ z }: Vector): Draft => ({
  title: 'Looks up',
  unit: 'deg',
  expression: 'asin(max(-1, min(1, up))) * 180 / pi',
  terms: [term('up', 'direction of the lens: upwards', z, '')],
  source: BEARING,
});

/** From the lens to the subject. */
function subjectAway(of: Worked, k: number): Draft {
  const { geometry, stance } = standing(of, k);
  const lens = lensAt(geometry, stance);
  const subject = subjectAt(geometry, stance);
  const own = (symbol: string, words: string, value: number, what: string) =>
    term(symbol, words, value, 'mm', ofFrame(k, what));
  return {
    title: 'Subject away',
    unit: 'mm',
    expression: 'sqrt((toRight - right) ^ 2 + (toForward - forward) ^ 2 + (toHeight - height) ^ 2)',
    terms: [
      term('toRight', 'subject, to the right', subject.x, 'mm'),
      own('right', 'lens, to the right', lens.x, 'lensRightMm'),
      term('toForward', 'subject, forward', subject.y, 'mm'),
      own('forward', 'lens, forward', lens.y, 'lensForwardMm'),
      term('toHeight', 'subject, above the floor', subject.z, 'mm'),
      own('height', 'lens, above the floor', lens.z, 'lensHeightMm'),
    ],
    source: DEFINITION,
  };
}

/** Workings of the lens at one frame, counted from 0. */
export function frameLensWorkings(of: Worked, k: number): Workings {
  const direction = () => {
    const { geometry, stance } = standing(of, k);
    return poseAt(geometry, stance).direction;
  };
  return {
    lensHeightMm: () => height(of, k),
    lensForwardMm: () => level(of, k, 'Lens, forward', 'y'),
    lensRightMm: () => level(of, k, 'Lens, to the right', 'x'),
    lensBearingDeg: () => looksTo(direction()),
    lensElevationDeg: () => looksUp(direction()),
    ...(of.plan.subject.used && { subjectMm: () => subjectAway(of, k) }),
  };
}
