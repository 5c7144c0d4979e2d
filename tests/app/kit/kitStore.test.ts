import { describe, expect, test } from 'vitest';
import {
  all,
  arrivalOf,
  dropUnread,
  freeKitName,
  keptAs,
  nameAmong,
  put,
  putBack,
  remove,
} from '../../../src/app/kit/edits.ts';
import { KIT_FORMAT, writeKit } from '../../../src/app/kit/kitFile.ts';
import { createKitStore } from '../../../src/app/kit/kitStore.ts';
import { FakeShelf, gear, kitText, oneOfEach, readable } from './gear.ts';

const nothing = { items: [], unread: [] };
const lens = (id: string, focalLengthMm = 24) =>
  gear('lens', { id, name: `Lens ${id}`, figures: { focalLengthMm } });

function open(shelf: FakeShelf) {
  const kit = createKitStore(shelf);
  kit.look();
  return {
    ...kit,
    state: () => kit.store.getState(),
    ids: () => kit.store.getState().kit.items.map(({ id }) => id),
  };
}

describe('edits', () => {
  test('put replaces by id, in place; made twice it changes nothing more', () => {
    const kit = all(put(lens('a')), put(lens('b')), put(lens('a', 50)), put(lens('a', 50)))(nothing);
    expect(kit.items).toEqual([lens('a', 50), lens('b')]);
  });

  test('what was removed comes back to its place', () => {
    const kit = { items: [lens('a'), lens('b'), lens('c')], unread: [] };
    const without = remove('b')(kit);
    expect(without.items.map(({ id }) => id)).toEqual(['a', 'c']);
    expect(putBack(lens('b'), 1)(without)).toEqual(kit);
    expect(putBack(lens('b'), 1)(kit)).toBe(kit);
  });

  test('names stay free and within their length', () => {
    const kit = all(put({ ...lens('a'), name: 'Wide' }), put({ ...lens('b'), name: 'Wide 2' }))(nothing);
    expect(freeKitName(kit, 'lens', 'Wide')).toBe('Wide 3');
    expect(freeKitName(kit, 'lens', 'Wide 2')).toBe('Wide 3');
    expect(freeKitName(kit, 'camera', 'Wide')).toBe('Wide');
    const long = 'x'.repeat(40);
    expect(nameAmong(long, [])).toBe(long);
    expect(nameAmong(long, [{ name: long }]).length).toBeLessThanOrEqual(40);
  });

  test('gear beside one of its name is known by its number; two packs alike are two', () => {
    const kit = {
      items: [
        { ...lens('a'), name: 'Wide' },
        { ...lens('b', 50), name: 'Wide 2' },
      ],
      unread: [],
    };
    expect(keptAs(kit, { ...lens('c', 50), name: 'Wide' })?.id).toBe('b');
    expect(keptAs(kit, { ...lens('c', 50), name: 'Wide angle' })).toBeUndefined();
    expect(keptAs(kit, { ...lens('c', 24), name: 'Wide 2' })).toBeUndefined();
    const pack = { items: [{ ...lens('a'), name: 'Pack 2' }], unread: [] };
    expect(keptAs(pack, { ...lens('b'), name: 'Pack' })).toBeUndefined();
  });

  test('an entry that could not be read goes only when it is told to', () => {
    const kit = readable(kitText([gear('card'), 7, { odd: true }]));
    const [first] = kit.unread;
    if (!first) throw new Error('both entries were read');
    expect(dropUnread(first)(put(lens('a'))(kit)).unread.map(({ entry }) => entry)).toEqual([{ odd: true }]);
  });
});

describe('a kit file brought in', () => {
  const newId = () => 'new';

  test('adds what is new, knows what is there, and touches nothing', () => {
    const kit = { items: oneOfEach(), unread: [] };
    expect(arrivalOf(kit, [...oneOfEach(), lens('b')], newId)).toEqual({
      added: [lens('b')],
      known: 7,
      renamed: [],
    });
  });

  test('the same gear kept on two machines is known, whatever its id', () => {
    expect(arrivalOf({ items: [lens('a')], unread: [] }, [{ ...lens('a'), id: 'z' }], newId).known).toBe(1);
  });

  test('other figures under a name or an id that is taken stand beside, under new ones', () => {
    const other = { ...lens('a'), figures: { focalLengthMm: 35 } };
    const { added, renamed } = arrivalOf({ items: [lens('a')], unread: [] }, [other, other], newId);
    expect(added).toEqual([{ ...other, id: 'new', name: 'Lens a 2' }]);
    expect(renamed).toEqual([{ from: 'Lens a', to: 'Lens a 2' }]);
  });
});

describe('the kit in the browser', () => {
  test('is there again', () => {
    const shelf = new FakeShelf();
    open(shelf).edit(put(lens('a')));
    expect(open(shelf).ids()).toEqual(['a']);
    expect(shelf.kept.get(KIT_FORMAT)).toBe(writeKit({ items: [lens('a')], unread: [] }));
  });

  test('two tabs add up, though neither has looked', () => {
    const shelf = new FakeShelf();
    open(shelf).edit(put(lens('a')));
    const [first, second] = [open(shelf), open(shelf)];
    first.edit(put(lens('b')));
    second.edit(put(lens('c')));
    first.edit(put(lens('a', 50)));
    expect(first.ids()).toEqual(['a', 'b', 'c']);
    second.edit(remove('b'));
    expect(readable(shelf.kept.get(KIT_FORMAT) ?? '').items).toEqual([lens('a', 50), lens('c')]);
    first.look();
    expect(first.ids()).toEqual(['a', 'c']);
  });

  test('a full browser is said; what did not fit is written once there is room, with what others wrote', () => {
    const shelf = new FakeShelf();
    const tab = open(shelf);
    tab.edit(put(lens('a')));
    shelf.full = true;
    tab.edit(put(lens('b')));
    tab.edit(remove('a'));
    expect(tab.state().saving).toBe('refused');
    expect(tab.ids()).toEqual(['b']);
    shelf.full = false;
    open(shelf).edit(put(lens('c')));
    tab.look();
    expect(tab.state().saving).toBe('kept');
    expect(readable(shelf.kept.get(KIT_FORMAT) ?? '').items.map(({ id }) => id)).toEqual(['c', 'b']);
  });

  test('a browser that stores nothing keeps the kit as long as the tab', () => {
    const shelf = new FakeShelf();
    shelf.refuses = true;
    const tab = open(shelf);
    expect(tab.state().saving).toBe('refused');
    tab.edit(put(lens('a')));
    expect(tab.ids()).toEqual(['a']);
    expect(tab.state().saving).toBe('refused');
    tab.startAfresh();
    expect(tab.ids()).toEqual(['a']);
  });

  test.each([
    ['no JSON', 'hello'],
    ['a version to come', kitText([lens('z')], { version: 99 })],
  ])('%s in its place is left alone until one is asked', (_, text) => {
    const shelf = new FakeShelf();
    shelf.kept.set(KIT_FORMAT, text);
    const tab = open(shelf);
    tab.edit(put(lens('a')));
    expect(tab.state()).toMatchObject({ saving: 'blocked', blocked: { text } });
    expect(tab.ids()).toEqual(['a']);
    expect(shelf.kept.get(KIT_FORMAT)).toBe(text);
    tab.startAfresh();
    expect(tab.state()).toMatchObject({ saving: 'kept', blocked: null });
    expect(open(shelf).ids()).toEqual(['a']);
  });

  test('an entry that could not be read stays through every change', () => {
    const shelf = new FakeShelf();
    shelf.kept.set(KIT_FORMAT, kitText([lens('a'), { from: 'elsewhere' }]));
    const tab = open(shelf);
    tab.edit(remove('a'));
    expect(readable(shelf.kept.get(KIT_FORMAT) ?? '').unread.map(({ entry }) => entry)).toEqual([
      { from: 'elsewhere' },
    ]);
  });

  test('cleared by hand, it is empty, and takes new gear', () => {
    const shelf = new FakeShelf();
    const tab = open(shelf);
    tab.edit(put(lens('a')));
    shelf.kept.clear();
    tab.look();
    expect(tab.ids()).toEqual([]);
    tab.edit(put(lens('b')));
    expect(open(shelf).ids()).toEqual(['b']);
  });
});
