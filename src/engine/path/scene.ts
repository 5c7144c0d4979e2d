/**
 * The lens and the subject at every frame, a block of frames at a time: what `lensAt` and `subjectAt` give for one,
 * for runs of any length.
 */
import type { Plan } from '../plan/schema.ts';
import { type Geometry, geometryOf, type PoseKind, poseAxis, RAD, type StepColumns } from './pose.ts';
import { BLOCK, Turning } from './turning.ts';

const block = () => new Float64Array(BLOCK);

const NO_SLIDE: StepColumns = { steps: new Int32Array(1), stepsPerUnit: 1 };

/** Everything but what the head does: arm, slide, turntable, subject. */
export class Scene {
  readonly geometry: Geometry;
  /** Angle of the arm from level. */
  readonly arm: Turning;
  /** Place of the lens, mm, at the frames of the block filled last. */
  readonly lensX = block();
  readonly lensY = block();
  readonly lensZ = block();
  /** From the lens to the subject, mm, as the head has it: turned back if it turns with the arm. */
  readonly x = block();
  readonly y = block();
  readonly z = block();
  /** Whether any of it changes during the run. */
  readonly moves: boolean;
  readonly #table: Turning;
  readonly #slide: StepColumns | undefined;
  readonly #slides: boolean;

  constructor(plan: Plan, axes: readonly StepColumns[]) {
    const columns = (kind: PoseKind) => axes[poseAxis(plan, kind)];
    const geometry = geometryOf(plan);
    this.geometry = geometry;
    const { boom, onTurntable } = geometry;
    this.arm = new Turning(columns('boom'), boom?.zeroRad ?? 0, boom?.radPerUnit ?? 0);
    this.#table = new Turning(onTurntable ? columns('turntable') : undefined, 0, RAD);
    this.#slide = columns('slide');
    this.#slides = this.#slide?.steps.some((step, _, all) => step !== all[0]) ?? false;
    this.moves = this.arm.moves || this.#table.moves || this.#slides;
  }

  /** Works out the frames from one index to before another, at most a block. */
  fill(from: number, to: number): void {
    const count = to - from;
    this.#fillLens(from, count);
    this.#fillSubject(from, count);
    if (this.geometry.boom?.turnsHead) this.#turnBack(count);
  }

  #fillLens(from: number, count: number): void {
    const { lensX, lensY, lensZ } = this;
    const { boom, pivotMm, slide } = this.geometry;
    this.arm.fill(from, from + count);
    const { sin, cos } = this.arm;
    const length = boom?.lengthMm ?? 0;
    const [riseX, riseZ] = [length * (boom?.rise.x ?? 0), length * (boom?.rise.z ?? 0)];
    const { steps, stepsPerUnit } = this.#slide ?? NO_SLIDE;
    const [slideX, slideY, slideZ] = [slide.x / stepsPerUnit, slide.y / stepsPerUnit, slide.z / stepsPerUnit];
    const every = this.#slides ? 1 : 0;
    for (let i = 0; i < count; i += 1) {
      const step = steps[(from + i) * every] as number;
      const sine = sin[i] as number;
      lensX[i] = step * slideX + riseX * sine;
      lensY[i] = step * slideY + length * (cos[i] as number);
      lensZ[i] = pivotMm + step * slideZ + riseZ * sine;
    }
  }

  #fillSubject(from: number, count: number): void {
    const { lensX, lensY, lensZ, x, y, z } = this;
    const { subject, onTurntable } = this.geometry;
    const table = onTurntable ? this.geometry.table : subject;
    const [atX, atY] = [subject.x - table.x, subject.y - table.y];
    this.#table.fill(from, from + count);
    const { sin, cos } = this.#table;
    for (let i = 0; i < count; i += 1) {
      const sine = sin[i] as number;
      const cosine = cos[i] as number;
      x[i] = table.x + atX * cosine + atY * sine - (lensX[i] as number);
      y[i] = table.y + atY * cosine - atX * sine - (lensY[i] as number);
      z[i] = subject.z - (lensZ[i] as number);
    }
  }

  /** From the room's directions to those of a head that has turned with the arm. */
  #turnBack(count: number): void {
    const { x, y, z, arm } = this;
    const { x: riseX, z: riseZ } = this.geometry.boom?.rise ?? { x: 0, z: 1 };
    for (let i = 0; i < count; i += 1) {
      const sine = arm.sin[i] as number;
      const cosine = arm.cos[i] as number;
      const along = (x[i] as number) * riseX + (z[i] as number) * riseZ;
      const more = along * cosine - (y[i] as number) * sine - along;
      y[i] = (y[i] as number) * cosine + along * sine;
      x[i] = (x[i] as number) + more * riseX;
      z[i] = (z[i] as number) + more * riseZ;
    }
  }
}
