/** Faults that no single field shows: names that must match, limits in order, a run that is too long. */
import { IANAZone } from 'luxon';
import { paceOf } from '../pacing/pacing.ts';
import { MAX_FRAMES, MAX_RUN_S } from './constants.ts';
import { type Fault, foundText } from './fault.ts';
import { triggerLineFaults, wordFaults } from './part-program-check.ts';
import type { Keyframe, Plan, Track } from './schema.ts';
import { sheetFaults } from './sheet-check.ts';

const quoted = (names: readonly string[]) =>
  names.length === 0
    ? 'no name, since there is none'
    : `one of ${names.map((n) => JSON.stringify(n)).join(', ')}`;

function repeatedNames(list: readonly { name: string }[], path: string): Fault[] {
  const seen = new Set<string>();
  return list.flatMap(({ name }, index) => {
    if (!seen.has(name)) {
      seen.add(name);
      return [];
    }
    return [
      { path: `${path}[${index}].name`, found: foundText(name), allowed: 'a name that is not taken yet' },
    ];
  });
}

function unknownSources(plan: Plan): Fault[] {
  const names = plan.power.sources.map((source) => source.name);
  const check = (path: string, source: string | null): Fault[] =>
    source === null || names.includes(source)
      ? []
      : [{ path, found: foundText(source), allowed: `null or ${quoted(names)}` }];
  return [
    ...plan.rig.axes.flatMap((axis, i) => check(`rig.axes[${i}].source`, axis.source)),
    ...plan.power.loads.flatMap((load, i) => check(`power.loads[${i}].source`, load.source)),
  ];
}

/** Field that says where a keyframe is. */
const PLACES = { share: 'share', frame: 'frame', time: 'timeS' } as const;

/** Keyframes placed in the same way must follow each other; others depend on the run, and are judged there. */
function orderFault(before: Keyframe | undefined, keyframe: Keyframe, path: string): Fault[] {
  const field = PLACES[keyframe.at];
  if (before?.at !== keyframe.at || keyframe[field] > before[field]) return [];
  const allowed = `more than ${before[field]}, the ${keyframe.at} of the keyframe before`;
  return [{ path: `${path}.${field}`, found: foundText(keyframe[field]), allowed }];
}

/** Faults of the plan's own tracks, or of those of a shot. */
function trackFaults(plan: Plan, tracks: readonly Track[], where: string): Fault[] {
  const names = plan.rig.axes.map((axis) => axis.name);
  const taken = new Set<string>();
  return tracks.flatMap((track, i) => {
    const path = `${where}[${i}]`;
    const faults: Fault[] = [];
    if (!names.includes(track.axis)) {
      faults.push({ path: `${path}.axis`, found: foundText(track.axis), allowed: quoted(names) });
    } else if (taken.has(track.axis)) {
      faults.push({ path: `${path}.axis`, found: foundText(track.axis), allowed: 'one track an axis' });
    }
    taken.add(track.axis);
    track.keyframes.forEach((keyframe, k) => {
      faults.push(...orderFault(track.keyframes[k - 1], keyframe, `${path}.keyframes[${k}]`));
      const { ease } = keyframe;
      if (ease.kind === 'ramped' && ease.headShare + ease.tailShare > 1) {
        faults.push({
          path: `${path}.keyframes[${k}].ease.tailShare`,
          found: foundText(ease.tailShare),
          allowed: `at most ${1 - ease.headShare}: head and tail share one stretch`,
        });
      }
    });
    return faults;
  });
}

function axisFaults(plan: Plan): Fault[] {
  return plan.rig.axes.flatMap((axis, i) => {
    const path = `rig.axes[${i}]`;
    const faults: Fault[] = [];
    if (axis.travelMax <= axis.travelMin) {
      faults.push({
        path: `${path}.travelMax`,
        found: foundText(axis.travelMax),
        allowed: `more than travelMin, ${axis.travelMin}`,
      });
    }
    const perUnit = (axis.fullStepsPerTurn * axis.microsteps * axis.gearRatio) / axis.unitsPerTurn;
    // Positions are kept as 32-bit step counts.
    const most = 2 ** 31 - 1;
    const farthest = Math.max(Math.abs(axis.travelMin), Math.abs(axis.travelMax));
    const positions = [plan.move, ...plan.sheet.shots]
      .flatMap(({ tracks }) => tracks)
      .filter((track) => track.axis === axis.name)
      .flatMap((track) => track.keyframes.map((keyframe) => Math.abs(keyframe.position)));
    // A bezier may overshoot its keyframes by up to its handles' ten-fold.
    if (Math.max(farthest, ...positions) * perUnit * 25 > most) {
      faults.push({
        path: `${path}.microsteps`,
        found: `${perUnit} microsteps a unit`,
        allowed: `fewer microsteps or a shorter travel: positions reach to ${most} steps`,
      });
    }
    return faults;
  });
}

function isCalendarDate(date: string): boolean {
  const time = Date.parse(`${date}T00:00:00Z`);
  return Number.isFinite(time) && new Date(time).toISOString().startsWith(date);
}

function startFaults(plan: Plan): Fault[] {
  const faults: Fault[] = [];
  if (!isCalendarDate(plan.start.date) || plan.start.date < '1970-01-01' || plan.start.date > '2999-12-31') {
    faults.push({
      path: 'start.date',
      found: foundText(plan.start.date),
      allowed: 'a day of the calendar from 1970-01-01 to 2999-12-31',
    });
  }
  if (!isCalendarDate(plan.light.meteredDate)) {
    faults.push({
      path: 'light.meteredDate',
      found: foundText(plan.light.meteredDate),
      allowed: 'a day of the calendar',
    });
  }
  if (!IANAZone.create(plan.place.zone).isValid) {
    faults.push({
      path: 'place.zone',
      found: foundText(plan.place.zone),
      allowed: 'an IANA zone name that this machine knows, such as Europe/Lisbon',
    });
  }
  return faults;
}

/** Pairs of fields of which the second must be the larger one. */
const IN_ORDER = [
  ['sky', 'goldenLowDeg', 'goldenHighDeg'],
  ['sky', 'blueLowDeg', 'blueHighDeg'],
  ['window', 'sunAltitudeMinDeg', 'sunAltitudeMaxDeg'],
  ['pane', 'sillMm', 'headMm'],
  ['pane', 'setNearMm', 'setFarMm'],
  ['pane', 'setLeftMm', 'setRightMm'],
] as const;

function orderFaults(plan: Plan): Fault[] {
  const { nightFromDeg, nightFullDeg } = plan.exposure.ramp;
  const night =
    nightFullDeg < nightFromDeg
      ? []
      : [
          {
            path: 'exposure.ramp.nightFullDeg',
            found: foundText(nightFullDeg),
            allowed: `less than nightFromDeg, ${nightFromDeg}: the sun goes down from one to the other`,
          },
        ];
  const pairs = IN_ORDER.flatMap(([section, low, high]) => {
    const fields: Readonly<Record<string, unknown>> = plan[section];
    const [from, to] = [fields[low], fields[high]];
    if (typeof from !== 'number' || typeof to !== 'number' || from < to) return [];
    return [{ path: `${section}.${high}`, found: foundText(to), allowed: `more than ${low}, ${from}` }];
  });
  return [...pairs, ...night];
}

function horizonFaults({ place }: Plan): Fault[] {
  return place.horizon.flatMap(({ azimuthDeg }, i) => {
    const before = place.horizon[i - 1]?.azimuthDeg ?? -1;
    if (azimuthDeg > before) return [];
    const path = `place.horizon[${i}].azimuthDeg`;
    return [
      { path, found: foundText(azimuthDeg), allowed: `more than ${before}, the azimuth of the point before` },
    ];
  });
}

function pacingFaults(plan: Plan): Fault[] {
  const faults: Fault[] = [];
  if (plan.trigger.minS > plan.trigger.maxS) {
    faults.push({
      path: 'trigger.maxS',
      found: foundText(plan.trigger.maxS),
      allowed: `at least minS, ${plan.trigger.minS}`,
    });
  }
  const { frames, eventDurationS } = paceOf(plan);
  if (eventDurationS > MAX_RUN_S) {
    const found = `${foundText(plan.pacing.intervalS)}, which makes a run of ${Math.round(eventDurationS / 86_400)} days`;
    faults.push({ path: 'pacing.intervalS', found, allowed: `a run of at most ${MAX_RUN_S / 86_400} days` });
  }
  if (frames > MAX_FRAMES) {
    const fromEvent = plan.pacing.workedOut === 'clip';
    faults.push({
      path: fromEvent ? 'pacing.intervalS' : 'pacing.clipLengthS',
      found: `${foundText(fromEvent ? plan.pacing.intervalS : plan.pacing.clipLengthS)}, which makes ${frames} frames`,
      allowed: `what makes at most ${MAX_FRAMES} frames`,
    });
  }
  return faults;
}

/**
 * Checks what no single field shows.
 * @param plan - a plan whose every field fits the schema
 * @returns the faults; empty if the plan can be scheduled
 */
export function crossFaults(plan: Plan): Fault[] {
  return [
    ...startFaults(plan),
    ...horizonFaults(plan),
    ...orderFaults(plan),
    ...pacingFaults(plan),
    ...repeatedNames(plan.rig.axes, 'rig.axes'),
    ...axisFaults(plan),
    ...wordFaults(plan),
    ...triggerLineFaults(plan),
    ...trackFaults(plan, plan.move.tracks, 'move.tracks'),
    ...plan.sheet.shots.flatMap(({ tracks }, s) => trackFaults(plan, tracks, `sheet.shots[${s}].tracks`)),
    ...sheetFaults(plan),
    ...repeatedNames(plan.power.sources, 'power.sources'),
    ...repeatedNames(plan.power.loads, 'power.loads'),
    ...repeatedNames(plan.storage.cards, 'storage.cards'),
    ...unknownSources(plan),
  ];
}
