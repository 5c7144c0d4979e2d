import { checkRows } from '../check-rows.ts';
import { measureExposure } from './measure.ts';

checkRows(measureExposure());
