/** How long the shutter really is open, and which light the settings are right for, in sentences. */
import { fixedLadder } from '../../engine/exposure/ladder.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { durationText } from '../format/durations.ts';
import { shutterText } from '../format/exposure.ts';
import { numberText, withUnit } from '../format/numbers.ts';
import type { Piece } from '../working/sentence.ts';

const openText = (openS: number): string =>
  openS < 0.3 ? `1/${withUnit(numberText(1 / openS, 1), 's')}` : durationText(openS, 3);

/** Of the plan's settings, its filter among them. */
export function exposureFacts(plan: Plan): Piece[][] {
  const [rung] = fixedLadder(plan).rungs;
  if (!rung) return [];
  const open = { text: openText(rung.openS), of: 'exposure.openS' };
  const value = { text: withUnit(numberText(rung.ev100, 1), 'EV'), of: 'exposure.ev100' };
  return [
    [`${shutterText(plan.exposure.shutterS)} is open for `, open, '.'],
    [
      plan.exposure.filterStops === 0 ? 'Right for a scene of ' : 'With the filter, right for a scene of ',
      value,
      '.',
    ],
  ];
}
