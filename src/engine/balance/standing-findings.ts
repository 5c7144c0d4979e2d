/** What the support says: does it bear the load, and does it stand. */
import type { Margin } from '../findings/types.ts';
import { figure, withUnit } from '../findings/words.ts';
import { firstOver } from '../leap.ts';
import type { Draft, Run } from '../run.ts';
import { type BalanceRun, massesOf } from './balance.ts';
import { carriersOf } from './carried.ts';
import { exceeds } from './limits.ts';
import { distancesOf } from './tip.ts';

/** Share of the radius that should be left before the rig tips over. Common practice, no source. */
const TIP_RESERVE = 1 / 5;

function supportOverloaded({ support }: BalanceRun): Draft[] {
  const { loadKg, ratedKg } = support;
  if (ratedKg === null || !exceeds(loadKg, ratedKg)) return [];
  return [
    {
      id: 'support-overloaded',
      severity: 'stop',
      subject: 'balance',
      message: `The support bears ${withUnit(loadKg, 'kg')} and carries ${withUnit(ratedKg, 'kg')}.`,
      frame: null,
      values: { loadKg, ratedKg },
    },
  ];
}

function tipsOver(run: Run, { arm, tip }: BalanceRun): Draft[] {
  const { safeMm, farthestMm, marginMm, leanDeg, totalKg } = tip;
  const reserveMm = safeMm * TIP_RESERVE;
  if (!exceeds(farthestMm, safeMm - reserveMm)) return [];
  const fails = marginMm < 0;
  const carriers = carriersOf(run.plan, run.columns.axes);
  const masses = massesOf(run.plan, arm);
  const limitMm = fails ? safeMm : safeMm - reserveMm;
  const frame = firstOver(run.pace.frames, limitMm, distancesOf(carriers, masses), tip.frame);
  // What hangs from the middle draws the centre of mass towards it: enough that the fifth is left, to a tenth of a kg.
  const moreKg = Math.ceil(10 * totalKg * (farthestMm / (safeMm - reserveMm) - 1)) / 10;
  const what = fails
    ? `The rig tips over: its centre of mass gets ${withUnit(farthestMm, 'mm')} from the middle of the feet, whose edges are ${withUnit(safeMm, 'mm')} away`
    : `The rig is ${withUnit(marginMm, 'mm')} from tipping over: on ground that leans by ${figure(leanDeg)}° it does`;
  return [
    {
      id: 'tips-over',
      severity: fails ? 'stop' : 'warning',
      subject: 'balance',
      message: `${what}, from frame ${frame}. ${withUnit(moreKg, 'kg')} more hung from its middle, or feet farther apart, leave a fifth of that in hand.`,
      frame,
      values: { farthestMm, safeMm, marginMm, leanDeg, moreKg, worstFrame: tip.frame },
    },
  ];
}

export const standingFindings = (run: Run, balance: BalanceRun): Draft[] => [
  ...supportOverloaded(balance),
  ...tipsOver(run, balance),
];

function tipMargin({ tip }: BalanceRun): Margin {
  return {
    id: 'tip',
    subject: 'balance',
    label: 'Footing',
    used: tip.farthestMm,
    available: tip.safeMm,
    unit: 'mm',
    reserve: tip.safeMm * TIP_RESERVE,
    left: tip.marginMm,
    frame: tip.frame,
    when: `nearest to tipping over at frame ${tip.frame}`,
  };
}

function supportMargin({ pace }: Run, { support }: BalanceRun): Margin[] {
  const { loadKg, ratedKg } = support;
  if (ratedKg === null) return [];
  return [
    {
      id: 'support',
      subject: 'balance',
      label: 'Support',
      used: loadKg,
      available: ratedKg,
      unit: 'kg',
      reserve: 0,
      left: ratedKg - loadKg,
      frame: pace.frames,
      when: 'the whole run',
    },
  ];
}

export const standingMargins = (run: Run, balance: BalanceRun): Margin[] => [
  ...supportMargin(run, balance),
  tipMargin(balance),
];
