import { checkRows } from '../check-rows.ts';
import { measureEnergy } from './measure.ts';

checkRows(measureEnergy());
