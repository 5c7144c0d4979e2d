/** Values of the plan's fields as they are read, on either side of a comparison. */
import { partsOf } from '../../engine/plan/paths.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { InputDifference } from '../../outputs/compare.ts';
import { wordText } from '../fields/words.ts';
import { fullText } from '../format/allowed.ts';
import { plural } from '../format/numbers.ts';
import { codecOf } from '../format/quantity.ts';
import { infoAt, patternOf } from '../store/infos.ts';

/** A member of a list, or an ease. */
type Group = { readonly [name in 'name' | 'axis' | 'text' | 'kind']?: unknown };

const isGroup = (value: unknown): value is Group =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** `3: Boom, Pan, Slide`; members without a name are counted. */
function listText(list: readonly unknown[]): string {
  const names = list.flatMap((member) => {
    if (typeof member === 'string' || typeof member === 'number') return [String(member)];
    const { name, axis, text } = isGroup(member) ? member : {};
    return [name, axis, text]
      .filter((word): word is string => typeof word === 'string' && word !== '')
      .slice(0, 1);
  });
  if (list.length === 0) return 'none';
  if (names.length < list.length) return plural(list.length, 'entry', 'entries');
  return `${list.length}: ${names.join(', ')}`;
}

/** Unit of the axis that a field belongs to; a track goes by its axis. */
function axisUnitOf({ rig, move }: Plan, path: string): 'mm' | 'deg' {
  const [section, list, place] = partsOf(path);
  const n = Number(place);
  if (section === 'rig' && list === 'axes') return rig.axes[n]?.unit ?? 'mm';
  const name = section === 'move' && list === 'tracks' ? move.tracks[n]?.axis : null;
  return rig.axes.find((axis) => axis.name === name)?.unit ?? 'mm';
}

/** A value at a path as its field would show it. */
export function inputText(plan: Plan, { path, unit }: InputDifference, value: unknown): string {
  if (value === null || value === undefined || value === '') return 'not given';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number')
    return fullText(codecOf(patternOf(path), unit, axisUnitOf(plan, path)), value);
  if (Array.isArray(value)) return listText(value);
  if (isGroup(value)) return typeof value.kind === 'string' ? wordText(value.kind) : 'other figures';
  return infoAt(path).words ? wordText(String(value)) : String(value);
}

/** What a field belongs to: a member of a list, or its section. */
export function ownerText({ of, path }: InputDifference): string {
  const section = String(partsOf(path)[0]);
  return of || section.charAt(0).toUpperCase() + section.slice(1);
}
