import { checkRows } from '../check-rows.ts';
import { measureRinging } from './measure.ts';

checkRows(measureRinging());
