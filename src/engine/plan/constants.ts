/** Plain words and bounds of the plan, for those who need them without the table of fields. */
import { MOON_EVENTS, SUN_EVENTS } from '../sky/names.ts';

/** The word that marks a plan file. */
export const PLAN_FORMAT = 'escapement-plan';

/** The version this program writes. */
export const PLAN_VERSION = 1;

/** Longest run that is worked out. A million frames at 25 fps is more than eleven hours of clip. */
export const MAX_FRAMES = 1_000_000;

/** Farthest position of an axis, in its unit, and farthest place on the set, mm. */
export const FARTHEST = 1_000_000;

/** Most keyframes of a track, most holds of an action, longest name. */
export const MAX_KEYFRAMES = 1000;
export const MAX_HOLDS = 100_000;
export const MAX_NAME = 40;

/** Longest run that is worked out, in seconds: ten years of 365 days. */
export const MAX_RUN_S = 3650 * 86_400;

/** What is shot: a run against the clock, or one exposure after another by hand. */
export const TECHNIQUES = ['timeLapse', 'stopMotion'] as const;

/** What in the sky a start can go by. */
export const START_EVENTS = [...SUN_EVENTS, ...MOON_EVENTS] as const;

/** Days of the week, Monday first, as ISO 8601 counts them. */
export const WEEKDAYS = [
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
] as const;
