/** While shooting: what is in the camera, how often it was taken again, and what there is to say of it. */
import { MAX_FRAMES } from '../../plan/constants.ts';
import { memberSchemas, type Plan, type Tick } from '../../plan/schema.ts';
import type { ExposurePlace } from '../texts.ts';
import { listWithin, Refused, textWithin, wholeWithin } from './refused.ts';
import { byShot, type ExposureRange, locate, withSheet } from './shots.ts';

/** Ticks each exposure of a range that is not ticked yet. @param atMs - when, milliseconds of the epoch */
export function tick(plan: Plan, range: ExposureRange, atMs: number): Plan {
  const { ticks } = plan.sheet;
  const made: Tick[] = [];
  const start = memberSchemas.tick.parse({ atMs });
  for (const { shot, range: own } of byShot(plan, range)) {
    const ticked = new Set(ticks.flatMap((one) => (one.shot === shot ? [one.exposure] : [])));
    for (let exposure = own.first; exposure <= own.last; exposure += 1)
      if (!ticked.has(exposure)) made.push({ ...start, shot, exposure });
  }
  return withSheet(plan, { ticks: listWithin('ticks', [...ticks, ...made], MAX_FRAMES) });
}

/** Takes the ticks of a range back, with their retakes and notes. */
export function untick(plan: Plan, range: ExposureRange): Plan {
  const parts = new Map(byShot(plan, range).map(({ shot, range: own }) => [shot, own]));
  const ticks = plan.sheet.ticks.filter(({ shot, exposure }) => {
    const own = parts.get(shot);
    return !own || exposure < own.first || exposure > own.last;
  });
  return withSheet(plan, { ticks });
}

/** Changes the tick of an exposure. @throws Refused if it is not ticked */
function changeTick(plan: Plan, place: ExposurePlace, change: Partial<Tick>): Plan {
  locate(plan, place);
  const isOwn = ({ shot, exposure }: Tick) => shot === place.shot && exposure === place.exposure;
  const { ticks } = plan.sheet;
  if (!ticks.some(isOwn)) {
    const found = `${place.exposure} of shot ${place.shot}, which is not done yet`;
    throw new Refused({ path: 'exposure', found, allowed: 'one that is done' });
  }
  return withSheet(plan, { ticks: ticks.map((one) => (isOwn(one) ? { ...one, ...change } : one)) });
}

/** How often an exposure was taken again. */
export const setRetakes = (plan: Plan, place: ExposurePlace, retakes: number): Plan =>
  changeTick(plan, place, { retakes: wholeWithin('retakes', retakes, 0, 10_000) });

/** What there is to say of an exposure. */
export const setNote = (plan: Plan, place: ExposurePlace, note: string): Plan =>
  changeTick(plan, place, { note: textWithin('note', note, 500) });
