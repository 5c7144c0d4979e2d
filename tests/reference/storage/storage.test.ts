import { checkRows } from '../check-rows.ts';
import { measureStorage } from './measure.ts';

checkRows(measureStorage());
