import { checkRows } from '../check-rows.ts';
import { measureBalance } from './measure.ts';

checkRows(measureBalance());
