/** What is set on trigger, camera and lens before the first frame, and how it changes. */
import type { Rung } from '../../engine/exposure/ladder.ts';
import type { RampChange } from '../../engine/exposure/ramp.ts';
import { rungWords } from '../../engine/exposure/ramp-words.ts';
import { counted, figure, withUnit } from '../../engine/findings/words.ts';
import type { Pass, Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import type { ChangeLine, SheetLine } from './types.ts';
import { dateWords, opensMs, type When } from './when.ts';

const NO_BREAK = '\u00A0';

/** More changes than this, and those by the camera are taken together. */
const MOST_CHANGES = 24;

/** A shutter time as it is marked: whole parts of a second below a third. */
const shutterWords = (seconds: number): string =>
  seconds > 0.3 ? withUnit(seconds, 's') : `1/${Math.round(1 / seconds)}`;

const settingsWords = (shutterS: number, apertureF: number, iso: number): string =>
  `${shutterWords(shutterS)}, f/${figure(apertureF)}, ISO${NO_BREAK}${iso}`;

function exposureLine({ exposure }: Plan, { columns, exposure: planned }: Schedule): SheetLine {
  const rung: Rung | undefined = planned?.rungs[columns.rung?.[0] ?? 0];
  const words = rung ? rungWords(rung) : settingsWords(exposure.shutterS, exposure.apertureF, exposure.iso);
  const bracket =
    exposure.bracketCount > 1
      ? `; bracket of ${exposure.bracketCount}, ${withUnit(exposure.bracketStops, 'stops')} apart`
      : '';
  return { label: 'Exposure', text: words + bracket };
}

function triggerLine({ trigger }: Plan, { totals }: Schedule): SheetLine {
  const counts = trigger.counts === 'startToStart' ? 'opening to opening' : 'closing to opening';
  return {
    label: trigger.name,
    text: `${withUnit(totals.dialS, 's')}, ${counts}; ${counted(totals.frames, 'frame')}`,
  };
}

function cameraLine({ camera, exposure }: Plan): SheetLine {
  const from = camera.noiseReduction
    ? `noise reduction on, from ${withUnit(camera.noiseReductionFromS, 's')}`
    : 'noise reduction off';
  const timed = exposure.timedBy === 'trigger' ? 'bulb, timed by the trigger; ' : '';
  return { label: camera.name, text: `${timed}${from}; raw, screen and sleep off` };
}

const lensLines = ({ camera, exposure: { filterStops } }: Plan): SheetLine[] => [
  {
    label: 'Filter',
    text: filterStops > 0 ? `ND of ${withUnit(filterStops, filterStops === 1 ? 'stop' : 'stops')}` : 'none',
  },
  {
    label: 'Focus',
    text: `by hand, checked on a test frame, ring taped; ${withUnit(camera.focalLengthMm, 'mm')}, stabiliser off`,
  },
];

/** What to set for a time-lapse. What the plan does not know is common practice, no source. */
export const dialLines = (plan: Plan, made: Schedule): SheetLine[] => [
  triggerLine(plan, made),
  exposureLine(plan, made),
  cameraLine(plan),
  ...lensLines(plan),
];

const passWords = ({ exposure }: Plan, { shutterS, apertureF, iso }: Pass): string =>
  settingsWords(shutterS ?? exposure.shutterS, apertureF ?? exposure.apertureF, iso ?? exposure.iso);

/** What to set for stop-motion: each pass. */
export const passLines = (plan: Plan): SheetLine[] => [
  ...plan.sheet.passes.map((pass) => ({ label: `Pass ${pass.name}`, text: passWords(plan, pass) })),
  cameraLine(plan),
  ...lensLines(plan),
];

function changeLine(made: Schedule, when: When, run: readonly RampChange[]): ChangeLine {
  const first = run[0] as RampChange;
  const last = run.at(-1) as RampChange;
  return {
    frame: first.frame,
    lastFrame: last.frame,
    date: dateWords(when.date(opensMs(made, first.frame))),
    clock: when.second(opensMs(made, first.frame)),
    from: rungWords(first.from),
    to: rungWords(last.to),
    count: run.length,
    by: first.by,
  };
}

/** Up or down the ramp: towards brighter light, or towards dimmer. */
const directionOf = ({ from, to }: RampChange): number => Math.sign(to.index - from.index);

/** Neighbours by the camera that go the same way together; those by hand each by itself. */
function together(changes: readonly RampChange[]): RampChange[][] {
  const groups: RampChange[][] = [];
  for (const change of changes) {
    const last = groups.at(-1);
    const [first] = last ?? [];
    const joins =
      first?.by === 'camera' && change.by === 'camera' && directionOf(first) === directionOf(change);
    if (joins) last?.push(change);
    else groups.push([change]);
  }
  return groups;
}

/** The changes of the settings: each if they fit, else those by hand each, and those by the camera in stretches. */
export function changeLines(made: Schedule, when: When): { lines: ChangeLine[]; grouped: boolean } {
  const changes = made.exposure?.follows ? made.exposure.changes : [];
  const grouped = changes.length > MOST_CHANGES;
  const groups = grouped ? together(changes) : changes.map((change) => [change]);
  return { lines: groups.map((group) => changeLine(made, when, group)), grouped };
}
