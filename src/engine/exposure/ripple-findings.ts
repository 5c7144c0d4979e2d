/** What lamps on the mains do to the frames at the shutter times that a run uses. */
import { percent, seconds } from '../findings/words.ts';
import { mainsHzOf, nearestFlickerFree, rippleLeftShare, worstChangeShare } from '../light/lamps.ts';
import type { Plan } from '../plan/schema.ts';
import type { Draft, Run } from '../run.ts';
import { fixedLadder, type Rung } from './ladder.ts';
import { type RampRun, rungsUsed } from './ramp-run.ts';
import { bracketS } from './shutter.ts';

/** A rung and the worst change from frame to frame at one of its exposures. */
interface Rippled {
  rung: Rung;
  openS: number;
  changeShare: number;
}

function rippled(plan: Plan, mainsHz: number, rung: Rung): Rippled {
  const exposures = bracketS(plan, rung.openS).map((openS) => {
    const left = rippleLeftShare(plan.lamps.depthShare, mainsHz, openS);
    return { rung, openS, changeShare: worstChangeShare(left) };
  });
  return exposures.reduce((worst, each) => (each.changeShare > worst.changeShare ? each : worst));
}

const firstFrameAt = (ramp: RampRun | null, { index }: Rung): number =>
  ramp ? ramp.rung.indexOf(index) + 1 : 1;

/** Marks on either side of a shutter time that keep within what the plan allows. */
function better(plan: Plan, { rung }: Rippled): string {
  const marks = nearestFlickerFree(plan, rung.shutterS).map(
    ({ mark, changeShare }) => `${mark} (${percent(changeShare)})`,
  );
  return marks.length > 0 ? ` Nearest that keep within it: ${marks.join(' and ')}.` : '';
}

export function judgeRipple({ plan, ramp }: Run): Draft[] {
  const mainsHz = mainsHzOf(plan);
  if (mainsHz === null) return [];
  const { limitShare } = plan.lamps;
  const rungs = ramp ? rungsUsed(ramp) : fixedLadder(plan).rungs;
  const over = rungs
    .map((rung) => rippled(plan, mainsHz, rung))
    .filter(({ changeShare }) => changeShare > limitShare + 1e-9);
  const [first] = over;
  if (!first) return [];
  const worst = over.reduce((a, b) => (b.changeShare > a.changeShare ? b : a));
  const frame = Math.min(...over.map(({ rung }) => firstFrameAt(ramp, rung)));
  return [
    {
      id: 'ripple',
      severity: 'warning',
      subject: 'exposure',
      message: `Lamps on ${mainsHz}\u00A0Hz: at ${worst.rung.shutterMark}, really ${openText(worst.openS)}, frames differ by up to ${percent(worst.changeShare)}; you allow ${percent(limitShare)}.${better(plan, worst)}`,
      frame,
      values: {
        mainsHz,
        worstChangeShare: worst.changeShare,
        limitShare,
        openS: worst.openS,
        shutterTimes: over.length,
      },
    },
  ];
}

/** A short time as a fraction with its real denominator: 1/50.8. */
const openText = (openS: number): string =>
  openS < 0.3 ? `1/${Number((1 / openS).toPrecision(4))}\u00A0s` : seconds(openS);
