/** Balance: published and hand-worked figures, then random rigs against statics. */
import type { Row } from '../rows.ts';
import { measureAgainstStatics } from './against-statics.ts';
import { measureWorked } from './worked.ts';

export const measureBalance = (): Row[] => [...measureWorked(), ...measureAgainstStatics()];
