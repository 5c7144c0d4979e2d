/** Adding, removing and renaming members of the plan's lists, keeping what refers to them. */
import { newAxis, newCard, newKeyframe, newLoad, newSource } from '../../engine/plan/parse.ts';
import type { Axis, Keyframe, Plan, Source, Track } from '../../engine/plan/schema.ts';

type CurvePoint = Source['capacityCurve'][number];

/** A name that is not taken: `Card`, `Card 2`, `Card 3`. */
export function freeName(stem: string, taken: readonly { name: string }[]): string {
  const names = new Set(taken.map(({ name }) => name));
  for (let n = 1; ; n += 1) {
    const name = n === 1 ? stem : `${stem} ${n}`;
    if (!names.has(name)) return name;
  }
}

const without = <T>(list: readonly T[], index: number): T[] => list.filter((_, i) => i !== index);

const withSources = (plan: Plan, sources: Plan['power']['sources']): Plan => ({
  ...plan,
  power: { ...plan.power, sources },
});

const withTracks = (plan: Plan, tracks: Track[]): Plan => ({ ...plan, move: { ...plan.move, tracks } });

/** Everything that the source fed is fed by another, or by none. */
function feedFrom(plan: Plan, from: string, to: string | null): Plan {
  const refeed = <T extends { source: string | null }>(list: T[]): T[] =>
    list.map((member) => (member.source === from ? { ...member, source: to } : member));
  return {
    ...plan,
    rig: { ...plan.rig, axes: refeed(plan.rig.axes) },
    power: { ...plan.power, loads: refeed(plan.power.loads) },
  };
}

/** Usual units and names of an axis by its kind. */
const isTurning = (kind: Axis['kind']): boolean => kind !== 'slide' && kind !== 'boom' && kind !== 'focus';

export const kindName = (kind: string): string => kind.charAt(0).toUpperCase() + kind.slice(1);

/** One more axis of a kind, with usual figures to start from. */
export function addAxis(plan: Plan, kind: Axis['kind']): Plan {
  const turning = isTurning(kind);
  const figures = turning
    ? {
        unit: 'deg' as const,
        unitsPerTurn: 360,
        gearRatio: 60,
        travelMin: -180,
        travelMax: 180,
        maxSpeed: 10,
        maxAccel: 20,
      }
    : { travelMax: 600 };
  const axis: Axis = { ...newAxis(), name: freeName(kindName(kind), plan.rig.axes), kind, ...figures };
  return { ...plan, rig: { ...plan.rig, axes: [...plan.rig.axes, axis] } };
}

export function removeAxis(plan: Plan, index: number): Plan {
  const name = plan.rig.axes[index]?.name;
  const rest = { ...plan, rig: { ...plan.rig, axes: without(plan.rig.axes, index) } };
  return withTracks(
    rest,
    plan.move.tracks.filter((track) => track.axis !== name),
  );
}

export function renameAxis(plan: Plan, index: number, name: string): Plan {
  const old = plan.rig.axes[index]?.name;
  const axes = plan.rig.axes.map((axis, i) => (i === index ? { ...axis, name } : axis));
  const tracks = plan.move.tracks.map((track) => (track.axis === old ? { ...track, axis: name } : track));
  return withTracks({ ...plan, rig: { ...plan.rig, axes } }, tracks);
}

export const addSource = (plan: Plan): Plan =>
  withSources(plan, [...plan.power.sources, { ...newSource(), name: freeName('Pack', plan.power.sources) }]);

export function removeSource(plan: Plan, index: number): Plan {
  const name = plan.power.sources[index]?.name ?? '';
  return withSources(feedFrom(plan, name, null), without(plan.power.sources, index));
}

export function renameSource(plan: Plan, index: number, name: string): Plan {
  const old = plan.power.sources[index]?.name ?? '';
  const sources = plan.power.sources.map((source, i) => (i === index ? { ...source, name } : source));
  return withSources(feedFrom(plan, old, name), sources);
}

export const addLoad = (plan: Plan): Plan => {
  const load = {
    ...newLoad(),
    name: freeName('Load', plan.power.loads),
    source: plan.power.sources[0]?.name ?? null,
  };
  return { ...plan, power: { ...plan.power, loads: [...plan.power.loads, load] } };
};

export const removeLoad = (plan: Plan, index: number): Plan => ({
  ...plan,
  power: { ...plan.power, loads: without(plan.power.loads, index) },
});

/** One more card, like the last one. */
export function addCard(plan: Plan): Plan {
  const { cards } = plan.storage;
  const card = { ...(cards.at(-1) ?? newCard()), name: freeName('Card', cards) };
  return { ...plan, storage: { ...plan.storage, cards: [...cards, card] } };
}

export const removeCard = (plan: Plan, index: number): Plan => ({
  ...plan,
  storage: { ...plan.storage, cards: without(plan.storage.cards, index) },
});

/** Lets an axis take part in the move, from one end of its travel to a third of it. */
export function addTrack(plan: Plan, axis: Axis): Plan {
  const reach = Math.round((axis.travelMax - axis.travelMin) / 3);
  const from = axis.travelMin < 0 && axis.travelMax > 0 ? 0 : axis.travelMin;
  const to = Math.min(axis.travelMax, from + Math.max(reach, 1));
  const keyframes: Keyframe[] = [
    newKeyframe({ share: 0, position: from }),
    newKeyframe({ share: 1, position: to }),
  ];
  return withTracks(plan, [...plan.move.tracks, { axis: axis.name, keyframes, thereAndBack: false }]);
}

export const removeTrack = (plan: Plan, index: number): Plan =>
  withTracks(plan, without(plan.move.tracks, index));

const withCurve = (plan: Plan, index: number, edit: (curve: CurvePoint[]) => CurvePoint[]): Plan =>
  withSources(
    plan,
    plan.power.sources.map((source, i) =>
      i === index ? { ...source, capacityCurve: edit(source.capacityCurve) } : source,
    ),
  );

/** One more point of a source's capacity curve, ten degrees above the last. */
export const addCurvePoint = (plan: Plan, index: number): Plan =>
  withCurve(plan, index, (curve) => {
    const last = curve.at(-1) ?? { temperatureC: 15, share: 1 };
    return [...curve, { ...last, temperatureC: Math.min(90, last.temperatureC + 10) }];
  });

export const removeCurvePoint = (plan: Plan, index: number, point: number): Plan =>
  withCurve(plan, index, (curve) => without(curve, point));
