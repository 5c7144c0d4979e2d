import { checkRows } from '../check-rows.ts';
import { measureTimecode } from './measure.ts';

checkRows(measureTimecode());
