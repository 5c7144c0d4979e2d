import { checkRows } from '../check-rows.ts';
import { measureSheet } from './measure.ts';

checkRows(measureSheet());
