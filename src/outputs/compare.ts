/** What differs between two plans, and between what follows from them: differences only. */
import { type Finding, keyOf, type Margin } from '../engine/findings/types.ts';
import { bytes, counted, figure, seconds, withUnit } from '../engine/findings/words.ts';
import { changesBetween } from '../engine/plan/changes.ts';
import { fieldInfo } from '../engine/plan/faults.ts';
import { getAt, partsOf } from '../engine/plan/paths.ts';
import type { Plan } from '../engine/plan/schema.ts';
import type { Schedule, Totals } from '../engine/schedule-types.ts';

/** One field that differs. A list of another length is one value. */
export interface InputDifference {
  path: string;
  /** Title in the table of fields. */
  title: string;
  /** Which member of a list it belongs to, such as `Boom`; empty if to none. */
  of: string;
  /** Unit in the table of fields; empty for none. */
  unit: string;
  was: unknown;
  now: unknown;
}

/** A figure that follows, as text; a dash where one of the plans does not have it. */
export interface FigureDifference {
  label: string;
  was: string;
  now: string;
  /** Name of its working in either plan; null if it has none. */
  figure: string | null;
}

/** All that differs. Where nothing does, the lists are empty. */
export interface Differences {
  inputs: InputDifference[];
  figures: FigureDifference[];
  /** What is left of each resource. */
  margins: FigureDifference[];
  /** Findings of one plan only, told by their keys, and those that became better or worse. */
  findings: { gone: Finding[]; came: Finding[]; changed: { was: Finding; now: Finding }[] };
  verdicts: { was: string; now: string };
}

const NONE = '–';

/** `Boom, 2` for the second keyframe of the boom's track. */
function ownerOf(plan: Plan, path: string): string {
  const parts = partsOf(path);
  const owners = parts.flatMap((part, n) => {
    if (typeof part !== 'number') return [];
    const member = getAt(plan, parts.slice(0, n + 1).join('.')) as { name?: string; axis?: string } | null;
    return [member?.name || member?.axis || String(part + 1)];
  });
  return owners.join(', ');
}

/** `Work out` of the table of fields; lists have no entry there and go by their own name. */
function titleOf(path: string): { title: string; unit: string } {
  const { title, unit = '' } = fieldInfo(partsOf(path));
  return { title: title.charAt(0).toUpperCase() + title.slice(1), unit };
}

const inputsOf = (before: Plan, after: Plan): InputDifference[] =>
  changesBetween(before, after).map(({ path, from, to }) => ({
    path,
    ...titleOf(path),
    of: ownerOf(before, path),
    was: from,
    now: to,
  }));

const moment = (iso: string): string => `${iso.slice(0, 10)} ${iso.slice(11, 19)}`;

/** A figure by its label: its text, and the name of its working. */
type Said = readonly [label: string, text: string, figure: string | null];

const FIGURES: readonly (readonly [label: string, name: keyof Totals, text: (totals: Totals) => string])[] = [
  ['Frames', 'frames', ({ frames }) => String(frames)],
  ['Interval', 'intervalS', ({ intervalS }) => seconds(intervalS)],
  ['Set the trigger to', 'dialS', ({ dialS }) => seconds(dialS)],
  ['Event, first to last', 'eventDurationS', ({ eventDurationS }) => seconds(eventDurationS)],
  ['Clip', 'clipLengthS', ({ clipLengthS }) => seconds(clipLengthS)],
  ['Speed-up', 'speedUp', ({ speedUp }) => `${figure(speedUp)} times`],
  ['First frame', 'firstFrameAt', ({ firstFrameAt }) => moment(firstFrameAt)],
  ['Last frame', 'lastFrameAt', ({ lastFrameAt }) => moment(lastFrameAt)],
  ['Shortest interval', 'shortestIntervalS', ({ shortestIntervalS }) => seconds(shortestIntervalS)],
  ['Tightest spare', 'tightestSpareS', ({ tightestSpareS }) => seconds(tightestSpareS)],
  ['One frame', 'frameBytes', ({ frameBytes }) => bytes(frameBytes)],
  ['All frames', 'storageBytes', ({ storageBytes }) => bytes(storageBytes)],
  ['All copies', 'copiesBytes', ({ copiesBytes }) => bytes(copiesBytes)],
  ['Energy', 'energyWh', ({ energyWh }) => withUnit(energyWh, 'Wh')],
];

/** What is needed of each kind of gear, by its name. */
const gearOf = ({ sources, cards }: Schedule): Said[] => [
  ...sources
    .filter(({ kind }) => kind === 'battery')
    .map(({ name, needed }): Said => [`${name}, needed`, counted(needed, 'pack'), `sources.${name}.needed`]),
  ['Cards used', String(cards.filter(({ firstFrame }) => firstFrame !== null).length), 'cards.used'],
];

/** Texts by label that are not alike; the order is that of the first, then of what only the second has. */
function unlike(was: readonly Said[], now: readonly Said[]): FigureDifference[] {
  const [before, after] = [was, now].map((all) => new Map(all.map((said) => [said[0], said])));
  const labels = new Set([...was, ...now].map(([label]) => label));
  return [...labels]
    .map((label): FigureDifference => {
      const [then, present] = [before?.get(label), after?.get(label)];
      return {
        label,
        was: then?.[1] ?? NONE,
        now: present?.[1] ?? NONE,
        figure: (present ?? then)?.[2] ?? null,
      };
    })
    .filter((pair) => pair.was !== pair.now);
}

const totalsOf = ({ totals }: Schedule): Said[] =>
  FIGURES.map(([label, name, text]) => [label, text(totals), `totals.${name}`]);

function leftText({ left, unit }: Margin): string {
  if (unit === 'bytes') return bytes(left);
  if (unit === 'share') return withUnit(left * 100, '%');
  return unit === 's' ? seconds(left) : withUnit(left, unit);
}

const marginsOf = ({ margins }: Schedule): Said[] =>
  margins.map((margin) => [margin.label, leftText(margin), `margins.${margin.id}.left`]);

function findingsOf(before: Schedule, after: Schedule): Differences['findings'] {
  const was = new Map(before.findings.map((finding) => [keyOf(finding), finding]));
  const now = new Map(after.findings.map((finding) => [keyOf(finding), finding]));
  return {
    gone: [...was].filter(([key]) => !now.has(key)).map(([, finding]) => finding),
    came: [...now].filter(([key]) => !was.has(key)).map(([, finding]) => finding),
    changed: [...was].flatMap(([key, finding]) => {
      const then = now.get(key);
      return then && then.severity !== finding.severity ? [{ was: finding, now: then }] : [];
    }),
  };
}

/**
 * What differs from one plan to another.
 * @param madeA - schedule of the first plan
 * @param madeB - schedule of the second
 */
export function differencesOf(planA: Plan, madeA: Schedule, planB: Plan, madeB: Schedule): Differences {
  return {
    inputs: inputsOf(planA, planB),
    figures: [...unlike(totalsOf(madeA), totalsOf(madeB)), ...unlike(gearOf(madeA), gearOf(madeB))],
    margins: unlike(marginsOf(madeA), marginsOf(madeB)),
    findings: findingsOf(madeA, madeB),
    verdicts: { was: madeA.verdict, now: madeB.verdict },
  };
}
