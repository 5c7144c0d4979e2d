/** What the plan says of itself: findings and margins. */

/** `stop`: it will fail. `warning`: it may. `note`: worth knowing. */
export type Severity = 'stop' | 'warning' | 'note';

/** Worst first. */
export const SEVERITIES: readonly Severity[] = ['stop', 'warning', 'note'];

/** Section of the form that a finding or a margin belongs to. */
export type Subject =
  | 'clip'
  | 'place'
  | 'camera'
  | 'trigger'
  | 'exposure'
  | 'cycle'
  | 'rig'
  | 'move'
  | 'balance'
  | 'power'
  | 'storage';

/** One thing that is wrong with the plan, or worth knowing. */
export interface Finding {
  /** What kind of thing, e.g. `cycle-overrun`. Stable: it is part of the prompt's output. */
  id: FindingId;
  severity: Severity;
  subject: Subject;
  /** Which of its kind, where there can be several: the axis, the source, the step of the ramp. null if only one. */
  about: string | null;
  /** One sentence with its numbers. */
  message: string;
  /** Frame where it first happens, counted from 1; null if it concerns the whole run. */
  frame: number | null;
  /** Seconds from the first shutter opening to that frame. */
  elapsedS: number | null;
  /** That moment, ISO 8601 with the local offset. */
  at: string | null;
  /** The numbers of the message, by name with unit. */
  values: Readonly<Record<string, number | string>>;
}

/** Every kind of finding. */
export type FindingId =
  | 'no-clip'
  | 'interval-not-settable'
  | 'interval-stretched'
  | 'cycle-overrun'
  | 'camera-not-ready'
  | 'guard-used'
  | 'shutter-marked-exact'
  | 'light-out-of-range'
  | 'shutter-beyond-cycle'
  | 'ramp-step-idle'
  | 'change-does-not-fit'
  | 'interval-grows'
  | 'blur-share'
  | 'ripple'
  | 'keyframe-order'
  | 'travel'
  | 'speed'
  | 'acceleration'
  | 'stair-stepping'
  | 'reversal'
  | 'backlash-taken-up'
  | 'not-settled'
  | 'quiet-move'
  | 'motion-blur'
  | 'panning-fast'
  | 'aim-out-of-limits'
  | 'out-of-balance'
  | 'motor-cannot-hold'
  | 'arm-overloaded'
  | 'support-overloaded'
  | 'tips-over'
  | 'source-short'
  | 'swap-does-not-fit'
  | 'flight-limit'
  | 'card-full'
  | 'card-change-does-not-fit'
  | 'buffer-fills'
  | 'no-start-event'
  | 'no-window'
  | 'outside-window'
  | 'sun-in-frame'
  | 'sun-on-set'
  | 'star-trails'
  | 'clock-skipped'
  | 'clock-repeated'
  | 'clock-change'
  | 'start-past';

/** How far one resource is from running out. */
export interface Margin {
  /** e.g. `interval`, `source:Camera pack`, `card`, `travel:Boom`, `speed:Boom`, `buffer`. */
  id: string;
  subject: Subject;
  /** What it is, e.g. `Interval`, `Camera pack`. */
  label: string;
  /** Used and available, in `unit`. Used may exceed available. */
  used: number;
  available: number;
  unit: string;
  /** Part of the available that you asked to keep, in `unit`. */
  reserve: number;
  /** Available minus used, in `unit`; negative if it is exceeded. */
  left: number;
  /** Frame, counted from 1, where it is tightest. */
  frame: number;
  /** One phrase on when it runs out, e.g. `would be full at frame 596`. */
  when: string;
}

/** What a finding is told from others by, in one plan and in the same plan after a change. */
export const keyOf = ({ id, about }: Pick<Finding, 'id' | 'about'>): string =>
  about === null ? id : `${id}:${about}`;

/** Which of its kind a finding is, by its numbers. */
export function aboutOf({ axis, source, side, setting, step }: Finding['values']): string | null {
  const about = axis ?? source ?? side ?? step ?? setting;
  return about === undefined ? null : String(about);
}
