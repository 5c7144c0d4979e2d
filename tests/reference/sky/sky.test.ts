import { checkRows } from '../check-rows.ts';
import { measureSky } from './measure.ts';

checkRows(measureSky());
