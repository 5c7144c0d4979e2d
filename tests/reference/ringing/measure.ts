/** Ringing: handbook values, then an oscillator integrated step by step, then the picture it moves. */
import type { Row } from '../rows.ts';
import { measureAgainstIntegration } from './against-integration.ts';
import { measureHandbook } from './handbook.ts';
import { measurePicture } from './picture.ts';
import { measureWholeRuns } from './whole-run.ts';

export const measureRinging = (): Row[] => [
  ...measureHandbook(),
  ...measureAgainstIntegration(),
  ...measurePicture(),
  ...measureWholeRuns(),
];
