/** What the ramp says: does the ladder reach as far as the light goes, and can every change be made. */
import type { Severity } from '../findings/types.ts';
import { counted, figure, seconds, withUnit } from '../findings/words.ts';
import type { Plan } from '../plan/schema.ts';
import { type Draft, type Judge, lostBefore, type Run } from '../run.ts';
import { shutterAngleDeg } from './ceiling.ts';
import { growingInterval } from './interval-findings.ts';
import type { Rung } from './ladder.ts';
import type { RampRun } from './ramp-run.ts';
import { rampWords, rungWords, stepWords, valueWords } from './ramp-words.ts';
import { judgeRipple } from './ripple-findings.ts';
import { openShutterS } from './shutter.ts';

/** From so many stops on nothing can be saved afterwards. Common practice, no source. */
const LOST_STOPS = 3;

/** Frames beyond one end of the ladder, counted from 1. */
interface Beyond {
  frames: number;
  first: number;
  worst: number;
  worstStops: number;
}

type Allowed = Pick<Plan['exposure']['ramp'], 'toleranceStops' | 'hysteresisStops'>;

/** Frames whose light is farther beyond an end of the ladder than the plan allows; `side` is 1 for too bright. */
function beyond(
  { ladder, spells, evError }: RampRun,
  last: Rung,
  side: 1 | -1,
  { toleranceStops: allowed, hysteresisStops }: Allowed,
): Beyond | null {
  let [frames, first, worst, worstStops] = [0, 0, 0, 0];
  for (const { begin, end, rung } of spells) {
    // On the way the light is beyond a rung, and so beyond the last one, by no more than the hysteresis.
    if (rung !== last.index && hysteresisStops <= allowed) continue;
    const settingEv = ladder.ev100[rung] as number;
    for (let k = begin; k < end; k += 1) {
      const error = evError[k] as number;
      // No rung lies beyond the end, so that an error within what is allowed is also within it there.
      if (side * error <= allowed) continue;
      const off = side * (error + settingEv - last.ev100);
      if (off <= allowed) continue;
      first ||= k + 1;
      frames += 1;
      if (off > worstStops) [worst, worstStops] = [k + 1, off];
    }
  }
  return frames === 0 ? null : { frames, first, worst, worstStops };
}

function outOfRange(run: Run, ramp: RampRun, side: 1 | -1): Draft[] {
  const { rungs } = ramp.ladder;
  const end = (side === 1 ? rungs[0] : rungs.at(-1)) as Rung;
  const found = beyond(ramp, end, side, run.plan.exposure.ramp);
  if (!found) return [];
  const { frames, first, worst, worstStops } = found;
  const severity: Severity = worstStops > LOST_STOPS ? 'stop' : 'warning';
  const how = side === 1 ? 'too bright' : 'too dark';
  const where = ramp.follows
    ? `the ramp ends at ${rungWords(end)}`
    : `the settings stay at ${rungWords(end)}`;
  return [
    {
      id: 'light-out-of-range',
      severity,
      subject: 'exposure',
      message: `${counted(frames, 'frame')} up to ${withUnit(worstStops, 'stops')} ${how}, from frame ${first}: ${where}.`,
      frame: first,
      values: { frames, worstStops, worstFrame: worst, side: how },
    },
  ];
}

function cuts({ plan }: Run, { ladder, ceiling }: RampRun): Draft[] {
  const limit = seconds(ceiling.ceilingS);
  const why =
    ceiling.binds === 'angle'
      ? `a shutter angle of ${figure(plan.exposure.shutterAngleMaxDeg ?? 0)}° allows ${limit}`
      : `the cycle leaves room for ${limit}`;
  return ladder.cuts.map(({ stepIndex, wantedS, reachedS }) => ({
    id: 'shutter-beyond-cycle' as const,
    severity: ceiling.binds === 'angle' ? ('note' as const) : ('warning' as const),
    subject: 'exposure' as const,
    message: `${stepWords(stepIndex, 'shutter')} asks for ${seconds(wantedS)}; ${why}, so it ends at ${seconds(reachedS)}.`,
    frame: null,
    values: {
      step: stepIndex + 1,
      wantedS,
      reachedS,
      ceilingS: ceiling.ceilingS,
      binds: ceiling.binds ?? '',
    },
  }));
}

const IDLE_WORDS = {
  brighter: 'would go back towards brighter light and is left out',
  'already there': 'changes nothing',
} as const;

const idle = ({ ladder }: RampRun): Draft[] =>
  ladder.idleSteps.map(({ stepIndex, setting, wanted, reached, why }) => {
    const what =
      why === 'dial' ? `ends at ${valueWords(setting, reached)}, the last mark on the way` : IDLE_WORDS[why];
    return {
      id: 'ramp-step-idle',
      severity: 'note',
      subject: 'exposure',
      message: `${stepWords(stepIndex, setting)}, to ${valueWords(setting, wanted)}, ${what}.`,
      frame: null,
      values: { step: stepIndex + 1, setting, wanted, reached, why },
    };
  });

function changesByHand(run: Run, { changes }: RampRun): Draft[] {
  const { changeS } = run.plan.exposure.ramp;
  const byHand = changes.filter(({ by }) => by === 'hand');
  const lost = byHand.map(({ frame }) => lostBefore(run, frame, changeS));
  const first = byHand[lost.findIndex((frames) => frames > 0)];
  if (!first) return [];
  const worst = Math.max(...lost);
  const all = lost.reduce((sum, frames) => sum + frames, 0);
  const late = lost.filter((frames) => frames > 0).length;
  const many = late > 1 ? `; ${late} such changes lose ${counted(all, 'frame')}` : '';
  return [
    {
      id: 'change-does-not-fit',
      severity: 'warning',
      subject: 'exposure',
      message: `Before frame ${first.frame}, ${rampWords(first)} by hand takes ${seconds(changeS)} and loses ${counted(worst, 'frame')}${many}.`,
      frame: first.frame,
      values: { changeS, lostFrames: worst, allLostFrames: all, changes: byHand.length, late },
    },
  ];
}

/** The first settings already blur more than was asked for: only the ramp's shutter is held back. */
function blur({ plan, pace }: Run): Draft[] {
  const allowedDeg = plan.exposure.shutterAngleMaxDeg;
  if (allowedDeg === null) return [];
  const angleDeg = shutterAngleDeg(plan, pace, openShutterS(plan));
  if (angleDeg <= allowedDeg * (1 + 1e-9)) return [];
  return [
    {
      id: 'blur-share',
      severity: 'note',
      subject: 'exposure',
      message: `The shutter is open for ${figure(angleDeg)}° of the interval from the first settings on; you asked for ${figure(allowedDeg)}° at most.`,
      frame: 1,
      values: { angleDeg, allowedDeg },
    },
  ];
}

const judgeLight = (run: Run, ramp: RampRun): Draft[] => [
  ...outOfRange(run, ramp, -1),
  ...outOfRange(run, ramp, 1),
  ...(ramp.follows
    ? [...cuts(run, ramp), ...idle(ramp), ...changesByHand(run, ramp), ...growingInterval(run, ramp)]
    : []),
];

/** All that light, ramp and lamps say of a run. */
export const judgeRamp: Judge = (run) => ({
  findings: [...(run.ramp ? judgeLight(run, run.ramp) : []), ...blur(run), ...judgeRipple(run)],
  margins: [],
});
