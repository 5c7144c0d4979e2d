/** One line about a piece of gear. */

import type { Plan } from '../../engine/plan/schema.ts';
import { exposureBytes } from '../../engine/storage/storage.ts';
import { wordText } from '../fields/words.ts';
import { bytesText } from '../format/bytes.ts';
import { durationText } from '../format/durations.ts';
import { numberText, withUnit } from '../format/numbers.ts';
import { axisUnitText, facts } from '../sections/summary.ts';
import { type KitItem, planWith } from './entry.ts';
import type { KitKind } from './kinds.ts';

const LINES: Readonly<Record<KitKind, (plan: Plan) => string>> = {
  camera: (plan) =>
    facts(
      `${bytesText(exposureBytes(plan))} a frame`,
      `write ${durationText(plan.camera.writeS)}`,
      `lag ${durationText(plan.camera.shutterLagS)}`,
    ),
  lens: ({ camera }) => withUnit(numberText(camera.focalLengthMm), 'mm'),
  trigger: ({ trigger: { minS, maxS, stepS, counts } }) =>
    facts(
      `${durationText(minS)} to ${durationText(maxS)} in steps of ${durationText(stepS)}`,
      wordText(counts).toLowerCase(),
    ),
  axis: ({ rig: { axes } }) =>
    facts(
      ...axes.map(({ kind, unit, travelMin, travelMax }) =>
        facts(
          wordText(kind),
          `${numberText(travelMin, 2)} to ${withUnit(numberText(travelMax, 2), axisUnitText(unit))}`,
        ),
      ),
    ),
  arm: ({ rig: { arm }, balance: { ratedKg }, ringing: { frequencyHz } }) =>
    facts(
      withUnit(numberText(arm.lengthMm), 'mm'),
      ratedKg !== null && `carries ${withUnit(numberText(ratedKg, 2), 'kg')}`,
      `rings at ${withUnit(numberText(frequencyHz, 2), 'Hz')}`,
    ),
  source: ({ power: { sources } }) =>
    facts(
      ...sources.map(({ kind, count, energyWh, voltageV, capacityMah }) =>
        kind === 'mains'
          ? 'mains'
          : `${count} × ${withUnit(numberText(energyWh ?? (voltageV * capacityMah) / 1000, 1), 'Wh')}`,
      ),
    ),
  card: ({ storage: { cards } }) =>
    facts(
      ...cards.map(
        ({ cardBytes, writeBytesPerS }) => `${bytesText(cardBytes)}, writes ${bytesText(writeBytesPerS)}/s`,
      ),
    ),
};

/** What it is, at a glance. */
export const itemText = (item: KitItem): string => LINES[item.kind](planWith(item));

/** Whether its name or its line has all the words that are looked for. */
export function isFound(item: KitItem, query: string): boolean {
  const text = `${item.name} ${item.kind} ${itemText(item)}`.toLowerCase().replaceAll('\u00a0', ' ');
  return query
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
