import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { KIT_KINDS, type KitKind } from '../../../src/app/kit/kinds.ts';
import { MAX_KIT_ENTRIES, readKit, writeKit } from '../../../src/app/kit/kitFile.ts';
import { faultSentence } from '../../../src/engine/plan/faults.ts';
import { gear, kitText, oneOfEach, readable } from './gear.ts';

describe('a kit as text', () => {
  test('comes back as it went', () => {
    const items = oneOfEach();
    expect(readable(writeKit({ items, unread: [] }))).toEqual({ items, unread: [] });
  });

  test('has every figure of each kind, and not the lens with the camera', () => {
    const figures = (kind: KitKind) => Object.keys(gear(kind).figures);
    expect(figures('camera')).toContain('writeS');
    expect(figures('camera')).not.toContain('focalLengthMm');
    expect(figures('camera')).not.toContain('name');
    expect(figures('lens')).toEqual(['focalLengthMm']);
    expect(figures('axis')).toEqual(expect.arrayContaining(['kind', 'maxSpeed', 'torqueNm', 'source']));
    expect(figures('arm')).toEqual(
      expect.arrayContaining(['lengthMm', 'keepsLevel', 'armKg', 'ratedKg', 'frequencyHz', 'dampingRatio']),
    );
    expect(figures('source')).toContain('capacityCurve');
    expect(figures('card')).toEqual(['cardBytes', 'reserveShare', 'writeBytesPerS']);
  });

  test('a figure that is not given gets the plan’s default', () => {
    const [card] = readable(kitText([{ id: 'a', kind: 'card', name: 'Old card', figures: {} }])).items;
    expect(card?.figures).toEqual({ cardBytes: 64e9, reserveShare: 0.05, writeBytesPerS: 30e6 });
  });

  test('an axis may name a source that is in no plan', () => {
    const axis = gear('axis', { figures: { ...gear('axis').figures, source: 'Rig pack' } });
    expect(readable(kitText([axis])).items).toEqual([axis]);
  });
});

describe('what is no kit', () => {
  test.each([
    ['nothing', '', ''],
    ['text', 'hello', ''],
    ['half a file', kitText(oneOfEach()).slice(0, 300), ''],
    ['a list', '[]', ''],
    ['null', 'null', ''],
    ['a plan', '{"format":"escapement-plan","version":1}', 'format'],
    ['a version to come', kitText([], { version: 99 }), 'version'],
    ['no list', kitText({ 0: gear('card') }), 'items'],
    ['too many', kitText(Array(MAX_KIT_ENTRIES + 1).fill(0)), 'items'],
  ])('%s is named', (_, text, path) => {
    expect(readKit(text)).toMatchObject({ fault: { path } });
  });
});

describe('a broken or foreign entry', () => {
  const broken: [string, unknown, string][] = [
    ['no group', 7, 'items[1]: found 7'],
    ['nothing', null, 'items[1]: found null'],
    ['a kind that is none', { ...gear('lens'), kind: 'drone' }, 'items[1].kind: found "drone"'],
    ['a kind of all objects', { ...gear('lens'), kind: 'constructor' }, 'items[1].kind: found "constructor"'],
    ['no id', { ...gear('lens'), id: undefined }, 'items[1].id: found nothing'],
    ['an id twice', { ...gear('lens'), id: 'id of card' }, 'items[1].id: found "id of card"'],
    ['no name', { ...gear('lens'), name: '' }, 'items[1].name: found ""'],
    ['a name too long', { ...gear('axis'), name: 'x'.repeat(41) }, 'items[1].name: found'],
    ['a name that is a number', { ...gear('arm'), name: 5 }, 'items[1].name: found 5'],
    ['no figures', { ...gear('lens'), figures: [1] }, 'items[1].figures: found a list of 1'],
    [
      'a word for a figure',
      { ...gear('lens'), figures: { focalLengthMm: 'long' } },
      'items[1].figures.focalLengthMm: found "long"',
    ],
    [
      'out of sense',
      { ...gear('card'), id: 'b', figures: { cardBytes: -1 } },
      'items[1].figures.cardBytes: found -1',
    ],
    [
      'a figure of the lens in a camera',
      { ...gear('camera'), figures: { focalLengthMm: 24 } },
      'items[1].figures.focalLengthMm: found a field that a camera does not have',
    ],
    [
      'a foreign figure',
      { ...gear('axis'), figures: { ...gear('axis').figures, colour: 'red' } },
      'items[1].figures.colour: found a field that an axis does not have',
    ],
    [
      'a foreign field',
      { ...gear('lens'), price: 3 },
      'items[1].price: found a field that the kit does not have',
    ],
    [
      'figures that contradict each other',
      { ...gear('axis'), figures: { ...gear('axis').figures, travelMin: 50, travelMax: 20 } },
      'items[1].figures.travelMax: found 20; allowed: more than travelMin, 50',
    ],
    [
      'a fault deep within',
      { ...gear('source'), figures: { capacityCurve: [{ temperatureC: 900, share: 1 }] } },
      'items[1].figures.capacityCurve[0].temperatureC: found 900',
    ],
    [
      'a source that is none',
      { ...gear('axis'), figures: { source: 7 } },
      'items[1].figures.source: found 7',
    ],
    ['an empty source', { ...gear('axis'), figures: { source: '' } }, 'items[1].figures.source: found ""'],
  ];

  test.each(broken)('%s: named, left out, kept in the text; the others are read', (_, entry, sentence) => {
    const text = kitText([gear('card'), entry, gear('trigger')]);
    const kit = readable(text);
    expect(kit.items).toEqual([gear('card'), gear('trigger')]);
    expect(kit.unread).toHaveLength(1);
    expect(kit.unread[0]?.faults.map(faultSentence).join('\n')).toContain(sentence);
    // Written and read again, nothing of it is gone.
    const again = readable(writeKit(kit));
    expect(JSON.stringify(again.unread[0]?.entry)).toBe(JSON.stringify(JSON.parse(text).items[1]));
  });

  test('reaches for nothing outside its figures', () => {
    const text = `{"format":"escapement-kit","version":1,"items":[
      {"id":"a","kind":"lens","name":"Trap","figures":{"__proto__":{"focalLengthMm":5},"constructor":1}}]}`;
    const kit = readable(text);
    expect(kit.items).toEqual([]);
    expect(kit.unread[0]?.faults.map(({ path }) => path)).toEqual([
      'items[0].figures.__proto__',
      'items[0].figures.constructor',
    ]);
    expect(Object.prototype).not.toHaveProperty('focalLengthMm');
  });

  test('whatever stands in a file, reading it throws nothing and loses nothing', () => {
    const entry = fc.oneof(
      fc.jsonValue({ maxDepth: 3 }),
      fc.record({
        id: fc.string(),
        kind: fc.constantFrom(...KIT_KINDS),
        name: fc.jsonValue({ maxDepth: 0 }),
        figures: fc.dictionary(fc.constantFrom('writeS', 'stepS', 'kind', 'unit', 'source'), fc.jsonValue()),
      }),
    );
    fc.assert(
      fc.property(fc.array(entry, { maxLength: 6 }), (items) => {
        const kit = readable(kitText(items));
        expect(kit.items.length + kit.unread.length).toBe(items.length);
        for (const { faults } of kit.unread) expect(faults.length).toBeGreaterThan(0);
        expect(readable(writeKit({ items: kit.items, unread: [] }))).toEqual({
          items: kit.items,
          unread: [],
        });
      }),
      { numRuns: 200 },
    );
  });
});
