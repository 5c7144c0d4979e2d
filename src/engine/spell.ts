/** Frames that are alike in all that the camera does. */

/**
 * Frames one after another with the same settings, and so with the same interval.
 *
 * A long run has a few thousand spells at most where it has a million frames: what follows from the settings is worked
 * out once a spell, and filled in.
 */
export interface Spell {
  /** Index of its first frame, and the one after its last. */
  begin: number;
  end: number;
  /** Settings in use, counted from 0; 0 if the light is not planned. */
  rung: number;
  /** Seconds from each of its frames to the next. */
  intervalS: number;
}
