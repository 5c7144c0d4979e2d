/** The ways out of every finding, and why some have none. */
import { balanceWays } from '../balance/fixes.ts';
import { cycleWays } from '../cycle/fixes.ts';
import { energyWays } from '../energy/fixes.ts';
import { exposureWays } from '../exposure/fixes.ts';
import type { FindingId } from '../findings/types.ts';
import { motionWays } from '../motion/fixes.ts';
import { pacingWays } from '../pacing/fixes.ts';
import { pathWays } from '../path/fixes.ts';
import { ringingWays } from '../ringing/fixes.ts';
import { skyWays } from '../sky/fixes.ts';
import { storageWays } from '../storage/fixes.ts';
import { timeWays } from '../time/fixes.ts';
import type { WaysOut } from './types.ts';

/** What could be changed about each finding, most natural first; trying it is not done here. */
export const WAYS: Readonly<Record<FindingId, WaysOut>> = {
  ...pacingWays,
  ...cycleWays,
  ...exposureWays,
  ...motionWays,
  ...pathWays,
  ...ringingWays,
  ...balanceWays,
  ...energyWays,
  ...storageWays,
  ...skyWays,
  ...timeWays,
};

/** Why nothing needs doing, or can be done, about findings that have no way out: one sentence each. */
export const NOTHING_TO_DO: Readonly<Partial<Record<FindingId, string>>> = {
  'interval-grows':
    'A trigger that counts from closing to opening waits for the shutter: work out the interval, and this is counted in.',
  'shutter-marked-exact': 'The time that the shutter is really open is counted in: nothing needs doing.',
  'backlash-taken-up': 'Backlash goes with every turn; the time to take it up is counted in.',
  'aim-out-of-limits':
    'The subject lies where the head does not reach: move the rig or the subject, or mount the head turned.',
  'no-window': 'Without latitude and longitude there is no sun to ask for: put in the place.',
  'flight-limit': 'What a pack is rated is printed on it: smaller packs, or the carrier’s leave.',
  'clock-repeated': 'Say at the start which of the two hours is meant; the interval goes on all the same.',
  'clock-change': 'Nothing needs doing: only the clock jumps, the interval goes on.',
};
