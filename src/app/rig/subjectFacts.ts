/** What the move comes to for what the camera looks at, in sentences. */
import type { AimKind, AimSummary } from '../../engine/path/aim.ts';
import { geometryOf, lensAt, stanceAt, subjectAt } from '../../engine/path/pose.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { AxisColumns } from '../../engine/schedule-types.ts';
import { ofFrame } from '../../engine/working/names.ts';
import { plural, shortNumber, withUnit } from '../format/numbers.ts';
import { degrees } from '../sections/lightText.ts';
import type { Piece } from '../working/sentence.ts';
import { lengthText } from './rigText.ts';
import { distance } from './standing.ts';

/** Millimetres from the lens to the subject at a frame, counted from 0. */
export function subjectDistanceMm(plan: Plan, axes: readonly AxisColumns[], index: number): number {
  const geometry = geometryOf(plan);
  const stance = stanceAt(plan, axes, index);
  return distance(lensAt(geometry, stance), subjectAt(geometry, stance));
}

function awayPieces(plan: Plan, axes: readonly AxisColumns[]): Piece[] {
  const last = (axes[0]?.steps.length ?? 1) - 1;
  const away = (index: number) => ({
    text: lengthText(subjectDistanceMm(plan, axes, index)),
    of: ofFrame(index, 'subjectMm'),
  });
  const [from, to] = [away(0), away(last)];
  return from.text === to.text
    ? [from, ' from the lens, first and last.']
    : [from, ' from the lens at the first frame, ', to, ' at the last.'];
}

const wordOf = (kind: AimKind): string => (kind === 'pan' ? 'Pan' : 'Tilt');

const figure = (what: string, text: string): Piece => ({ text, of: `aim.${what}` });

function rangePieces(kind: AimKind, from: number | null, to: number | null): Piece[] {
  if (from === null || to === null) return [];
  const low = figure(`${kind}FromDeg`, degrees(from));
  return from === to
    ? [`${wordOf(kind)} stays at `, low, '.']
    : [`${wordOf(kind)} keeps between `, low, ' and ', figure(`${kind}ToDeg`, degrees(to)), '.'];
}

const both = (kinds: readonly AimKind[]): string => kinds.map(wordOf).join(' and ').replace(/ Tilt/, ' tilt');

function missPieces({ missFrames, firstMissFrame, worstPx, worstDeg, worstFrame }: AimSummary): Piece[] {
  if (missFrames === 0) return ['The aim holds at every frame.'];
  return [
    'It is off the centre on ',
    figure('missFrames', plural(missFrames, 'frame')),
    ', from ',
    figure('firstMissFrame', `frame ${firstMissFrame}`),
    ', by up to ',
    figure('worstPx', withUnit(shortNumber(worstPx), 'px')),
    ' (',
    figure('worstDeg', degrees(worstDeg)),
    ') at ',
    figure('worstFrame', `frame ${worstFrame}`),
    '.',
  ];
}

function aimPieces(aim: AimSummary): Piece[][] {
  const { limits, lacks } = aim;
  return [
    rangePieces('pan', aim.panFromDeg, aim.panToDeg),
    rangePieces('tilt', aim.tiltFromDeg, aim.tiltToDeg),
    lacks.length > 0 ? [`${both(lacks)}: the rig has no such axis. Add one under Rig.`] : [],
    limits.length > 0 ? [`${both(limits)} stops at an end of the travel.`] : [],
    missPieces(aim),
  ];
}

/**
 * The sentences about the subject, those that there are.
 * @param axes - as the schedule has them
 * @param aim - null if it is not kept framed
 */
export function subjectFacts(plan: Plan, axes: readonly AxisColumns[], aim: AimSummary | null): Piece[][] {
  if (!plan.subject.used || axes.length === 0) return [];
  return [awayPieces(plan, axes), ...(aim ? aimPieces(aim) : [])].filter((pieces) => pieces.length > 0);
}
