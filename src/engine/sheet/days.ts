/**
 * The days of work: where each ends, and what it draws.
 *
 * Lamps and camera stay on from the beginning of work to its end, breaks included: a load draws its idle and its
 * always-on power, and the rig holds, over all of that time. On top of it comes what exposing, writing and moving draw
 * more, as in a schedule.
 */
import { fullWh } from '../energy/battery.ts';
import { type Draw, drawOf } from '../energy/energy.ts';
import type { Plan } from '../plan/schema.ts';
import { LONGEST_DAYS } from '../sky/run.ts';
import { both, type Span } from '../sky/spans.ts';
import { daysTrack } from '../sky/track.ts';
import { setHitSpans, siteOf } from '../sky/windows.ts';
import type { LocalDay } from '../time/day.ts';
import type { WorkCalendar } from './calendar.ts';
import type { Exposures } from './exposures.ts';
import type { DayEnergy, DaySpent, SheetDay } from './types.ts';

/** A day while its work is being added up; seconds of what is done on it. */
class DayWork {
  fromMs = Number.POSITIVE_INFINITY;
  toMs = Number.NEGATIVE_INFINITY;
  workMs = 0;
  first = Number.POSITIVE_INFINITY;
  last = -1;
  /** The exposure that ends last. */
  closing = -1;
  exposureS = 0;
  busyS = 0;
  moveS = 0;
  readonly axisMoveS: number[];

  /** From the beginning of work to its end. */
  get presentS(): number {
    return (this.toMs - this.fromMs) / 1000;
  }

  constructor(axes: number) {
    this.axisMoveS = new Array(axes).fill(0);
  }
}

/** Adds work up by day. */
export class DayBook {
  readonly #days = new Map<number, DayWork>();
  readonly #exposures: Exposures;
  #last: { day: number; work: DayWork } | null = null;

  constructor(exposures: Exposures) {
    this.#exposures = exposures;
  }

  #dayWork(day: number): DayWork {
    if (this.#last?.day === day) return this.#last.work;
    const work = this.#days.get(day) ?? new DayWork(this.#exposures.rig.axes.length);
    this.#days.set(day, work);
    this.#last = { day, work };
    return work;
  }

  /** Time within which there is work, and how much of it. */
  add(day: number, fromMs: number, toMs: number, workMs: number): DayWork {
    const work = this.#dayWork(day);
    if (fromMs < work.fromMs) work.fromMs = fromMs;
    if (toMs > work.toMs) work.toMs = toMs;
    work.workMs += workMs;
    return work;
  }

  /** An exposure that ends on a day, in order of time. @param takes - how often it is shot */
  addExposure(work: DayWork, index: number, takes: number): void {
    const { columns, rig, setOf } = this.#exposures;
    const { moveS, axisMoveS } = rig;
    const set = setOf(columns.passes[index] as number);
    if (index < work.first) work.first = index;
    if (index > work.last) work.last = index;
    work.closing = index;
    work.exposureS += set.exposureS * takes;
    work.busyS += set.busyS * takes;
    work.moveS += (moveS[index] as number) * takes;
    for (let a = 0; a < axisMoveS.length; a += 1)
      work.axisMoveS[a] =
        (work.axisMoveS[a] as number) + ((axisMoveS[a] as Float64Array)[index] as number) * takes;
  }

  /** Test frames: the camera without the rig. */
  addTests(day: number, index: number, frames: number): void {
    const { columns, setOf } = this.#exposures;
    const set = setOf(columns.passes[index] as number);
    const work = this.#dayWork(day);
    work.exposureS += set.exposureS * frames;
    work.busyS += set.busyS * frames;
  }

  /** The days in order. */
  close(plan: Plan, calendar: WorkCalendar): SheetDay[] {
    const days = [...this.#days].sort(([a], [b]) => a - b);
    const sun = sunOf(plan, days[0]?.[1].fromMs ?? 0);
    const energy = energyOf(plan);
    const { columns } = this.#exposures;
    return days.map(([day, work]): SheetDay => {
      const { fromMs, toMs, closing } = work;
      const ends = closing >= 0;
      const local = calendar.days[day] as LocalDay;
      const lastFrame = (columns.firstFrame[closing] ?? 0) + (columns.frames[closing] ?? 0) - 1;
      return {
        date: local.date,
        fromMs,
        toMs,
        firstExposure: ends ? work.first + 1 : null,
        lastExposure: ends ? work.last + 1 : null,
        frame: ends ? lastFrame : null,
        shot: ends ? (columns.shot[closing] ?? 0) : null,
        workMin: work.workMs / 60_000,
        energyWh: energy(work),
        spent: spentOn(work),
        sunSpans: sun(local, fromMs, toMs),
      };
    });
  }
}

const spentOn = ({ presentS, exposureS, busyS, moveS, axisMoveS }: DayWork): DaySpent => ({
  presentS,
  exposureS,
  busyS,
  moveS,
  axisMoveS,
});

/** What each source gives on a day. */
function energyOf(plan: Plan): (work: DayWork) => DayEnergy[] {
  const draws = plan.power.sources.map((source) => ({ source, draw: drawOf(plan, source) }));
  return (work) =>
    draws.map(({ source, draw }) => {
      const wh = joules(draw, work) / 3600;
      const usableWh = fullWh(source, plan.power.temperatureC) * (1 - source.reserveShare);
      // A pack that is used up to its last digit is not overdrawn.
      const packs = Math.max(1, Math.ceil((wh / usableWh) * (1 - 1e-9)));
      return { source: source.name, wh, packs: source.kind === 'mains' ? null : packs };
    });
}

const joules = (draw: Draw, work: DayWork): number =>
  draw.periodW * work.presentS +
  draw.exposureW * work.exposureS +
  draw.busyW * work.busyS +
  draw.moveW * work.moveS +
  draw.axesW.reduce((sum, watts, a) => sum + watts * (work.axisMoveS[a] as number), 0);

const DAY_MS = 86_400_000;

/** Sun on the set over whole days, by their first instant: edits of the sheet leave it as it is. */
let kept: { pane: Plan['pane']; place: Plan['place']; days: Map<number, Span[]> } | null = null;

/** Sun on the set between two instants of a day, for as many days from an instant as the sky is followed. */
function sunOf(plan: Plan, firstMs: number): (day: LocalDay, fromMs: number, toMs: number) => Span[] {
  const { pane, place } = plan;
  const site = siteOf(plan);
  if (site === null || !pane.used) return () => [];
  if (kept?.pane !== pane || kept.place !== place) kept = { pane, place, days: new Map() };
  const { days } = kept;
  const farthestMs = firstMs + LONGEST_DAYS * DAY_MS;
  const lookUp = ({ startMs, endMs }: LocalDay): Span[] => {
    const track = daysTrack(firstMs, farthestMs, site.latitudeDeg, site.longitudeDeg);
    const found = setHitSpans(plan, startMs, endMs, track);
    days.set(startMs, found);
    return found;
  };
  return (day, fromMs, toMs) =>
    day.startMs > farthestMs ? [] : both(days.get(day.startMs) ?? lookUp(day), [{ fromMs, toMs }]);
}
