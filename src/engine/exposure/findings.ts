/** What the exposure says: a marked shutter time is not the real one. */
import { cameraLane } from '../cycle/cycle.ts';
import { seconds } from '../findings/words.ts';
import type { Draft, Judge, Run } from '../run.ts';
import { openShutterS } from './shutter.ts';
import { shutterStop } from './stops.ts';

// Below a tenth of a second a frame the difference decides nothing about an interval set in whole seconds.
const WORTH_SAYING_S = 0.1;

function markedAgainstExact({ plan, lane, pace }: Run): Draft[] {
  const { shutterS, timedBy, bracketCount } = plan.exposure;
  const exactS = openShutterS(plan);
  const marked = cameraLane({ ...plan, exposure: { ...plan.exposure, timedBy: 'trigger' } });
  if (timedBy === 'trigger' || Math.abs(lane.exposureS - marked.exposureS) < WORTH_SAYING_S) return [];
  const onlyOnPaper = marked.cameraS <= pace.intervalS && lane.cameraS > pace.intervalS;
  const mark = shutterStop(shutterS)?.mark ?? String(shutterS);
  const whole = bracketCount > 1 ? ` The bracket takes ${seconds(lane.exposureS)}.` : '';
  const consequence = onlyOnPaper ? ' By the mark it would fit into the interval; it does not.' : '';
  return [
    {
      id: 'shutter-marked-exact',
      severity: onlyOnPaper ? 'warning' : 'note',
      subject: 'exposure',
      message: `A shutter time marked ${mark}\u00A0s is open for ${seconds(exactS)}.${whole}${consequence}`,
      frame: 1,
      values: { markedS: shutterS, exactS, exposureS: lane.exposureS },
    },
  ];
}

export const judgeExposure: Judge = (run) => ({ findings: markedAgainstExact(run), margins: [] });
