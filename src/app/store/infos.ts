/** What the table of fields says of the field at a path. */
import { type FieldInfo, fieldInfo } from '../../engine/plan/faults.ts';
import { partsOf } from '../../engine/plan/paths.ts';

const infos = new Map<string, FieldInfo>();

/** Path with every list place written as 0: fields of one list share what is known about them. */
export const patternOf = (path: string): string => path.replace(/\.\d+(?=\.|$)/g, '.0');

/** {@link fieldInfo} of a dotted path, remembered. */
export function infoAt(path: string): FieldInfo {
  const pattern = patternOf(path);
  let info = infos.get(pattern);
  if (!info) {
    info = fieldInfo(partsOf(pattern));
    infos.set(pattern, info);
  }
  return info;
}
