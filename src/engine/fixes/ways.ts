/** The ways out of every finding, and why some have none. */
import type { FindingId } from '../findings/types.ts';
import type { WaysOut } from './types.ts';

const none: WaysOut = () => [];

/** What could be changed about each finding, most natural first; trying it is not done here. */
export const WAYS: Readonly<Record<FindingId, WaysOut>> = {
  'no-clip': none,
  'interval-not-settable': none,
  'interval-stretched': none,
  'cycle-overrun': none,
  'camera-not-ready': none,
  'guard-used': none,
  'shutter-marked-exact': none,
  'light-out-of-range': none,
  'shutter-beyond-cycle': none,
  'ramp-step-idle': none,
  'change-does-not-fit': none,
  'interval-grows': none,
  'blur-share': none,
  ripple: none,
  'keyframe-order': none,
  travel: none,
  speed: none,
  acceleration: none,
  'stair-stepping': none,
  reversal: none,
  'not-settled': none,
  'quiet-move': none,
  'motion-blur': none,
  'panning-fast': none,
  'aim-out-of-limits': none,
  'out-of-balance': none,
  'motor-cannot-hold': none,
  'arm-overloaded': none,
  'support-overloaded': none,
  'tips-over': none,
  'source-short': none,
  'swap-does-not-fit': none,
  'flight-limit': none,
  'card-full': none,
  'card-change-does-not-fit': none,
  'buffer-fills': none,
  'no-start-event': none,
  'no-window': none,
  'outside-window': none,
  'sun-in-frame': none,
  'sun-on-set': none,
  'star-trails': none,
  'clock-skipped': none,
  'clock-repeated': none,
  'clock-change': none,
  'start-past': none,
};

/** Why nothing needs doing, or can be done, about findings that have no way out: one sentence each. */
export const NOTHING_TO_DO: Readonly<Partial<Record<FindingId, string>>> = {};
