import { checkRows } from '../check-rows.ts';
import { measurePath } from './measure.ts';

checkRows(measurePath());
