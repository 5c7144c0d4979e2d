/** What the move comes to for what the camera looks at, in sentences. */
import type { AimKind, AimSummary } from '../../engine/path/aim.ts';
import { geometryOf, lensAt, stanceAt, subjectAt } from '../../engine/path/pose.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { AxisColumns } from '../../engine/schedule-types.ts';
import { plural, shortNumber, withUnit } from '../format/numbers.ts';
import { degrees } from '../sections/lightText.ts';
import { lengthText } from './rigText.ts';
import { distance } from './standing.ts';

/** Millimetres from the lens to the subject at a frame, counted from 0. */
export function subjectDistanceMm(plan: Plan, axes: readonly AxisColumns[], index: number): number {
  const geometry = geometryOf(plan);
  const stance = stanceAt(plan, axes, index);
  return distance(lensAt(geometry, stance), subjectAt(geometry, stance));
}

function awayText(plan: Plan, axes: readonly AxisColumns[]): string {
  const last = (axes[0]?.steps.length ?? 1) - 1;
  const [from, to] = [0, last].map((index) => lengthText(subjectDistanceMm(plan, axes, index)));
  return from === to
    ? `${from} from the lens, first and last.`
    : `${from} from the lens at the first frame, ${to} at the last.`;
}

const wordOf = (kind: AimKind): string => (kind === 'pan' ? 'Pan' : 'Tilt');

function rangeText(kind: AimKind, from: number | null, to: number | null): string {
  if (from === null || to === null) return '';
  return from === to
    ? `${wordOf(kind)} stays at ${degrees(from)}.`
    : `${wordOf(kind)} keeps between ${degrees(from)} and ${degrees(to)}.`;
}

const both = (kinds: readonly AimKind[]): string => kinds.map(wordOf).join(' and ').replace(/ Tilt/, ' tilt');

function missText({ missFrames, firstMissFrame, worstPx, worstDeg, worstFrame }: AimSummary): string {
  if (missFrames === 0) return 'The aim holds at every frame.';
  const worst = `${withUnit(shortNumber(worstPx), 'px')} (${degrees(worstDeg)})`;
  const where = `from frame ${firstMissFrame}, by up to ${worst} at frame ${worstFrame}`;
  return `It is off the centre on ${plural(missFrames, 'frame')}, ${where}.`;
}

function aimTexts(aim: AimSummary): string[] {
  const { limits, lacks } = aim;
  return [
    [rangeText('pan', aim.panFromDeg, aim.panToDeg), rangeText('tilt', aim.tiltFromDeg, aim.tiltToDeg)]
      .filter((text) => text !== '')
      .join(' '),
    lacks.length > 0 ? `${both(lacks)}: the rig has no such axis. Add one under Rig.` : '',
    limits.length > 0 ? `${both(limits)} stops at an end of the travel.` : '',
    missText(aim),
  ];
}

/**
 * The sentences about the subject, those that there are.
 * @param axes - as the schedule has them
 * @param aim - null if it is not kept framed
 */
export function subjectFacts(plan: Plan, axes: readonly AxisColumns[], aim: AimSummary | null): string[] {
  if (!plan.subject.used || axes.length === 0) return [];
  return [awayText(plan, axes), ...(aim ? aimTexts(aim) : [])].filter((text) => text !== '');
}
