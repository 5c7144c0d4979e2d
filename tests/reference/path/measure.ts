/** The camera in space and its image: against matrices, published angles of view, and circles. */
import fc from 'fast-check';
import type { mat4 } from 'gl-matrix';
import { aimer } from '../../../src/engine/path/aim.ts';
import { poseAt, seenFrom } from '../../../src/engine/path/camera-pose.ts';
import { imageMotion } from '../../../src/engine/path/image.ts';
import { pathOf } from '../../../src/engine/path/path.ts';
import {
  focalPx,
  geometryOf,
  type StepColumns,
  stanceAt,
  subjectAt,
  type Vector,
} from '../../../src/engine/path/pose.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { Room } from '../../../src/engine/room.ts';
import { plainPlan, type Some, straight } from '../plans.ts';
import { type NumberCase, numberRow, type Row } from '../rows.ts';
import { cameraMatrix, columnOf, pictured, subjectPoint } from './matrices.ts';
import { rigs, sliding, stepsOf, turning } from './rigs.ts';

const MATRICES = 'gl-matrix 3.4.4: chain of 4 x 4 matrices, perspective matrix (V1)';
const VIEWS = 'OPT-01: B. Claff, Field of View Values for Common Focal Lengths, 2006 (V1)';
const PIXELS = 'OPT-04: f tan(angle), from the pinhole alone (computed)';
const PARALLAX = 'OPT-05: f dx/Z, from the pinhole alone (computed)';
const CIRCLES = 'circle through chord and radius: Euclid, Elements III.3 and I.47 (computed)';

const DEG = 180 / Math.PI;

/** Random rigs of any axes, and the positions of these at a frame in the middle. */
function* randomRigs(
  count: number,
  seed: number,
): Generator<{ plan: Plan; at: string; axes: StepColumns[] }> {
  const sample = fc.sample(rigs, { numRuns: count, seed });
  for (const [n, { plan, frames }] of sample.entries()) {
    if (plan.rig.axes.length === 0) continue;
    const kinds = plan.rig.axes.map(({ kind }) => kind).join(' ');
    yield { plan, at: `rig ${n} (${kinds})`, axes: stepsOf(plan, frames) };
  }
}

const framesOf = (axes: readonly StepColumns[]): number => axes[0]?.steps.length ?? 0;

function* vectorCases(at: string, got: Vector, want: Vector): Generator<NumberCase> {
  for (const part of ['x', 'y', 'z'] as const)
    yield { at: `${at}, ${part}`, got: got[part], want: want[part] };
}

function* poses(of: (pose: ReturnType<typeof poseAt>, matrix: mat4) => Iterable<[Vector, Vector]>) {
  for (const { plan, at, axes } of randomRigs(3000, 1)) {
    const stance = stanceAt(plan, axes, framesOf(axes) >> 1);
    for (const [got, want] of of(poseAt(geometryOf(plan), stance), cameraMatrix(plan, stance)))
      yield* vectorCases(at, got, want);
  }
}

function* projections(): Generator<NumberCase> {
  for (const { plan, at, axes } of randomRigs(3000, 2)) {
    const stance = stanceAt(plan, axes, framesOf(axes) >> 1);
    const geometry = geometryOf(plan);
    const { x, y, z } = seenFrom(poseAt(geometry, stance), subjectAt(geometry, stance));
    const want = pictured(plan, cameraMatrix(plan, stance), subjectPoint(plan, stance));
    yield { at: `${at}, ahead`, got: z, want: want.z };
    // Beyond, a picture is not looked at.
    if (z < 10 || Math.abs(want.x) > 1e4 || Math.abs(want.y) > 1e4) continue;
    yield { at: `${at}, right`, got: (focalPx(plan.camera) * x) / z, want: want.x };
    yield { at: `${at}, up`, got: (focalPx(plan.camera) * y) / z, want: want.y };
  }
}

/** What is in the picture of a frame, frame by frame to the next. */
function* motions(of: 'subject' | 'background'): Generator<NumberCase> {
  for (const { plan, at, axes } of randomRigs(200, 3)) {
    const motion = imageMotion(plan, axes, new Room());
    if (!motion) throw new RangeError('no motion of the image');
    const stances = Array.from({ length: framesOf(axes) }, (_, k) => stanceAt(plan, axes, k));
    const cameras = stances.map((stance) => cameraMatrix(plan, stance));
    for (let k = 0; k + 1 < cameras.length; k += 1) {
      const [here, next] = [cameras[k] as mat4, cameras[k + 1] as mat4];
      const [lens, ahead] = [columnOf(here, 3), columnOf(here, 1)];
      const far = plan.subject.backgroundM * 1000;
      const point = { x: lens.x + far * ahead.x, y: lens.y + far * ahead.y, z: lens.z + far * ahead.z };
      const [from, to] =
        of === 'background'
          ? [point, point]
          : [stances[k], stances[k + 1]].map((stance) => subjectPoint(plan, stance as never));
      const [a, b] = [pictured(plan, here, from as Vector), pictured(plan, next, to as Vector)];
      const inside = a.z > 10 && b.z > 10 && Math.abs(a.x) < 2999 && Math.abs(a.y) < 1999;
      if (!inside || Math.abs(b.x) > 1e4 || Math.abs(b.y) > 1e4) continue;
      const column = of === 'background' ? motion.backgroundPx : motion.subjectPx;
      yield { at: `${at}, frame ${k + 1}`, got: column[k] as number, want: Math.hypot(b.x - a.x, b.y - a.y) };
    }
  }
}

/** Columns are singles, and what they hold is the difference of places of some thousand pixels. */
const singles = (got: number, want: number): number => Math.abs(got - want) / (Math.abs(want) + 1);

/** Distance of the subject from the image centre, in what half a step of each axis may make of it. */
function* aims(): Generator<NumberCase> {
  for (const { plan: free, at, axes } of randomRigs(600, 4)) {
    const plan = { ...free, subject: { ...free.subject, aimed: true } };
    const kinds = plan.rig.axes.map(({ kind }) => kind);
    if (!kinds.includes('pan') || !kinds.includes('tilt')) continue;
    aimer(plan, axes, new Room());
    const perUnit = ['pan', 'tilt'].map((kind) => axes[kinds.indexOf(kind as never)]?.stepsPerUnit as number);
    const half = Math.hypot(...perUnit.map((steps) => 0.5 / steps / DEG));
    for (let k = 0; k < framesOf(axes); k += 7) {
      const stance = stanceAt(plan, axes, k);
      const { x, y, z } = pictured(plan, cameraMatrix(plan, stance), subjectPoint(plan, stance));
      if (Math.abs(z) < 10) continue;
      const off = z > 0 ? Math.atan(Math.hypot(x, y) / focalPx(plan.camera)) : Math.PI;
      yield { at: `${at}, frame ${k + 1}`, got: off / half, want: 0 };
    }
  }
}

/** Focal length, angles over width, height, diagonal of 36 x 24 mm. */
const CLAFF: readonly (readonly [number, number, number, number])[] = [
  [14, 104.3, 81.2, 114.2],
  [18, 90, 67.4, 100.5],
  [24, 73.7, 53.1, 84.1],
  [35, 54.4, 37.8, 63.4],
  [50, 39.6, 27, 46.8],
  [85, 23.9, 16.1, 28.6],
  [135, 15.2, 10.2, 18.2],
];

const camera = { imageWidthPx: 6000, imageHeightPx: 4000, sensorWidthMm: 36, sensorHeightMm: 24 };

function* anglesOfView(): Generator<NumberCase> {
  for (const [focalLengthMm, ...wanted] of CLAFF) {
    const px = focalPx(plainPlan(1, 1, { camera: { ...camera, focalLengthMm } }).camera);
    for (const [i, side] of [6000, 4000, Math.hypot(6000, 4000)].entries())
      yield {
        at: `${focalLengthMm} mm, ${['width', 'height', 'diagonal'][i]}`,
        got: 2 * Math.atan(side / 2 / px) * DEG,
        want: wanted[i] as number,
      };
  }
}

/** A rig with one axis at 1 m above the floor, and a subject 2 m ahead at so many degrees. */
function imageOf(axis: Plan['rig']['axes'][number], to: number, aside: number, change: Some<Plan>) {
  const plan = plainPlan(2, 10, {
    ...change,
    rig: { axes: [axis], pivotHeightMm: 1000 },
    subject: {
      used: true,
      rightMm: 2000 * Math.tan(aside / DEG),
      forwardMm: 2000,
      heightMm: 1000,
      ...change.subject,
    },
    move: { mode: 'moveShootMove', tracks: [straight(axis.name, 0, to)] },
  });
  const motion = imageMotion(plan, stepsOf(plan, 2), new Room());
  if (!motion) throw new RangeError('no motion of the image');
  return motion;
}

const fine = { gearRatio: 3600, microsteps: 256 };

/** Focal length, pan, where the subject is, pixels. */
const PANS: readonly (readonly [number, number, number, number])[] = [
  [50, 0.1, 0, 14.544],
  [50, 1, 0, 145.459],
  [50, 1, 19.79887, 163.284],
  [24, 1, 0, 69.82],
  [24, 1, 36.8698, 107.684],
];

const pans = (): NumberCase[] =>
  PANS.map(([focalLengthMm, deg, aside, want]) => ({
    at: `${focalLengthMm} mm, pan ${deg} deg, subject at ${aside} deg`,
    got: imageOf(turning('pan', fine), deg, aside, { camera: { ...camera, focalLengthMm } }).subject.px,
    want,
  }));

const ARC: readonly (readonly [number, number, number, number])[] = [
  [1000, 0, -12, 12],
  [1000, 0, 0, 24],
  [600, 35, -40, 50],
  [2500, 90, -80, 85],
  [1500, 60, 10, 100],
];

/** Radius, lean, from, to: what a circle's own geometry makes of them. */
function* arcs(of: 'sagitta' | 'rise' | 'length'): Generator<NumberCase> {
  for (const [lengthMm, planeTiltDeg, from, to] of ARC) {
    const arm = { lengthMm, planeTiltDeg, zeroDeg: 0, keepsLevel: true };
    const boom = turning('boom', { gearRatio: 3600 });
    const plan = plainPlan(501, 10, {
      rig: { axes: [boom], arm, pivotHeightMm: 3000 },
      move: { mode: 'moveShootMove', tracks: [straight('boom', from, to)] },
    });
    const path = pathOf(plan, stepsOf(plan, 501));
    if (!path) throw new RangeError('no path');
    const [a, b] = [from / DEG, to / DEG];
    const chord = 2 * lengthMm * Math.sin((b - a) / 2);
    // In the upright plane, then leant over. An arc that passes its top is highest there.
    const top = to > 90 ? 1 : Math.sin(b);
    const rise = lengthMm * (top - Math.sin(a)) * Math.cos(planeTiltDeg / DEG);
    const bulge = lengthMm - Math.sqrt(lengthMm ** 2 - (chord / 2) ** 2);
    const at = `${lengthMm} mm leaning ${planeTiltDeg}, ${from} to ${to} deg`;
    if (of === 'rise') yield { at, got: path.riseMm, want: rise };
    if (of === 'length') yield { at, got: path.lengthMm, want: lengthMm * (b - a) };
    if (of === 'sagitta') {
      yield { at, got: path.sagittaMm, want: bulge };
      yield { at: `${at}, from its points`, got: path.deviationMm, want: bulge };
    }
  }
}

const row = (
  quantity: string,
  reference: string,
  regime: string,
  bound: number,
  unit: string,
  cases: Iterable<NumberCase>,
): Row => numberRow({ quantity, reference, regime, bound, unit }, cases);

function poseRows(): Row[] {
  const any = 'random rigs of any axes, head level or turning with the arm';
  return [
    row(
      'place of the lens',
      MATRICES,
      any,
      1e-8,
      'mm',
      poses((pose, m) => [[pose.position, columnOf(m, 3)]]),
    ),
    row(
      'where lens, right and top of the image point',
      MATRICES,
      any,
      1e-12,
      'of 1',
      poses((pose, m) => [
        [pose.right, columnOf(m, 0)],
        [pose.direction, columnOf(m, 1)],
        [pose.up, columnOf(m, 2)],
      ]),
    ),
    row('subject in the image', MATRICES, `${any}; 10 mm ahead at least`, 1e-6, 'px', projections()),
  ];
}

function imageRows(): Row[] {
  const moves = '200 random rigs on the move, in the picture';
  const relative = { reference: MATRICES, bound: 2e-7, unit: 'of value + 1 px' };
  return [
    numberRow({ ...relative, quantity: 'motion of the subject', regime: moves }, motions('subject'), singles),
    numberRow(
      { ...relative, quantity: 'motion of the background', regime: moves },
      motions('background'),
      singles,
    ),
    row('angle of view', VIEWS, '14 to 135 mm on 36 x 24 mm, published to 0.1', 0.06, 'deg', anglesOfView()),
    row('motion by a pan', PIXELS, '24 and 50 mm, centre and edge, to 3 places', 1e-2, 'px', pans()),
    row('motion by a slide', PARALLAX, '50 mm, 10 mm at 2 m, 6 um a pixel', 1e-2, 'px', [
      {
        at: '10 mm',
        got: imageOf(sliding(), 10, 0, { camera: { ...camera, focalLengthMm: 50 } }).subject.px,
        want: 41.67,
      },
    ]),
    row(
      'aim with all the travel it wants',
      MATRICES,
      'random rigs, every seventh frame; 1 is half a step of pan and tilt at once',
      1 + 1e-6,
      'of that',
      aims(),
    ),
  ];
}

export const measurePath = (): Row[] => [
  ...poseRows(),
  ...imageRows(),
  row('sagitta', CIRCLES, '5 arcs of 24 to 165 deg, whole steps', 1e-2, 'mm', arcs('sagitta')),
  row('rise', CIRCLES, '5 arcs, upright to flat, whole steps', 1e-2, 'mm', arcs('rise')),
  row('length of the path', CIRCLES, '5 arcs, 501 points', 2e-2, 'mm', arcs('length')),
];
