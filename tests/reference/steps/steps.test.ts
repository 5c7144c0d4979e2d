import { checkRows } from '../check-rows.ts';
import { measureSteps } from './measure.ts';

checkRows(measureSteps());
