/** How the motion of the picture, the aim and the blur came about. */
import type { Plan } from '../plan/schema.ts';
import { whereRemark } from '../working/found.ts';
import {
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
import { type Pose, poseAt, seenFrom } from './camera-pose.ts';
import {
  focalPx,
  type Geometry,
  geometryOf,
  NEAREST_MM,
  RAD,
  type Stance,
  stanceAt,
  stancesOf,
  subjectAt,
  type Vector,
} from './pose.ts';

export const PINHOLE = 'Pinhole projection (textbook).';

const SINGLE = 'The schedule keeps it to seven digits.';

const focalTerm = ({ plan }: Worked): Term =>
  term('focalPx', 'focal length in pixels', focalPx(plan.camera), 'px', 'camera.focalPx');

export const focal = ({ plan }: Worked): Draft => ({
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
export interface At {
  geometry: Geometry;
  stance: Stance;
}

export const standing = ({ plan, made }: Worked, k: number): At => ({
  geometry: geometryOf(plan),
  stance: stanceAt(plan, made.columns.axes, k),
});

export const poseOf = ({ geometry, stance }: At): Pose => poseAt(geometry, stance);

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
export function subjectMotion(of: Worked, k: number): Draft {
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
export function backgroundMotion(of: Worked, k: number): Draft {
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
export function aimMiss(of: Worked, k: number): Draft {
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
export function blur(of: Worked, k: number): Draft {
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

/** Frames whose picture does not show the subject. */
function outOfSight(of: Worked, value: number): Draft {
  const { plan, made } = of;
  const { frames } = made.totals;
  const geometry = geometryOf(plan);
  const stances = stancesOf(plan, made.columns.axes);
  const isOut = (k: number): boolean => {
    const stance = stances(k);
    return !isShown(plan.camera, seenFrom(poseAt(geometry, stance), subjectAt(geometry, stance)));
  };
  return {
    title: 'Subject out of sight',
    value,
    unit: 'frames',
    expression: 'frames - shownFrames',
    terms: [
      term('frames', 'frames', frames, 'frames', 'totals.frames'),
      term('shownFrames', 'frames whose picture shows the point of the subject', frames - value, 'frames'),
    ],
    remarks: [
      'Shown is what is ahead of the lens, and at most half the width and half the height of the image off its centre.',
      whereRemark(frames, isOut),
    ],
    source: PINHOLE,
  };
}

/** Workings of the motion of the picture over the run. */
export function imageDrafts(of: Worked): Workings {
  const summary = of.made.rig.image;
  if (summary === null) return {};
  const { subject, background, blur: blurred, crossing: crosses } = summary;
  const margin = (id: string) => of.made.margins.find((each) => each.id === id);
  const [blurMargin, crossMargin] = [margin('blur'), margin('crossing')];
  const typed = (title: string, words: string, value: number, unit: string) => (): Draft =>
    sameAs(title, words, value, unit, null, { value });
  return {
    'image.outOfSightFrames': () => outOfSight(of, summary.outOfSightFrames),
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
