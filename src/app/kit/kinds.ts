/** The kinds of gear in the kit, and which fields of a plan each of them is. */
import { defaultPlan, newAxis, newCard, newSource } from '../../engine/plan/parse.ts';

/** Kinds of gear, in their order on screen. */
export const KIT_KINDS = ['camera', 'lens', 'trigger', 'axis', 'arm', 'source', 'card'] as const;
export type KitKind = (typeof KIT_KINDS)[number];

interface KindFacts {
  /** In a sentence: `camera`, `power source`. */
  title: string;
  many: string;
  /** The list that a plan has of them; null where a plan has just one. */
  list: string | null;
  /** Field of the plan that has its name; null where the plan has no name for it. */
  name: string | null;
  /** Fields that make it up; of a list those of its first member. */
  fields: readonly string[];
}

const under = (path: string, names: readonly string[]): string[] => names.map((name) => `${path}.${name}`);

/** All fields of a group but the ones left out. */
const allBut = (path: string, group: object, ...leftOut: string[]): string[] =>
  under(
    path,
    Object.keys(group).filter((name) => !leftOut.includes(name)),
  );

const AXIS = 'rig.axes.0';
const SOURCE = 'power.sources.0';
const CARD = 'storage.cards.0';

const { camera, trigger, rig } = defaultPlan();

export const KINDS: Readonly<Record<KitKind, KindFacts>> = {
  camera: {
    title: 'camera',
    many: 'Cameras',
    list: null,
    name: 'camera.name',
    fields: allBut('camera', camera, 'name', 'focalLengthMm'),
  },
  lens: { title: 'lens', many: 'Lenses', list: null, name: null, fields: ['camera.focalLengthMm'] },
  trigger: {
    title: 'trigger',
    many: 'Triggers',
    list: null,
    name: 'trigger.name',
    fields: allBut('trigger', trigger, 'name'),
  },
  axis: {
    title: 'axis',
    many: 'Axes',
    list: 'rig.axes',
    name: `${AXIS}.name`,
    fields: allBut(AXIS, newAxis(), 'name'),
  },
  // What was measured on an arm stays with it: how it is balanced, and how it rings.
  arm: {
    title: 'arm',
    many: 'Arms',
    list: null,
    name: null,
    fields: [
      ...allBut('rig.arm', rig.arm),
      ...under('balance', ['armKg', 'armCentreMm', 'counterweightMaxMm', 'ratedKg', 'ratedMm']),
      ...under('ringing', ['frequencyHz', 'dampingRatio', 'flexMm']),
    ],
  },
  source: {
    title: 'power source',
    many: 'Power sources',
    list: 'power.sources',
    name: `${SOURCE}.name`,
    fields: allBut(SOURCE, newSource(), 'name'),
  },
  card: {
    title: 'card',
    many: 'Cards',
    list: 'storage.cards',
    name: `${CARD}.name`,
    fields: allBut(CARD, newCard(), 'name'),
  },
};

/** `a camera`, `an axis`. */
export const oneOf = (kind: KitKind): string =>
  `${/^a/.test(KINDS[kind].title) ? 'an' : 'a'} ${KINDS[kind].title}`;

/** Whether a word names a kind of gear. */
export const isKind = (word: unknown): word is KitKind => KIT_KINDS.some((kind) => kind === word);

/** Last part of a field's path: what the figure is called in an entry of the kit. */
export const figureOf = (field: string): string => field.slice(field.lastIndexOf('.') + 1);

/** A field of the first member of a list, as the field of another one. */
export const memberField = (kind: KitKind, field: string, index: number): string => {
  const { list } = KINDS[kind];
  return list === null ? field : field.replace(`${list}.0`, `${list}.${index}`);
};
