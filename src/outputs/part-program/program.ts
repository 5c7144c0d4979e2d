/**
 * A part program (RS-274) of a run, for rigs whose controller reads it.
 *
 * The dialect is that of the NIST RS274/NGC Interpreter, version 3 (Kramer, Proctor, Messina 2000, NISTIR 6556), and of
 * it only what most controllers read: G1, G4, G20, G21, G90, G93, G94, M0, M2, words of X, Y, Z, A, B, C, F, P.
 *
 * Between exposures: G1 to each frame's position, G4 for settle, exposure and the rest of the interval; the user's own
 * lines fire the camera. The rest is worked out from the axes' limits: how fast a controller really ramps is its own.
 * In continuous motion: one move a frame, in inverse time (G93), so that each takes just its interval; the camera is
 * not fired from the program, since a line between two moves would stop the rig. Stop-motion: the program stops (M0)
 * for the hands before each pass.
 */

import { faultSentence } from '../../engine/plan/fault.ts';
import { partProgramFaults, triggerLines, wordsOf } from '../../engine/plan/part-program-check.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { hasPass, passLane } from '../../engine/sheet/passes.ts';
import { placeOf } from '../../engine/sheet/texts.ts';
import type { Sheet } from '../../engine/sheet/types.ts';
import { clockAt } from '../../engine/time/clock.ts';
import {
  type Leg,
  legOf,
  legsBetween,
  overrunBefore,
  type ProgramAxis,
  positionAt,
  programAxes,
} from './axes.ts';
import { headerOf } from './header.ts';
import { comment, decimal, dwell, LINE_END, roundedDown } from './text.ts';

const FRAMES_A_CHUNK = 500;

const line = (text: string): string => text + LINE_END;

/** The user's lines, and what their own dwells take. */
interface Trigger {
  text: string;
  dwellS: number;
}

function triggerOf(plan: Plan): Trigger {
  const lines = triggerLines(plan);
  const seconds = lines.map((text) => /G0*4P(\+?[\d.]+)/.exec(wordsOf(text) ?? '')?.[1] ?? '0');
  return { text: lines.map(line).join(''), dwellS: seconds.reduce((sum, s) => sum + Number(s), 0) };
}

/** From wherever the axes are to the first frame: one by one, since nobody knows how far each has to go. */
function* approach(plan: Plan, axes: readonly ProgramAxis[]): Generator<string> {
  const first = positionAt(axes, 0);
  const past = overrunBefore(axes, 0) ?? first;
  for (const [i, own] of axes.entries()) {
    const to = (at = 0) => line(`G1 ${own.word}${decimal(at, own.places)} F${topFeed(plan, own)}`);
    if (past[i] !== first[i] && withinTravel(own, past[i] ?? 0)) yield to(past[i]);
    yield to(first[i]);
  }
}

/** From home, at zero, a position at the end of the travel is come to from the right side in any case. */
const withinTravel = ({ axis, ownUnits }: ProgramAxis, at: number): boolean =>
  at * ownUnits >= axis.travelMin && at * ownUnits <= axis.travelMax;

const topFeed = ({ partProgram }: Plan, { axis, ownUnits }: ProgramAxis): string =>
  roundedDown((axis.maxSpeed * partProgram.feedShare * 60) / ownUnits, 6);

/** Moves to the frame of an index from the one before, by way of an overrun where an axis has a side. */
function legsTo(plan: Plan, axes: readonly ProgramAxis[], k: number): Leg[] {
  const to = positionAt(axes, k);
  const past = overrunBefore(axes, k);
  const from = positionAt(axes, k - 1);
  if (past === null) return legsBetween(plan, axes, from, to);
  return [...legsBetween(plan, axes, from, past), ...legsBetween(plan, axes, past, to)];
}

/** A time-lapse that moves between exposures, or not at all. */
function frameText(run: Run, k: number): string {
  const { plan, axes, made, trigger } = run;
  const { holdS, intervalS, settleS } = made.columns;
  const fired = Math.max(trigger.dwellS, holdS[k] ?? 0);
  const shot = comment(`frame ${k + 1}`) + trigger.text + dwell(fired - trigger.dwellS);
  if (k === made.totals.frames - 1) return shot;
  const legs = legsTo(plan, axes, k + 1);
  const moveS = legs.reduce((sum, { durationS }) => sum + durationS, 0);
  const settle = legs.length > 0 ? (settleS[k] ?? 0) : 0;
  const rest = (intervalS[k] ?? 0) - fired - moveS;
  return shot + legs.map((leg) => leg.line).join('') + dwell(Math.max(settle, rest));
}

/** How many seconds the worst frame takes more than its interval, and its frame, counted from 1. */
export function latestFrame({ plan, axes, made, trigger }: Run): { frame: number; lateS: number } {
  const { holdS, intervalS, settleS } = made.columns;
  let worst = { frame: 0, lateS: 0 };
  for (let k = 0; k + 1 < made.totals.frames; k += 1) {
    const legs = legsTo(plan, axes, k + 1);
    const settle = legs.length > 0 ? (settleS[k] ?? 0) : 0;
    const busy = legs.reduce((sum, leg) => sum + leg.durationS, Math.max(trigger.dwellS, holdS[k] ?? 0));
    const lateS = busy + settle - (intervalS[k] ?? 0);
    if (lateS > worst.lateS + 1e-6) worst = { frame: k + 1, lateS };
  }
  return worst;
}

/** Continuous motion: to the next frame in just its interval. */
function continuousText({ plan, axes, made }: Run, k: number): string {
  const intervalS = made.columns.intervalS[k] ?? 0;
  const leg = legOf(plan, axes, positionAt(axes, k), positionAt(axes, k + 1), () =>
    roundedDown(60 / intervalS, 9),
  );
  return leg?.line ?? dwell(intervalS);
}

/** What is written, and what for. */
export interface Run {
  plan: Plan;
  made: Schedule;
  axes: readonly ProgramAxis[];
  trigger: Trigger;
}

function* timeLapse(run: Run): Generator<string> {
  const { plan, made } = run;
  const { frames } = made.totals;
  const starts = clockAt(made.startMs, made.offsets);
  const continuous = plan.move.mode === 'continuous';
  yield comment(`First frame at ${starts}: the program goes on when you start it again.`) + line('M0');
  if (continuous) yield line('G93');
  const text = continuous ? continuousText : frameText;
  const last = continuous ? frames - 1 : frames;
  for (let from = 0; from < last; from += FRAMES_A_CHUNK) {
    let chunk = '';
    for (let k = from; k < Math.min(last, from + FRAMES_A_CHUNK); k += 1) chunk += text(run, k);
    yield chunk;
  }
  if (continuous) yield line('G94');
}

/** One exposure of stop-motion: to its place, then hands, camera, for each of its passes. */
function exposureText({ plan, axes, trigger }: Run, sheet: Sheet, i: number): string {
  const legs: Leg[] = i === 0 ? [] : legsTo(plan, axes, i);
  const { shot, exposure } = placeOf(sheet, i);
  const shotName = sheet.shots[shot - 1]?.name || 'a shot';
  const head = legs.map((leg) => leg.line).join('') + (legs.length > 0 ? dwell(plan.move.settleS) : '');
  const passes = plan.sheet.passes.flatMap((pass, p) => {
    if (!hasPass(sheet.columns.passes[i] ?? 0, p)) return [];
    const openS = Math.max(0, passLane(plan, pass).holdS - trigger.dwellS);
    const says = comment(`Exposure ${exposure} of ${shotName}, ${pass.name}: start when your hands are out`);
    return [says + line('M0') + trigger.text + dwell(openS)];
  });
  return head + passes.join('');
}

function* stopMotion(run: Run, sheet: Sheet): Generator<string> {
  for (let i = 0; i < sheet.exposures; i += 1) yield exposureText(run, sheet, i);
}

/**
 * The part program, in chunks of whole lines, so that a million frames need no long string.
 * @param sheet - exposure sheet of a stop-motion plan, else null
 * @throws RangeError with the faults of `partProgramFaults`, which callers ask for first
 */
export function* partProgram(
  plan: Plan,
  made: Schedule,
  sheet: Sheet | null,
): Generator<string, void, undefined> {
  const faults = partProgramFaults(plan);
  if (faults.length > 0) throw new RangeError(faults.map(faultSentence).join('; '));
  const axes = programAxes(plan, sheet ? sheet.columns.axes : made.columns.axes);
  const run: Run = { plan, made, axes, trigger: triggerOf(plan) };
  const timed = sheet === null && plan.move.mode !== 'continuous';
  yield headerOf(run, sheet, timed ? latestFrame(run) : null);
  yield line(plan.partProgram.inches ? 'G20' : 'G21') + line('G90') + line('G94');
  yield* approach(plan, axes);
  yield* sheet ? stopMotion(run, sheet) : timeLapse(run);
  yield line('M2');
}
