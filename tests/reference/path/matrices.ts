/**
 * The camera as a chain of 4 x 4 matrices, and its picture by a perspective matrix: gl-matrix 3.4.4, in doubles.
 *
 * Nothing here knows of unit vectors or bearings: each joint of the rig is one turn or one shift of all that it carries.
 */
import { glMatrix, mat4, vec4 } from 'gl-matrix';
import type { Stance, Vector } from '../../../src/engine/path/pose.ts';
import type { Plan } from '../../../src/engine/plan/schema.ts';

glMatrix.setMatrixArrayType(Array);

const DEG = Math.PI / 180;

type Axis = 'X' | 'Y' | 'Z';

/** All of these one inside the other, the outermost first. */
class Chain {
  readonly matrix = mat4.create();
  turn(axis: Axis, angle: number): this {
    const turned = { X: mat4.rotateX, Y: mat4.rotateY, Z: mat4.rotateZ }[axis];
    turned(this.matrix, this.matrix, angle);
    return this;
  }
  shift(x: number, y: number, z: number): this {
    mat4.translate(this.matrix, this.matrix, [x, y, z]);
    return this;
  }
}

/** From the camera's own directions (right, forward, up) to the room's. */
export function cameraMatrix({ rig }: Plan, stance: Stance): mat4 {
  const boom = rig.axes.find(({ kind }) => kind === 'boom');
  const chain = new Chain().shift(0, 0, rig.pivotHeightMm);
  const { bearingDeg, inclineDeg } = rig.slide;
  chain
    .turn('Z', -bearingDeg * DEG)
    .turn('X', inclineDeg * DEG)
    .shift(0, stance.slide, 0);
  chain.turn('X', -inclineDeg * DEG).turn('Z', bearingDeg * DEG);
  if (boom) {
    const { lengthMm, planeTiltDeg, zeroDeg, keepsLevel } = rig.arm;
    const angle = zeroDeg * DEG + (boom.unit === 'mm' ? stance.boom / lengthMm : stance.boom * DEG);
    chain
      .turn('Y', planeTiltDeg * DEG)
      .turn('X', angle)
      .shift(0, lengthMm, 0);
    chain.turn('X', keepsLevel ? -angle : 0).turn('Y', -planeTiltDeg * DEG);
  }
  return chain
    .turn('Z', -(rig.lensBearingDeg + stance.pan) * DEG)
    .turn('X', (rig.lensTiltDeg + stance.tilt) * DEG)
    .turn('Y', stance.roll * DEG).matrix;
}

/** The subject on its turntable. */
export function subjectPoint({ rig, subject }: Plan, stance: Stance): Vector {
  const { rightMm, forwardMm } = rig.turntable;
  const angle = subject.onTurntable ? -stance.turntable * DEG : 0;
  const chain = new Chain().shift(rightMm, forwardMm, 0).turn('Z', angle).shift(-rightMm, -forwardMm, 0);
  return through(chain.matrix, { x: subject.rightMm, y: subject.forwardMm, z: subject.heightMm });
}

/** A point through a matrix. */
export function through(matrix: mat4, { x, y, z }: Vector): Vector {
  const [a, b, c, w] = vec4.transformMat4(vec4.create(), [x, y, z, 1], matrix) as [
    number,
    number,
    number,
    number,
  ];
  return { x: a / w, y: b / w, z: c / w };
}

/** Column of a matrix: where 0 right, 1 forward, 2 up of the camera point in the room, and 3 the lens. */
export const columnOf = (matrix: mat4, column: 0 | 1 | 2 | 3): Vector => ({
  x: matrix[4 * column] as number,
  y: matrix[4 * column + 1] as number,
  z: matrix[4 * column + 2] as number,
});

/** From the room to the image: px to the right and up from its centre, and the distance ahead, mm. */
export function pictured({ camera }: Plan, matrix: mat4, point: Vector): Vector {
  const { focalLengthMm, sensorWidthMm, imageWidthPx, imageHeightPx } = camera;
  const sensorHeightMm = (sensorWidthMm * imageHeightPx) / imageWidthPx;
  const lens = mat4.perspective(
    mat4.create(),
    2 * Math.atan(sensorHeightMm / 2 / focalLengthMm),
    imageWidthPx / imageHeightPx,
    1,
    1e7,
  );
  const view = mat4.invert(mat4.create(), matrix);
  if (!view) throw new RangeError('the camera has no place');
  // The library's own camera looks along its negative z, with y up.
  const seen = through(new Chain().turn('X', -Math.PI / 2).matrix, through(view, point));
  const { x, y } = through(lens, seen);
  return { x: (x * imageWidthPx) / 2, y: (y * imageHeightPx) / 2, z: -seen.z };
}
