/**
 * Broken plan files: one valid file, broken in one place in a way that is known.
 *
 * Every breakage says where it struck, so that a test can ask whether the faults name that place.
 */

/** A repeatable source of random numbers: a 32-bit counter put through an integer mixing. */
export class Dice {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** In [0, 1). */
  share(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let t = this.#state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  }

  below(count: number): number {
    return Math.floor(this.share() * count);
  }

  pick<T>(list: readonly T[]): T {
    return list[this.below(list.length)] as T;
  }
}

/** A broken text and where it was broken. */
export interface Broken {
  text: string;
  /** What was done, for the message of a failing test. */
  how: string;
  /** Paths of which one must be named by a fault; none if only the text as a whole was broken. */
  where: string[];
  /** Whether it is sure that no plan can be read from it. */
  sure: boolean;
}

type Part = string | number;
type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

export const pathText = (path: readonly Part[]): string =>
  path.reduce<string>(
    (text, part) => (typeof part === 'number' ? `${text}[${part}]` : text === '' ? part : `${text}.${part}`),
    '',
  );

/** Every place of a value, the value itself left out. */
function placesOf(value: Json, path: Part[] = []): { path: Part[]; value: Json }[] {
  if (value === null || typeof value !== 'object') return [];
  const entries: [Part, Json][] = Array.isArray(value)
    ? value.map((item, i) => [i, item])
    : Object.entries(value);
  return entries.flatMap(([part, member]) => [
    { path: [...path, part], value: member },
    ...placesOf(member, [...path, part]),
  ]);
}

function at(root: Json, path: readonly Part[]): Json {
  let value: Json = root;
  for (const part of path) value = (value as Record<Part, Json>)[part] as Json;
  return value;
}

/** Sets a member; `__proto__` too becomes an ordinary member. */
function put(root: Json, path: readonly Part[], value: Json): void {
  const parent = at(root, path.slice(0, -1)) as object;
  Object.defineProperty(parent, path.at(-1) as Part, {
    value,
    enumerable: true,
    configurable: true,
    writable: true,
  });
}

const written = (value: Json): string => JSON.stringify(value, null, 2);

/** Placeholder that is put in as bare text afterwards, since JSON cannot write the value. */
const BARE = '@@bare@@';

/** Values that no field of the kind may have. Bare ones are written into the text as they are. */
function wrongFor(value: Json, dice: Dice): { value: Json; bare?: string } {
  const numbers = [1e300, -1e300, 1e16, -1e16];
  const texts = ['', 'NaN', '12', 'no such word', '\ud83d', 'x'.repeat(30_001)];
  if (typeof value === 'number') {
    const bare = dice.pick([undefined, '1e999', '-1e999', undefined, undefined]);
    if (bare) return { value: BARE, bare };
    return { value: dice.pick<Json>([...numbers, ...texts, true, [], [1], {}, { value: 1 }]) };
  }
  if (typeof value === 'string')
    return { value: dice.pick<Json>([...numbers, 0, false, [], [value], {}, 'x'.repeat(30_001)]) };
  if (typeof value === 'boolean') return { value: dice.pick<Json>([0, 1, 'true', null, [], {}]) };
  if (value === null) return { value: dice.pick<Json>([...numbers, false, [], {}, 'x'.repeat(30_001)]) };
  if (Array.isArray(value)) {
    return {
      value: dice.pick<Json>([
        null,
        0,
        'list',
        {},
        { length: 1 },
        Array.from({ length: 2000 }, () => 0),
        [[]],
      ]),
    };
  }
  return { value: dice.pick<Json>([null, 0, '', 'group', [], [value], true]) };
}

const KNOWN_GOOD_KINDS = new Set(['title', 'notes']);

/** Lists that may be left to what is said elsewhere. */
const MAY_BE_NULL = /\.(actions|details)\[\d+\]\.passes$/;

/** One field, or group, or list, gets a value of a wrong type or far out of range. */
function wrongValue(root: Json, dice: Dice): Broken {
  const { path, value } = dice.pick(
    placesOf(root).filter((place) => !KNOWN_GOOD_KINDS.has(String(place.path[0]))),
  );
  const drawn = wrongFor(value, dice);
  const wrong = drawn.value === null && MAY_BE_NULL.test(pathText(path)) ? { value: 0 } : drawn;
  put(root, path, wrong.value);
  const text = wrong.bare ? written(root).replace(`"${BARE}"`, wrong.bare) : written(root);
  return {
    text,
    how: `wrong value ${String(text).length > 0 ? JSON.stringify(wrong.bare ?? wrong.value).slice(0, 40) : ''}`,
    where: [pathText(path)],
    sure: true,
  };
}

/** Just outside the range, zero, negative: may be allowed for some fields. */
function oddNumber(root: Json, dice: Dice): Broken {
  const { path, value } = dice.pick(placesOf(root).filter((place) => typeof place.value === 'number'));
  const odd = dice.pick([
    0,
    -1,
    -0.001,
    0.5,
    -(value as number),
    (value as number) * 1e6,
    (value as number) + 0.5,
    1e-300,
    2 ** 53,
  ]);
  put(root, path, odd);
  return { text: written(root), how: `odd number ${odd}`, where: [], sure: false };
}

const KEYS = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  'Title',
  'name ',
  '',
  '0',
  'toJSON',
  '\ud800',
  'intervall',
];

/** A member that plans do not have. */
function unknownKey(root: Json, dice: Dice): Broken {
  const groups = placesOf(root).filter(
    ({ value }) => value !== null && typeof value === 'object' && !Array.isArray(value),
  );
  const path = dice.pick([[], ...groups.map((group) => group.path)] as Part[][]);
  const key = dice.pick(KEYS);
  put(root, [...path, key], dice.pick<Json>([{ polluted: true }, 1, null, 'x', ['polluted']]));
  return {
    text: written(root),
    how: `unknown key ${JSON.stringify(key)}`,
    where: [pathText([...path, key]), pathText(path)],
    sure: true,
  };
}

/** A member goes missing: a fault for some, a default for others. */
function missingKey(root: Json, dice: Dice): Broken {
  const { path } = dice.pick(placesOf(root));
  const parent = at(root, path.slice(0, -1));
  if (Array.isArray(parent)) parent.splice(path.at(-1) as number, 1);
  else delete (parent as Record<Part, Json>)[path.at(-1) as Part];
  return { text: written(root), how: `missing ${pathText(path)}`, where: [], sure: false };
}

function wrongHead(root: Json, dice: Dice): Broken {
  const field = dice.pick(['format', 'version']);
  const value = dice.pick<Json>([
    0,
    2,
    -1,
    1.5,
    1e300,
    '1',
    '',
    null,
    [],
    {},
    'escapement',
    'escapement-plan ',
    true,
  ]);
  put(root, [field], value);
  return { text: written(root), how: `${field} ${JSON.stringify(value)}`, where: [field], sure: true };
}

/** Faults that only show between fields: what to set, and the paths that may be named. */
const CROSSED: readonly { set: readonly [Part[], Json][]; where: string[] }[] = [
  { set: [[['rig', 'axes', 1, 'name'], 'Boom']], where: ['rig.axes[1].name'] },
  { set: [[['power', 'sources', 1, 'name'], 'Camera pack']], where: ['power.sources[1].name'] },
  { set: [[['power', 'loads', 1, 'name'], 'Body']], where: ['power.loads[1].name'] },
  { set: [[['storage', 'cards', 1, 'name'], 'Red']], where: ['storage.cards[1].name'] },
  { set: [[['power', 'loads', 0, 'source'], 'Nobody']], where: ['power.loads[0].source'] },
  { set: [[['power', 'loads', 0, 'source'], '__proto__']], where: ['power.loads[0].source'] },
  { set: [[['rig', 'axes', 0, 'source'], 'constructor']], where: ['rig.axes[0].source'] },
  { set: [[['move', 'tracks', 0, 'axis'], 'toString']], where: ['move.tracks[0].axis'] },
  { set: [[['move', 'tracks', 1, 'axis'], 'Boom']], where: ['move.tracks[1].axis'] },
  { set: [[['rig', 'axes'], []]], where: ['move.tracks[0].axis', 'move.tracks[1].axis'] },
  {
    set: [[['rig', 'axes', 0, 'travelMax'], -40]],
    where: ['rig.axes[0].travelMax', 'rig.axes[0].travelMin'],
  },
  { set: [[['rig', 'axes', 0, 'travelMin'], 65]], where: ['rig.axes[0].travelMax', 'rig.axes[0].travelMin'] },
  { set: [[['trigger', 'minS'], 3600]], where: ['trigger.minS', 'trigger.maxS'] },
  { set: [[['trigger', 'maxS'], 0.4]], where: ['trigger.minS', 'trigger.maxS'] },
  {
    set: [[['move', 'tracks', 0, 'keyframes', 1, 'share'], 0.7]],
    where: ['move.tracks[0].keyframes[2].share'],
  },
  {
    set: [[['move', 'tracks', 0, 'keyframes', 2, 'share'], 0.2]],
    where: ['move.tracks[0].keyframes[2].share'],
  },
  {
    set: [[['move', 'tracks', 0, 'keyframes', 2, 'ease', 'headShare'], 0.71]],
    where: ['move.tracks[0].keyframes[2].ease.tailShare'],
  },
  { set: [[['rig', 'axes', 0, 'unitsPerTurn'], 0.0001]], where: ['rig.axes[0].microsteps'] },
  { set: [[['rig', 'axes', 1, 'gearRatio'], 100_000]], where: ['rig.axes[1].microsteps'] },
  { set: [[['start', 'date'], '2026-02-30']], where: ['start.date'] },
  { set: [[['start', 'date'], '2026-13-01']], where: ['start.date'] },
  { set: [[['start', 'date'], '0000-00-00']], where: ['start.date'] },
  { set: [[['start', 'date'], '26-1-1']], where: ['start.date'] },
  { set: [[['start', 'time'], '24:00']], where: ['start.time'] },
  { set: [[['start', 'time'], '1:00']], where: ['start.time'] },
  { set: [[['place', 'zone'], 'Mars/Olympus']], where: ['place.zone'] },
  { set: [[['place', 'zone'], '\udc00']], where: ['place.zone'] },
  { set: [[['clip', 'frameRate'], '24000/0']], where: ['clip.frameRate'] },
  { set: [[['clip', 'frameRate'], '29.97']], where: ['clip.frameRate'] },
  { set: [[['clip', 'frameRate'], '-25']], where: ['clip.frameRate'] },
  { set: [[['clip', 'frameRate'], '0']], where: ['clip.frameRate'] },
  { set: [[['clip', 'frameRate'], '999999']], where: ['clip.frameRate', 'pacing.clipLengthS'] },
  { set: [[['pacing', 'clipLengthS'], 86_400]], where: ['pacing.clipLengthS'] },
  {
    set: [
      [['pacing', 'workedOut'], 'clip'],
      [['pacing', 'intervalS'], 0.01],
      [['trigger', 'counts'], 'startToStart'],
      [['pacing', 'eventS'], 31_622_400],
    ],
    where: ['pacing.intervalS', 'pacing.eventS'],
  },
  {
    set: [
      [['pacing', 'workedOut'], 'event'],
      [['pacing', 'intervalS'], 2_678_400],
      [['trigger', 'counts'], 'startToStart'],
    ],
    where: ['pacing.intervalS'],
  },
  {
    set: [[['move', 'tracks', 0, 'keyframes', 0, 'ease'], { kind: 'elastic' }]],
    where: ['move.tracks[0].keyframes[0].ease.kind', 'move.tracks[0].keyframes[0].ease'],
  },
  {
    set: [[['move', 'tracks', 0, 'keyframes', 0, 'ease'], { kind: 'cubicBezier' }]],
    where: ['x1', 'y1', 'x2', 'y2'].map((name) => `move.tracks[0].keyframes[0].ease.${name}`),
  },
  {
    set: [[['move', 'tracks', 0, 'keyframes', 0, 'ease'], { kind: 'linear', x1: 0 }]],
    where: ['move.tracks[0].keyframes[0].ease.x1'],
  },
  { set: [[['move', 'tracks', 0, 'keyframes'], []]], where: ['move.tracks[0].keyframes'] },
  { set: [[['storage', 'cards'], []]], where: ['storage.cards'] },
  { set: [[['power', 'sources', 0, 'capacityCurve'], []]], where: ['power.sources[0].capacityCurve'] },
];

function crossed(root: Json, dice: Dice): Broken {
  const { set, where } = dice.pick(CROSSED);
  for (const [path, value] of set) put(root, path, value);
  return {
    text: written(root),
    how: set.map(([path, value]) => `${pathText(path)} = ${JSON.stringify(value)}`).join(', '),
    where,
    sure: true,
  };
}

/** Long and deep things in the place of a member. */
function oversized(root: Json, dice: Dice): Broken {
  const list = dice.pick<[Part[], number]>([
    [['rig', 'axes'], 13],
    [['move', 'tracks'], 13],
    [['move', 'tracks', 0, 'keyframes'], 1001],
    [['power', 'sources'], 17],
    [['power', 'loads'], 33],
    [['storage', 'cards'], 65],
    [['power', 'sources', 0, 'capacityCurve'], 21],
  ]);
  const [path, length] = list;
  const first = (at(root, path) as Json[])[0] as Json;
  put(
    root,
    path,
    Array.from({ length }, () => first),
  );
  return { text: written(root), how: `${length} members`, where: [pathText(path)], sure: true };
}

/** Text that is cut, changed by a character, or no plan at all. */
function brokenText(root: Json, dice: Dice): Broken {
  const text = written(root);
  const place = dice.below(text.length);
  const inside = (piece: string, drop = 0) => text.slice(0, place) + piece + text.slice(place + drop);
  const kinds: (() => [string, string])[] = [
    () => ['cut short', text.slice(0, place)],
    () => ['a character less', inside('', 1)],
    () => [
      'a character more',
      inside(dice.pick(['{', '}', '[', ']', '"', ',', ':', '\\', '0', '-', '\u0000', '\ud800', '//', "'"])),
    ],
    () => [
      'another character',
      inside(dice.pick(['{', '}', '"', ',', ':', '1', 'e', ' ', '\n', '\u0007']), 1),
    ],
    () => ['a piece less', inside('', 1 + dice.below(200))],
    () => ['a piece twice', inside(text.slice(place, place + 100))],
    () => [
      'bare word',
      text.replace(
        /: \d+(\.\d+)?/,
        `: ${dice.pick(['NaN', 'Infinity', '-Infinity', 'undefined', '0x10', '1.', '.5', '+1', '01'])}`,
      ),
    ],
    () => ['trailing comma', text.replace(/\n\}\s*$/, ',\n}')],
    () => ['two plans', text + text],
    () => [
      'no plan',
      dice.pick([
        '',
        ' ',
        'null',
        '[]',
        '0',
        '"plan"',
        'true',
        '{}',
        '[[[[',
        '{"a":1}',
        '\ufeff',
        '\ufeff{}',
        '<html>',
        'a,b\n1,2',
      ]),
    ],
    () => ['nested', '['.repeat(1 + dice.below(20_000))],
    () => [
      'nested member',
      text.replace('"title":', `"title": ${'['.repeat(3000)}${']'.repeat(3000)}, "t":`),
    ],
  ];
  const [how, broken] = dice.pick(kinds)();
  return { text: broken, how, where: [], sure: false };
}

const KINDS = [
  wrongValue,
  wrongValue,
  wrongValue,
  oddNumber,
  unknownKey,
  missingKey,
  wrongHead,
  crossed,
  crossed,
  oversized,
  brokenText,
  brokenText,
];

/** Breaks a valid file in one way. */
export function breakPlan(valid: string, dice: Dice): Broken {
  return dice.pick(KINDS)(JSON.parse(valid) as Json, dice);
}

/** Each of the breakages between fields, one after another. */
export function* everyCrossed(valid: string): Generator<Broken> {
  for (const { set, where } of CROSSED) {
    const root = JSON.parse(valid) as Json;
    for (const [path, value] of set) put(root, path, value);
    yield { text: written(root), how: JSON.stringify(set), where, sure: true };
  }
}
