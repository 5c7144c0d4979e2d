import { checkRows } from '../check-rows.ts';
import { measureLight } from './measure.ts';

checkRows(measureLight());
