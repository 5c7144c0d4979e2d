/** A photograph that was taken to try the settings, and what it offers to the plan. */
import type { Position } from '../place/position.ts';

/** What a photograph says of itself; null for what it does not say. */
export interface TestFrame {
  fileName: string;
  fileBytes: number;
  shutterS: number | null;
  apertureF: number | null;
  iso: number | null;
  focalLengthMm: number | null;
  widthPx: number | null;
  heightPx: number | null;
  /** The camera's own clock: `2026-08-08`, `19:40:05`, and `+02:00` if it says how far it is from UTC. */
  taken: { date: string; time: string; offset: string | null } | null;
  position: Position | null;
}
