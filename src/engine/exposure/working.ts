/** How exposure values, errors, angles and the shutter's ceiling came about. */
import { openAt, shutterOpen } from '../cycle/working.ts';
import { mainsHzOf, rippleLeftShare } from '../light/lamps.ts';
import { night, scene } from '../light/working.ts';
import type { Plan } from '../plan/schema.ts';
import {
  APEX,
  DEFINITION,
  type Draft,
  ofFrame,
  sameAs,
  term,
  type Worked,
  type Workings,
  worth,
} from '../working/make.ts';
import type { Term } from '../working/types.ts';
import type { ShutterCeiling } from './ceiling.ts';
import { fixedLadder, type Rung } from './ladder.ts';
import { frameSettingsWorkings } from './settings-working.ts';
import { bracketS } from './shutter.ts';
import { APERTURE_HALVES, exactApertureF, exactIso } from './stops.ts';

const rungOf = ({ made }: Worked, k: number): Rung | null =>
  made.exposure?.rungs[made.columns.rung?.[k] ?? 0] ?? null;

/** The exact f-number behind a mark, which two series may share: the one that the rung was worked out with. */
function exactFOf({ exposure }: Plan, rung: Rung): number {
  const marked = rung.apertureF;
  const half = APERTURE_HALVES.find(({ mark }) => Number(mark) === marked)?.exact ?? marked;
  const evOf = (f: number) =>
    Math.log2((f * f) / rung.openS) - Math.log2(exactIso(rung.iso) / 100) + exposure.filterStops;
  const off = (f: number) => Math.abs(evOf(f) - rung.ev100);
  const third = exactApertureF(marked);
  return off(half) < off(third) ? half : third;
}

const evTerm = (k: number, rung: Rung): Term =>
  term('evSettings', 'settings', rung.ev100, 'EV', ofFrame(k, 'evSettings'));

/** @param openFigure - name of the working of how long the shutter is open */
function settingsEv(plan: Plan, rung: Rung, openFigure: string): Draft {
  return {
    title: 'Exposure value of the settings',
    value: rung.ev100,
    unit: 'EV',
    expression: 'log2(aperture ^ 2 / openS) - log2(iso / 100) + filterStops',
    terms: [
      term('aperture', 'f-number, exact', exactFOf(plan, rung), ''),
      term('openS', 'shutter open', rung.openS, 's', openFigure),
      term('iso', 'ISO speed, exact', exactIso(rung.iso), ''),
      term('filterStops', 'filter', plan.exposure.filterStops, 'stops'),
    ],
    remarks: [
      `Marked ${rung.shutterMark} s, f/${rung.apertureF}, ISO ${rung.iso}; computed on the exact values behind the marks.`,
    ],
    source: APEX,
  };
}

function error(of: Worked, k: number, rung: Rung): Draft {
  return {
    title: 'Error',
    unit: 'stops',
    expression: 'evScene + nightStops - evSettings',
    terms: [
      term('evScene', 'scene', worth(scene(of, k)), 'EV', ofFrame(k, 'evScene')),
      term('nightStops', 'night allowance', worth(night(of, k)), 'stops', ofFrame(k, 'nightStops')),
      evTerm(k, rung),
    ],
    remarks: [
      'How much brighter than wanted the picture comes out; negative is darker. The schedule keeps it to seven digits.',
    ],
    source: APEX,
  };
}

function angle(of: Worked, k: number): Draft {
  const opens = bracketS(of.plan, openAt(of, k));
  const longest = opens.at(-1) as number;
  const one = opens.length === 1;
  return {
    title: 'Shutter angle',
    unit: 'deg',
    expression: '360 * openS / intervalS',
    terms: [
      term(
        'openS',
        one ? 'shutter open' : 'longest exposure of the bracket',
        longest,
        's',
        one ? ofFrame(k, 'openS') : null,
      ),
      term('intervalS', 'interval', of.made.columns.intervalS[k] as number, 's', ofFrame(k, 'intervalS')),
    ],
    source: 'Shutter angle: t = angle / (360 × rate).',
  };
}

/** What is left of the ripple in one exposure, as a share of the mean. */
function rippleLeft(of: Worked, k: number, mainsHz: number): Draft {
  const { depthShare } = of.plan.lamps;
  const opens = bracketS(of.plan, openAt(of, k));
  const left = (openS: number) => rippleLeftShare(depthShare, mainsHz, openS);
  const worst = opens.reduce((a, b) => (left(b) > left(a) ? b : a));
  const one = opens.length === 1;
  const swings = 'pi * 2 * mainsHz * openS';
  return {
    title: 'Ripple left, share of the light',
    unit: '',
    expression: `depthShare * abs(sin(${swings}) / (${swings}))`,
    terms: [
      term('depthShare', 'swing of the light about its mean', depthShare, ''),
      term('mainsHz', 'frequency of the mains', mainsHz, 'Hz'),
      term(
        'openS',
        one ? 'shutter open' : 'exposure of the bracket that leaves most',
        worst,
        's',
        one ? ofFrame(k, 'openS') : null,
      ),
    ],
    remarks: [AVERAGED],
    source:
      'Light at twice the mains frequency: IEEE 1789-2015. Average of a sine over a box: textbook, from memory.',
  };
}

const AVERAGED = 'The light swings at twice the frequency of the mains, and an exposure averages over it.';

/** Largest change from frame to frame under lamps on the mains, as a share of the mean. */
function ripple(of: Worked, k: number, mainsHz: number): Draft {
  const left = rippleLeft(of, k, mainsHz);
  return {
    ...left,
    title: 'Frames differ by, share of the light',
    expression: `2 * ${left.expression}`,
    remarks: [
      `${AVERAGED} Twice what is left, since two frames can meet the top and the bottom of the swing.`,
    ],
  };
}

/** Workings of the settings of one frame. */
export function frameExposureWorkings(of: Worked, k: number): Workings {
  const rung = rungOf(of, k);
  const mainsHz = mainsHzOf(of.plan);
  return {
    ...(rung && {
      evSettings: () => settingsEv(of.plan, rung, ofFrame(k, 'openS')),
      evError: () => error(of, k, rung),
      ...frameSettingsWorkings(of, k, rung),
    }),
    shutterAngleDeg: () => angle(of, k),
    ...(mainsHz !== null && {
      rippleShare: () => ripple(of, k, mainsHz),
      rippleLeftShare: () => rippleLeft(of, k, mainsHz),
    }),
  };
}

/** Longest move with its settling, s. */
const busyS = ({ plan, made }: Worked): number =>
  plan.move.mode === 'moveShootMove'
    ? made.columns.moveS.reduce(
        (most, moveS, k) => Math.max(most, moveS + (made.columns.settleS[k] as number)),
        0,
      )
    : 0;

/** The sum of a bracket's exposures over its middle one, and its longest. */
function factors({ exposure: { bracketCount, bracketStops } }: Plan): { all: number; longest: number } {
  const middle = (bracketCount - 1) / 2;
  const each = Array.from({ length: bracketCount }, (_, i) => 2 ** ((i - middle) * bracketStops));
  return { all: each.reduce((sum, one) => sum + one, 0), longest: each.at(-1) ?? 1 };
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.abs(b);

function byCycle(of: Worked, value: number): Draft {
  const { plan, made } = of;
  const { intervalS } = made.totals;
  const { bracketCount } = plan.exposure;
  const { shutterLagS, writeS } = plan.camera;
  const { all } = factors(plan);
  const camera = intervalS - plan.cycle.guardS - bracketCount * (shutterLagS + writeS);
  const rig =
    intervalS - plan.cycle.guardS - bracketCount * shutterLagS - (bracketCount - 1) * writeS - busyS(of);
  const moves = plan.move.mode === 'moveShootMove';
  const found = sameAs('Longest shutter time, by the cycle', 'longest that fits', value, 's', null, {
    value,
    remarks: [
      'Found by halving: dark frames, or an interval that grows with the exposure, leave no closed form.',
    ],
  });
  const fits = near(moves ? Math.min(camera, rig) / all : camera / all, value);
  if (!fits || value === 0) return found;
  const free = 'intervalS - guardS - exposures * lagS';
  return {
    ...found,
    expression: moves
      ? `(${free} - max(exposures * writeS, (exposures - 1) * writeS + busyS)) / bracketShare`
      : `(${free} - exposures * writeS) / bracketShare`,
    terms: [
      term('intervalS', 'interval', intervalS, 's', 'totals.intervalS'),
      term('guardS', 'guard', plan.cycle.guardS, 's'),
      term('exposures', 'exposures of the frame', bracketCount, 'exposures'),
      term('lagS', 'shutter lag', shutterLagS, 's'),
      term('writeS', 'write', writeS, 's'),
      ...(moves ? [term('busyS', 'longest move with its settle', busyS(of), 's')] : []),
      term('bracketShare', 'all exposures of the frame, over the middle one', all, ''),
    ],
    remarks: ['What camera lane and rig lane leave of the interval.'],
  };
}

function byAngle(of: Worked, value: number): Draft {
  const { plan, made } = of;
  const { intervalS, dialS } = made.totals;
  const { longest } = factors(plan);
  const angleDeg = plan.exposure.shutterAngleMaxDeg ?? 0;
  const found = sameAs(
    'Longest shutter time, by the shutter angle',
    'longest within the angle',
    value,
    's',
    null,
    {
      value,
      remarks: ['Found by halving: the interval grows with the exposure.'],
    },
  );
  if (plan.trigger.counts === 'endToStart' || !near((angleDeg / 360) * (intervalS / longest), value))
    return { ...found, remarks: [...(found.remarks ?? []), `The dial is at ${dialS} s.`] };
  return {
    ...found,
    expression: 'angleDeg / 360 * intervalS / longestShare',
    terms: [
      term('angleDeg', 'shutter angle that you allow', angleDeg, 'deg'),
      term('intervalS', 'interval', intervalS, 's', 'totals.intervalS'),
      term('longestShare', 'longest exposure of the frame, over the middle one', longest, ''),
    ],
    remarks: [],
    source: 'Shutter angle: t = angle / (360 × rate).',
  };
}

/** Workings of the ceiling of the shutter, where there is one. */
function ceilingDrafts(of: Worked, { cycleS, angleS, ceilingS }: ShutterCeiling): Workings {
  const finite = (seconds: number) => Number.isFinite(seconds);
  const parts = [
    finite(cycleS) ? term('cycleS', 'by the cycle', cycleS, 's', 'exposure.cycleCeilingS') : null,
    finite(angleS) ? term('angleS', 'by the shutter angle', angleS, 's', 'exposure.angleCeilingS') : null,
  ].filter((part) => part !== null);
  if (parts.length === 0) return {};
  return {
    'exposure.ceilingS': () => ({
      title: 'Longest shutter time',
      value: ceilingS,
      unit: 's',
      expression: parts.length === 1 ? (parts[0] as Term).symbol : 'min(cycleS, angleS)',
      terms: parts,
      remarks: ['A ramp goes no farther; the middle exposure of a bracket.'],
      source: DEFINITION,
    }),
    ...(finite(cycleS) && { 'exposure.cycleCeilingS': () => byCycle(of, cycleS) }),
    ...(finite(angleS) && { 'exposure.angleCeilingS': () => byAngle(of, angleS) }),
  };
}

/** The settings of the plan, before any ramp. */
function asSetDrafts(of: Worked): Workings {
  const [rung] = fixedLadder(of.plan).rungs;
  if (!rung) return {};
  const { openS, shutterS, shutterMark } = rung;
  return {
    'exposure.openS': () => ({
      ...shutterOpen(of.plan, openS, shutterS, shutterMark),
      title: 'Shutter open, as set',
    }),
    'exposure.ev100': () => ({
      ...settingsEv(of.plan, rung, 'exposure.openS'),
      title: 'Exposure value, as set',
    }),
  };
}

/** Workings of the exposure over the run. */
export const exposureWorkings = (of: Worked): Workings => ({
  ...asSetDrafts(of),
  ...(of.made.exposure && ceilingDrafts(of, of.made.exposure.ceiling)),
});
