import { checkRows } from '../check-rows.ts';
import { measureEase } from './measure.ts';

checkRows(measureEase());
