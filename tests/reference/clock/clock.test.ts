import { checkRows } from '../check-rows.ts';
import { measureClock } from './measure.ts';

checkRows(measureClock());
