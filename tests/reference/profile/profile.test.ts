import { checkRows } from '../check-rows.ts';
import { measureProfile } from './measure.ts';

checkRows(measureProfile());
