/** How the path of the lens and the motion of the picture came about. */
import type { Plan } from '../plan/schema.ts';
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
import { ofMargin } from '../working/margins.ts';
import type { Term } from '../working/types.ts';
import {
  armRad,
  focalPx,
  type Geometry,
  geometryOf,
  hasPose,
  lensAt,
  NEAREST_MM,
  type Pose,
  poseAt,
  poseAxis,
  RAD,
  type Stance,
  seenFrom,
  stanceAt,
  subjectAt,
  type Vector,
} from './pose.ts';

const PINHOLE = 'Pinhole projection (textbook).';
const CIRCLE = 'Geometry of a circle on a leaning plane.';
const SINGLE = 'The schedule keeps it to seven digits.';

const focalTerm = ({ plan }: Worked): Term =>
  term('focalPx', 'focal length in pixels', focalPx(plan.camera), 'px', 'camera.focalPx');

const focal = ({ plan }: Worked): Draft => ({
  title: 'Focal length in pixels',
  value: focalPx(plan.camera),
  unit: 'px',
  expression: 'focalLengthMm * widthPx / sensorWidthMm',
  terms: [
    term('focalLengthMm', 'focal length', plan.camera.focalLengthMm, 'mm'),
    term('widthPx', 'width of the image', plan.camera.imageWidthPx, 'px'),
    term('sensorWidthMm', 'width of the sensor', plan.camera.sensorWidthMm, 'mm'),
  ],
  source: PINHOLE,
});

/** A rig at a frame. */
interface At {
  geometry: Geometry;
  stance: Stance;
}

const standing = ({ plan, made }: Worked, k: number): At => ({
  geometry: geometryOf(plan),
  stance: stanceAt(plan, made.columns.axes, k),
});

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

function height(of: Worked, k: number): Draft {
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

const heightTerm = (of: Worked, symbol: string, words: string, frame: number): Term => {
  const { geometry, stance } = standing(of, frame - 1);
  return term(symbol, words, lensAt(geometry, stance).z, 'mm', ofFrame(frame - 1, 'lensHeightMm'));
};

/** First frame, counted from 1, whose lens is as far from the pivot as it gets. */
function reachFrame(of: Worked, reachMm: number): number {
  const { frames } = of.made.totals;
  const geometry = geometryOf(of.plan);
  for (let k = 0; k < frames; k += 1) {
    const { x, y } = lensAt(geometry, stanceAt(of.plan, of.made.columns.axes, k));
    if (Math.abs(Math.hypot(x, y) - reachMm) <= 1e-12 * reachMm) return k + 1;
  }
  return 1;
}

function reach(of: Worked, reachMm: number): Draft {
  const frame = reachFrame(of, reachMm);
  const at = standing(of, frame - 1);
  const { boom, slides, terms } = lensParts(of, at);
  const level = 'slideMm * cos(inclineDeg * pi / 180)';
  const x = [
    slides && `${level} * sin(bearingDeg * pi / 180)`,
    boom && 'armMm * sin(armDeg * pi / 180) * sin(leanDeg * pi / 180)',
  ].filter((text) => text !== false);
  const y = [
    slides && `${level} * cos(bearingDeg * pi / 180)`,
    boom && 'armMm * cos(armDeg * pi / 180)',
  ].filter((text) => text !== false);
  if (x.length === 0) return none('Reach', 'mm', 'The lens is on the pivot.');
  return {
    title: 'Reach',
    value: reachMm,
    unit: 'mm',
    expression: `sqrt((${x.join(' + ')}) ^ 2 + (${y.join(' + ')}) ^ 2)`,
    terms: [
      ...terms,
      ...(slides ? [term('bearingDeg', 'bearing of the slide', of.plan.rig.slide.bearingDeg, 'deg')] : []),
    ],
    frame,
    remarks: [
      'Farthest from the upright through the pivot, of the frames looked at: the ends, the extremes, and some hundred between.',
    ],
    source: CIRCLE,
  };
}

/** Workings of the path. */
function pathDrafts(of: Worked): Workings {
  const summary = of.made.rig.path;
  if (summary === null) return {};
  const { highest, lowest, swingDeg } = summary;
  const measured = (title: string, value: number, remark: string) => (): Draft =>
    sameAs(title, 'measured along the frames looked at', value, 'mm', null, {
      value,
      remarks: [remark, 'Of the ends, the extremes, and some hundred frames between.'],
    });
  return {
    'path.riseMm': () => ({
      title: 'Rise',
      value: summary.riseMm,
      unit: 'mm',
      expression: 'highestMm - lowestMm',
      terms: [
        heightTerm(of, 'highestMm', 'highest', highest.frame),
        heightTerm(of, 'lowestMm', 'lowest', lowest.frame),
      ],
      source: DEFINITION,
    }),
    'path.clearanceMm': () => ({
      ...height(of, lowest.frame - 1),
      title: 'Lowest above the floor',
      frame: lowest.frame,
    }),
    'path.reachMm': () => reach(of, summary.reachMm),
    'path.lengthMm': measured(
      'Way of the lens',
      summary.lengthMm,
      'The straight lines from point to point, all together.',
    ),
    'path.deviationMm': measured(
      'Off a straight line',
      summary.deviationMm,
      'The farthest that a point is from the line between the ends; of a path that comes back, to where it is farthest off.',
    ),
    ...(swingDeg > 0 && {
      'path.swingDeg': () => swing(of, swingDeg),
      'path.sagittaMm': () => sagitta(of, summary.sagittaMm, swingDeg),
    }),
  };
}

function swing({ plan, made }: Worked, swingDeg: number): Draft {
  const index = poseAxis(plan, 'boom');
  const axis = plan.rig.axes[index];
  const columns = made.columns.axes[index];
  const byMm = axis?.unit === 'mm';
  return {
    title: 'Arm swings',
    value: swingDeg,
    unit: 'deg',
    expression: `(highestSteps - lowestSteps) / stepsPerUnit${byMm ? ' / armMm * 180 / pi' : ''}`,
    terms: [
      term('highestSteps', 'highest position', columns?.highestSteps ?? 0, 'steps'),
      term('lowestSteps', 'lowest position', columns?.lowestSteps ?? 0, 'steps'),
      term(
        'stepsPerUnit',
        `microsteps a ${axis?.unit ?? ''}`,
        columns?.stepsPerUnit ?? 1,
        `steps/${axis?.unit ?? ''}`,
        `axes.${axis?.name}.stepsPerUnit`,
      ),
      ...(byMm ? [term('armMm', 'length of the arm', plan.rig.arm.lengthMm, 'mm')] : []),
    ],
    source: CIRCLE,
  };
}

const sagitta = ({ plan }: Worked, value: number, swingDeg: number): Draft => ({
  title: 'Sagitta',
  value,
  unit: 'mm',
  expression: 'armMm * (1 - cos(min(swingDeg / 2, 180) * pi / 180))',
  terms: [
    term('armMm', 'length of the arm', plan.rig.arm.lengthMm, 'mm'),
    term('swingDeg', 'swing of the arm', swingDeg, 'deg', 'path.swingDeg'),
  ],
  remarks: ['How far the arc bulges from its chord: the curve that a slider would not have.'],
  source: CIRCLE,
});

const poseOf = ({ geometry, stance }: At): Pose => poseAt(geometry, stance);

const seenTerms = (n: string, words: string, { x, y, z }: Vector): Term[] => [
  term(`right${n}Mm`, `to the right of the lens axis${words}`, x, 'mm'),
  term(`above${n}Mm`, `above it${words}`, y, 'mm'),
  term(`ahead${n}Mm`, `ahead of the lens${words}`, z, 'mm'),
];

/** Whether a point as the camera sees it is in the picture. */
function isShown(camera: Plan['camera'], { x, y, z }: Vector): boolean {
  const scale = focalPx(camera) / z;
  return (
    z > NEAREST_MM &&
    Math.abs(x * scale) <= camera.imageWidthPx / 2 &&
    Math.abs(y * scale) <= camera.imageHeightPx / 2
  );
}

const widthTerm = ({ plan }: Worked): Term =>
  term('widthPx', 'width of the image', plan.camera.imageWidthPx, 'px');

/** The subject's way in the picture from a frame to the next. */
function subjectMotion(of: Worked, k: number): Draft {
  const base = { title: 'Subject moves', unit: 'px', source: PINHOLE };
  if (k + 1 >= of.made.totals.frames) return { ...none(base.title, 'px', 'No frame follows.') };
  const [now, next] = [standing(of, k), standing(of, k + 1)];
  const seen = (at: At) => seenFrom(poseOf(at), subjectAt(at.geometry, at.stance));
  const [before, after] = [seen(now), seen(next)];
  if (of.made.columns.subjectPx?.[k] === 0 && !isShown(of.plan.camera, before))
    return none(base.title, 'px', 'The subject is not in the picture.');
  if (after.z <= NEAREST_MM)
    return {
      ...base,
      expression: 'widthPx',
      terms: [widthTerm(of)],
      remarks: ['By the next frame it is behind the lens: one width of the image.'],
    };
  return {
    ...base,
    expression:
      'focalPx * sqrt((right2Mm / ahead2Mm - right1Mm / ahead1Mm) ^ 2 + (above2Mm / ahead2Mm - above1Mm / ahead1Mm) ^ 2)',
    terms: [focalTerm(of), ...seenTerms('1', '', before), ...seenTerms('2', ', next frame', after)],
    remarks: ['Its two places in the picture: of this frame, and of the next.', SINGLE],
  };
}

/** The way of what is far behind. */
function backgroundMotion(of: Worked, k: number): Draft {
  const base = { title: 'Background moves', unit: 'px', source: PINHOLE };
  if (k + 1 >= of.made.totals.frames) return none(base.title, 'px', 'No frame follows.');
  const { position, direction } = poseOf(standing(of, k));
  const far = of.plan.subject.backgroundM * 1000;
  const point = {
    x: position.x + far * direction.x,
    y: position.y + far * direction.y,
    z: position.z + far * direction.z,
  };
  const { x, y, z } = seenFrom(poseOf(standing(of, k + 1)), point);
  if (z <= NEAREST_MM)
    return {
      ...base,
      expression: 'widthPx',
      terms: [widthTerm(of)],
      remarks: ['By the next frame it is behind the lens: one width of the image.'],
    };
  return {
    ...base,
    expression: 'focalPx * offMm / aheadMm',
    terms: [
      focalTerm(of),
      term('offMm', 'off the lens axis, next frame', Math.hypot(x, y), 'mm'),
      term('aheadMm', 'ahead of the lens, next frame', z, 'mm'),
    ],
    remarks: [
      `The point straight ahead at this frame, ${of.plan.subject.backgroundM} m away, as the next frame sees it.`,
      SINGLE,
    ],
  };
}

/** Where the image does not show the subject in its middle. */
function aimMiss(of: Worked, k: number): Draft {
  const base = { title: 'Aim is off by', unit: 'px', source: PINHOLE };
  if (of.made.columns.aimMissPx?.[k] === 0)
    return none(base.title, 'px', 'The aim holds: whole steps, or less than a pixel, explain what is left.');
  const at = standing(of, k);
  const { x, y, z } = seenFrom(poseOf(at), subjectAt(at.geometry, at.stance));
  const off = Math.hypot(x, y);
  // Farther off, a distance in the picture says no more.
  const far = off >= z * Math.tan(89 * RAD);
  return {
    ...base,
    expression: far ? 'focalPx * tan(89 * pi / 180)' : 'focalPx * offMm / aheadMm',
    terms: [
      focalTerm(of),
      ...(far
        ? []
        : [
            term('offMm', 'subject off the lens axis', off, 'mm'),
            term('aheadMm', 'ahead of the lens', z, 'mm'),
          ]),
    ],
    remarks: [...(far ? ['It is more than 89° off: beside the camera or behind it.'] : []), SINGLE],
  };
}

/** Blur of a frame of a rig that moves all the time. */
function blur(of: Worked, k: number): Draft {
  const { columns } = of.made;
  return {
    title: 'Blur',
    unit: 'px',
    expression: 'max(subjectPx, backgroundPx) * exposureS / intervalS',
    terms: [
      term('subjectPx', 'subject moves', worth(subjectMotion(of, k)), 'px', ofFrame(k, 'subjectPx')),
      term(
        'backgroundPx',
        'background moves',
        worth(backgroundMotion(of, k)),
        'px',
        ofFrame(k, 'backgroundPx'),
      ),
      term('exposureS', 'exposure', columns.exposureS[k] as number, 's', ofFrame(k, 'exposureS')),
      term('intervalS', 'interval', columns.intervalS[k] as number, 's', ofFrame(k, 'intervalS')),
    ],
    remarks: ['Its way to the next frame, for the share of the interval that the shutter is open.', SINGLE],
    source: PINHOLE,
  };
}

function crossing(of: Worked, frame: number): Draft {
  const { plan, made } = of;
  return {
    title: 'Crosses the frame in',
    unit: 's',
    expression: 'widthPx * holdFrames / frameRate / backgroundPx',
    terms: [
      widthTerm(of),
      term('holdFrames', 'frames that an exposure is held for', plan.clip.holdFrames, 'frames'),
      term('frameRate', 'frame rate', made.totals.frameRate, 'fps', 'totals.frameRate'),
      term(
        'backgroundPx',
        'background moves',
        worth(backgroundMotion(of, frame - 1)),
        'px',
        ofFrame(frame - 1, 'backgroundPx'),
      ),
    ],
    frame,
    remarks: [
      'Seconds on screen for a still thing to cross the width of the picture at its fastest.',
      SINGLE,
    ],
    source: PINHOLE,
  };
}

/** Workings of the motion of the picture over the run. */
function imageDrafts(of: Worked): Workings {
  const summary = of.made.rig.image;
  if (summary === null) return {};
  const { subject, background, blur: blurred, crossing: crosses } = summary;
  const margin = (id: string) => of.made.margins.find((each) => each.id === id);
  const [blurMargin, crossMargin] = [margin('blur'), margin('crossing')];
  const typed = (title: string, words: string, value: number, unit: string) => (): Draft =>
    sameAs(title, words, value, unit, null, { value });
  return {
    'image.subjectPx': () => ({ ...subjectMotion(of, subject.frame - 1), frame: subject.frame }),
    'image.backgroundPx': () => ({ ...backgroundMotion(of, background.frame - 1), frame: background.frame }),
    ...(blurred && { 'image.blurPx': () => ({ ...blur(of, blurred.frame - 1), frame: blurred.frame }) }),
    ...(crosses && { 'image.crossingS': () => crossing(of, crosses.frame) }),
    ...(blurMargin && {
      [ofMargin(blurMargin, 'used')]: () => ({
        ...blur(of, blurMargin.frame - 1),
        title: 'Blur: used',
        frame: blurMargin.frame,
      }),
      [ofMargin(blurMargin, 'available')]: typed(
        'Blur: available',
        'blur that you allow',
        of.plan.subject.blurMaxPx,
        'px',
      ),
    }),
    ...(crossMargin && {
      [ofMargin(crossMargin, 'used')]: typed(
        'Crossing time: used',
        'time that you want at least',
        of.plan.subject.crossingMinS,
        's',
      ),
      [ofMargin(crossMargin, 'available')]: () => ({
        ...crossing(of, crossMargin.frame),
        title: 'Crossing time: available',
      }),
    }),
  };
}

function aimDrafts(of: Worked): Workings {
  const frame = of.made.rig.aim?.worstFrame ?? null;
  if (frame === null) return {};
  const at = standing(of, frame - 1);
  return {
    'aim.worstPx': () => ({ ...aimMiss(of, frame - 1), frame }),
    'aim.worstDeg': () => {
      const { x, y, z } = seenFrom(poseOf(at), subjectAt(at.geometry, at.stance));
      return {
        title: 'Aim is off by',
        value: of.made.rig.aim?.worstDeg ?? 0,
        unit: 'deg',
        expression: 'atan2(offMm, aheadMm) * 180 / pi',
        terms: [
          term('offMm', 'subject off the lens axis', Math.hypot(x, y), 'mm'),
          term('aheadMm', 'ahead of the lens', z, 'mm'),
        ],
        frame,
        source: PINHOLE,
      };
    },
  };
}

/** Workings of path, aim and picture over the run. */
export const pathWorkings = (of: Worked): Workings => ({
  'camera.focalPx': () => focal(of),
  ...pathDrafts(of),
  ...imageDrafts(of),
  ...aimDrafts(of),
});

/** Workings of path, aim and picture at one frame. */
export function framePathWorkings(of: Worked, k: number): Workings {
  const { subjectPx, aimMissPx } = of.made.columns;
  return {
    ...(hasPose(of.plan) && { lensHeightMm: () => height(of, k) }),
    ...(subjectPx && {
      subjectPx: () => subjectMotion(of, k),
      backgroundPx: () => backgroundMotion(of, k),
      ...(of.plan.move.mode === 'continuous' && { blurPx: () => blur(of, k) }),
    }),
    ...(aimMissPx && { aimMissPx: () => aimMiss(of, k) }),
  };
}
