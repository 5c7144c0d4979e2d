/** Gear of the tests' own. */
import type { KitItem } from '../../../src/app/kit/entry.ts';
import { KIT_KINDS, type KitKind } from '../../../src/app/kit/kinds.ts';
import { KIT_FORMAT, KIT_VERSION, readKit } from '../../../src/app/kit/kitFile.ts';
import { gearIn } from '../../../src/app/kit/withPlan.ts';
import { testPlan } from '../plan.ts';

/** One piece of gear as the tests' plan has it. */
export const gear = (kind: KitKind, changed: Partial<KitItem> = {}): KitItem => ({
  ...gearIn(testPlan(), kind),
  id: `id of ${kind}`,
  ...changed,
});

/** One piece of each kind. */
export const oneOfEach = (): KitItem[] => KIT_KINDS.map((kind) => gear(kind));

/** Text of a kit file with these entries. */
export const kitText = (items: unknown, changed: object = {}): string =>
  JSON.stringify({ format: KIT_FORMAT, version: KIT_VERSION, items, ...changed });

/** A kit file read, which must be one. */
export function readable(text: string) {
  const read = readKit(text);
  if ('fault' in read) throw new Error(JSON.stringify(read.fault));
  return read.kit;
}

/** A browser's storage, which can be full or refuse. */
export class FakeShelf {
  readonly kept = new Map<string, string>();
  full = false;
  refuses = false;
  #open(): void {
    if (this.refuses) throw new Error('SecurityError');
  }
  getItem(key: string): string | null {
    this.#open();
    return this.kept.get(key) ?? null;
  }
  setItem(key: string, text: string): void {
    this.#open();
    if (this.full) throw new Error('QuotaExceededError');
    this.kept.set(key, text);
  }
  removeItem(key: string): void {
    this.#open();
    this.kept.delete(key);
  }
}
