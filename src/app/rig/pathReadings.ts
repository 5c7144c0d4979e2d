/** The path of the camera in figures, beside its drawing. */
import type { Largest } from '../../engine/path/image.ts';
import type { ImageSummary } from '../../engine/path/image-summary.ts';
import type { PathSummary } from '../../engine/path/path.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Columns } from '../../engine/schedule-types.ts';
import { ofFrame } from '../../engine/working/names.ts';
import type { Reading } from '../charts/chart.ts';
import { digitsFor, fixed, signed } from '../charts/format.ts';
import { numberText, withUnit } from '../format/numbers.ts';
import { lengthText, millimetres } from './rigText.ts';
import type { Standing } from './standing.ts';

const reading = (name: string, value: string, unit: string): Reading => ({ style: null, name, value, unit });

/** A reading with its working. */
const how = (of: string, shown: Reading): Reading => ({ ...shown, of });

const mm = (name: string, value: number): Reading => reading(name, fixed(value, 0), 'mm');

/** Millimetres with tenths while they are few. */
const tenths = (name: string, value: number): Reading =>
  reading(name, fixed(value, value < 100 ? 1 : 0), 'mm');

/** Millimetres, or metres from ten on. */
const away = (name: string, value: number): Reading =>
  value < 10_000 ? mm(name, value) : reading(name, fixed(value / 1000, 1), 'm');

/** What the whole path comes to; nothing if the lens only turns. */
export function pathReadings(summary: PathSummary): Reading[] {
  const { riseMm, reachMm, lengthMm, swingDeg, sagittaMm, deviationMm, clearanceMm } = summary;
  if (lengthMm === 0) return [];
  return [
    how('path.lengthMm', mm('Way of the lens', lengthMm)),
    how('path.riseMm', mm('Rise', riseMm)),
    how('path.reachMm', mm('Reach', reachMm)),
    ...(swingDeg > 0
      ? [
          how('path.swingDeg', reading('Arm swings', fixed(swingDeg, 1), '°')),
          how('path.sagittaMm', tenths('Sagitta', sagittaMm)),
        ]
      : []),
    how('path.deviationMm', tenths('Off a straight line', deviationMm)),
    how('path.clearanceMm', mm('Lowest above the floor', clearanceMm)),
  ];
}

const pixels = (name: string, px: number): Reading => reading(name, fixed(px, digitsFor(px)), 'px');

const largest = (name: string, { px, frame }: Largest): Reading =>
  pixels(px > 0 ? `${name}, frame ${frame}` : name, px);

/** How fast the picture moves at most, and at which frame. */
export function imageReadings(summary: ImageSummary): Reading[] {
  const { subject, background, blur, crossing, outOfSightFrames } = summary;
  return [
    how('image.subjectPx', largest('Subject', subject)),
    how('image.backgroundPx', largest('Background', background)),
    ...(blur ? [how('image.blurPx', largest(`Blur, ${blur.of}`, blur))] : []),
    ...(crossing
      ? [how('image.crossingS', reading('Crosses the frame in', fixed(crossing.shortestS, 1), 's'))]
      : []),
    ...(outOfSightFrames > 0
      ? [
          how(
            'image.outOfSightFrames',
            reading(
              'Subject out of sight',
              String(outOfSightFrames),
              outOfSightFrames === 1 ? 'frame' : 'fr.',
            ),
          ),
        ]
      : []),
  ];
}

type ImageColumns = Pick<Columns, 'subjectPx' | 'backgroundPx' | 'aimMissPx'>;

/** How fast the picture moves from a frame, counted from 0, to the next. */
export function imageReadingsAt(columns: ImageColumns, index: number): Reading[] {
  const { subjectPx, backgroundPx, aimMissPx } = columns;
  return [
    ...(subjectPx ? [how(ofFrame(index, 'subjectPx'), pixels('Subject moves', subjectPx[index] ?? 0))] : []),
    ...(backgroundPx
      ? [how(ofFrame(index, 'backgroundPx'), pixels('Background moves', backgroundPx[index] ?? 0))]
      : []),
    ...(aimMissPx ? [how(ofFrame(index, 'aimMissPx'), pixels('Aim is off by', aimMissPx[index] ?? 0))] : []),
  ];
}

/** Bearing and elevation of a direction, degrees. */
function directionDeg({ x, y, z }: Standing['pose']['direction']): { bearing: number; elevation: number } {
  const degrees = 180 / Math.PI;
  return {
    bearing: Math.atan2(x, y) * degrees,
    elevation: Math.asin(Math.max(-1, Math.min(1, z))) * degrees,
  };
}

/** Where the camera is at one frame. */
export function standingReadings({ index, pose, subjectMm }: Standing): Reading[] {
  const { position, direction } = pose;
  const { bearing, elevation } = directionDeg(direction);
  const of = (what: string) => ofFrame(index, what);
  return [
    how(of('lensHeightMm'), mm('Lens above the floor', position.z)),
    how(of('lensForwardMm'), mm('Forward', position.y)),
    how(of('lensRightMm'), reading('To the right', signed(position.x, 0), 'mm')),
    how(of('lensBearingDeg'), reading('Looks to', signed(bearing, 1), '°')),
    how(of('lensElevationDeg'), reading('Looks up', signed(elevation, 1), '°')),
    ...(subjectMm === null ? [] : [how(of('subjectMm'), away('Subject away', subjectMm))]),
  ];
}

/** The drawing in words. */
export function pathText(plan: Plan, summary: PathSummary | null): string {
  if (summary === null) return 'The rig, from its side and from above.';
  const { riseMm, reachMm, deviationMm, first, last } = summary;
  const ends = `The lens goes from ${millimetres(first.heightMm)} to ${millimetres(last.heightMm)} above the floor`;
  const field = plan.camera.sensorWidthMm / 2 / plan.camera.focalLengthMm;
  const view = `sees ${numberText((2 * Math.atan(field) * 180) / Math.PI, 0)}° across`;
  return `${ends}, rises ${millimetres(riseMm)}, reaches ${lengthText(reachMm)} from the pivot, is ${withUnit(numberText(deviationMm, deviationMm < 10 ? 1 : 0), 'mm')} off a straight line at most, and ${view}.`;
}
