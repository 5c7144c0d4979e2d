/**
 * Edits of the exposure sheet: a plan in, another plan out, the first one as it was.
 *
 * What refers to an exposure (its tick, its text, a cue, a keyframe at a frame) goes with it. Shots, actions and
 * exposures are counted from 1, exposures within their shot; ranges are exposures of the production. A plan without
 * shots gets those that it stands for. What cannot be done throws `Refused` with what was found and what is allowed.
 */
export { setAxisPosition } from './edits/axis.ts';
export { CUE_KINDS, type NewCue, secondOfKind, setCue } from './edits/cues.ts';
export {
  duplicate,
  insertAfter,
  removeExposures,
  retime,
  setHold,
  setPasses,
  setText,
} from './edits/exposures.ts';
export { type Pasted, pasteRows } from './edits/paste.ts';
export { Refused } from './edits/refused.ts';
export type { ExposureRange } from './edits/shots.ts';
export {
  addAction,
  addShot,
  mergeWithNext,
  moveShot,
  nameShot,
  removeAction,
  removeShot,
  setAction,
  splitAction,
} from './edits/structure.ts';
export { setNote, setRetakes, tick, untick } from './edits/ticks.ts';
