/** The sentence of help of a field. In the built page the table has numbers in their place (`src/dev/help-later.ts`). */
import sentences from 'virtual:help';
import type { FieldInfo } from '../../engine/plan/faults.ts';

export function helpOf({ description }: FieldInfo): string | undefined {
  return description?.startsWith('#') ? sentences[Number(description.slice(1))] : description;
}
