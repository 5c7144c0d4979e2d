/**
 * The lens and the subject at every frame: what `lensAt` and `subjectAt` give for one, for runs of any length.
 */
import type { Plan } from '../plan/schema.ts';
import { type Geometry, geometryOf, type PoseKind, poseAxis, RAD, type StepColumns } from './pose.ts';
import { ALL, BLOCK, FIRST, type Range, type Turn, Turning } from './turning.ts';

const block = () => new Float64Array(BLOCK);

const NO_SLIDE: StepColumns = { steps: new Int32Array(1), stepsPerUnit: 1 };

/**
 * A scene's constants, in this order; mm. Where the slide goes for each of its steps (x, y, z); height of the pivot, length
 * of the arm, where it goes at its uppermost (x, z), and that direction (x, z), of length 1; what the subject turns about
 * (x, y), where it is from there (x, y), and its height; what an index of the slide's steps is put through (&): FIRST if
 * it stands still; 1 if the head turns with the arm, else 0.
 */
function givenOf(
  { boom, pivotMm, slide, ...geometry }: Geometry,
  stepsPerUnit: number,
  slideEvery: number,
): Float64Array {
  const { subject, onTurntable } = geometry;
  const length = boom?.lengthMm ?? 0;
  const rise = boom?.rise ?? { x: 0, z: 1 };
  const centre = onTurntable ? geometry.table : subject;
  return Float64Array.of(
    slide.x / stepsPerUnit,
    slide.y / stepsPerUnit,
    slide.z / stepsPerUnit,
    pivotMm,
    length,
    length * rise.x,
    length * rise.z,
    rise.x,
    rise.z,
    centre.x,
    centre.y,
    subject.x - centre.x,
    subject.y - centre.y,
    subject.z,
    slideEvery,
    boom?.turnsHead ? 1 : 0,
  );
}

/** Everything but what the head does: arm, slide, turntable, subject. */
export class Scene {
  readonly geometry: Geometry;
  /** Angle of the arm from level, and of the turntable if it turns the subject. */
  readonly arm: Turning;
  readonly table: Turning;
  readonly slide: Int32Array;
  /** As {@link givenOf} has them, in a typed array: loops that read them elsewhere are compiled anew for each rig. */
  readonly given: Float64Array;
  readonly turnsHead: boolean;
  /** Whether any of it changes during the run. */
  readonly moves: boolean;
  /** From the lens to the subject, mm, as the head has it, turned back if it turns with the arm: of a block. */
  readonly x = block();
  readonly y = block();
  readonly z = block();
  /** The level part of that. */
  readonly level = block();

  /** @param ranges - of the axes, where they are known */
  constructor(plan: Plan, axes: readonly StepColumns[], ranges?: readonly Range[]) {
    const columns = (kind: PoseKind) => axes[poseAxis(plan, kind)];
    const range = (kind: PoseKind) => ranges?.[poseAxis(plan, kind)];
    const geometry = geometryOf(plan);
    this.geometry = geometry;
    const { boom, onTurntable } = geometry;
    const [zeroRad, radPerUnit] = [boom?.zeroRad ?? 0, boom?.radPerUnit ?? 0];
    this.arm = new Turning(columns('boom'), zeroRad, radPerUnit, range('boom'));
    const table = onTurntable ? 'turntable' : null;
    this.table = new Turning(table ? columns(table) : undefined, 0, RAD, table ? range(table) : undefined);
    const { steps, stepsPerUnit } = columns('slide') ?? NO_SLIDE;
    this.slide = steps;
    const slides = steps.some((step) => step !== steps[0]);
    this.given = givenOf(geometry, stepsPerUnit, slides ? ALL : FIRST);
    this.turnsHead = boom?.turnsHead ?? false;
    this.moves = this.arm.moves || this.table.moves || slides;
  }

  /** Works out the frames from one index to before another, at most a block. */
  fill(from: number, to: number): void {
    const { x, y, z, level, arm, table, slide, given } = this;
    arm.fill(from, to);
    table.fill(from, to);
    fillAway(x, y, z, level, arm.turn, table.turn, slide, given, from, to - from);
    if (this.turnsHead) turnBack(x, y, z, level, arm.turn, given, from, to - from);
  }
}

/** Fills the way from the lens to the subject, in the room. */
function fillAway(
  x: Float64Array,
  y: Float64Array,
  z: Float64Array,
  level: Float64Array,
  [armOf, armWhole, arm]: Turn,
  [tableOf, tableWhole, table]: Turn,
  slide: Int32Array,
  given: Float64Array,
  from: number,
  count: number,
): void {
  const armEvery = armWhole[0] as number;
  const armLow = armWhole[1] as number;
  const tableEvery = tableWhole[0] as number;
  const tableLow = tableWhole[1] as number;
  const tableTurns = tableEvery !== FIRST;
  let tableS = table[0] as number;
  let tableC = table[1] as number;
  const slideX = given[0] as number;
  const slideY = given[1] as number;
  const slideZ = given[2] as number;
  const pivotZ = given[3] as number;
  const length = given[4] as number;
  const armX = given[5] as number;
  const armZ = given[6] as number;
  const centreX = given[9] as number;
  const centreY = given[10] as number;
  const besideX = given[11] as number;
  const besideY = given[12] as number;
  const subjectZ = given[13] as number;
  const slideEvery = (given[14] as number) | 0;
  for (let i = 0; i < count; i += 1) {
    const slid = slide[(from + i) & slideEvery] as number;
    const a = ((armOf[(from + i) & armEvery] as number) - armLow) << 1;
    const sine = arm[a] as number;
    const cosine = arm[a + 1] as number;
    // Few subjects turn.
    if (tableTurns) {
      const t = ((tableOf[(from + i) & tableEvery] as number) - tableLow) << 1;
      tableS = table[t] as number;
      tableC = table[t + 1] as number;
    }
    const lensX = slid * slideX + armX * sine;
    const lensY = slid * slideY + length * cosine;
    const right = centreX + besideX * tableC + besideY * tableS - lensX;
    const forward = centreY + besideY * tableC - besideX * tableS - lensY;
    x[i] = right;
    y[i] = forward;
    level[i] = Math.sqrt(right * right + forward * forward);
    z[i] = subjectZ - (pivotZ + slid * slideZ + armZ * sine);
  }
}

/** From the room's directions to those of a head that has turned with the arm. */
function turnBack(
  x: Float64Array,
  y: Float64Array,
  z: Float64Array,
  level: Float64Array,
  [of, whole, table]: Turn,
  given: Float64Array,
  from: number,
  count: number,
): void {
  const every = whole[0] as number;
  const low = whole[1] as number;
  const riseX = given[7] as number;
  const riseZ = given[8] as number;
  for (let i = 0; i < count; i += 1) {
    const a = ((of[(from + i) & every] as number) - low) << 1;
    const sine = table[a] as number;
    const cosine = table[a + 1] as number;
    const along = (x[i] as number) * riseX + (z[i] as number) * riseZ;
    const more = along * cosine - (y[i] as number) * sine - along;
    const forward = (y[i] as number) * cosine + along * sine;
    const right = (x[i] as number) + more * riseX;
    x[i] = right;
    y[i] = forward;
    level[i] = Math.sqrt(right * right + forward * forward);
    z[i] = (z[i] as number) + more * riseZ;
  }
}
