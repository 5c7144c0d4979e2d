/** What one does with the kit by itself. What is done can be taken back. */
import { faultSentence } from '../../engine/plan/faults.ts';
import { bytesText } from '../format/bytes.ts';
import { plural } from '../format/numbers.ts';
import { handOver } from '../store/files.ts';
import { all, arrivalOf, freeKitName, put, putBack, remove } from './edits.ts';
import { figuresIn, type KitItem, planWith } from './entry.ts';
import { KINDS, type KitKind } from './kinds.ts';
import { type Kit, MAX_KIT_CHARACTERS, readKit, writeKit } from './kitFile.ts';
import { currentKit, editKit, newId } from './kitStore.ts';
import { quoted } from './planActions.ts';
import { openItem, refuse, say } from './ui.ts';

/** New gear with usual figures, open to be filled in. */
export function makeNew(kind: KitKind): void {
  const title = KINDS[kind].title;
  const name = freeKitName(currentKit(), kind, title.charAt(0).toUpperCase() + title.slice(1));
  const item = { id: newId(), kind, name, figures: figuresIn(planWith({ kind, name, figures: {} }), kind) };
  editKit(put(item));
  openItem(item.id);
  say(`${quoted(name)} is in the kit, with usual figures to start from.`, () => editKit(remove(item.id)));
}

export function duplicate(item: KitItem): void {
  const copy = { ...item, id: newId(), name: freeKitName(currentKit(), item.kind, item.name) };
  const place = currentKit().items.findIndex(({ id }) => id === item.id) + 1;
  editKit(putBack(copy, place));
  openItem(copy.id);
  say(`${quoted(copy.name)} is a copy of ${quoted(item.name)}.`, () => editKit(remove(copy.id)));
}

export function deleteItem(item: KitItem): void {
  const place = currentKit().items.findIndex(({ id }) => id === item.id);
  editKit(remove(item.id));
  say(`${quoted(item.name)} is no longer in the kit.`, () => editKit(putBack(item, place)));
}

/** Hands the kit over as a file, with what could not be read of it. */
export const saveKit = (): void => handOver('escapement-kit.json', writeKit(currentKit()));

const countText = (added: number, known: number, leftOut: number): string =>
  [
    `${plural(added, 'piece')} of gear added`,
    known > 0 && `${known} here already`,
    leftOut > 0 && `${leftOut} left out`,
  ]
    .filter(Boolean)
    .join(', ');

function addAll(fileName: string, { items, unread }: Kit): void {
  const { added, known, renamed } = arrivalOf(currentKit(), items, newId);
  const takeBack = () => editKit(remove(...added.map(({ id }) => id)));
  editKit(all(...added.map(put)));
  const lines = [
    ...renamed.map(({ from, to }) => `${quoted(from)} was taken: it stands beside yours as ${quoted(to)}.`),
    ...unread.flatMap(({ faults }) => faults.map(faultSentence)),
  ];
  const text = `${fileName}: ${countText(added.length, known, unread.length)}.`;
  say(text, added.length > 0 ? takeBack : null, lines);
}

/** Brings in a kit file: what is new is added, nothing that is here is touched. */
export async function addFromFile(file: File): Promise<void> {
  const unread = `${file.name} was not read. Nothing was changed.`;
  if (file.size > 4 * MAX_KIT_CHARACTERS) {
    refuse(unread, [`found ${bytesText(file.size)}; allowed: at most ${bytesText(4 * MAX_KIT_CHARACTERS)}`]);
    return;
  }
  const read = readKit(await file.text());
  if ('fault' in read) refuse(unread, [faultSentence(read.fault)]);
  else addAll(file.name, read.kit);
}
