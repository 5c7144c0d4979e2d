/** How late a run can begin before light, energy or the window fails. */
import type { Finding, Margin } from '../findings/types.ts';
import { keyOf, SEVERITIES } from '../findings/types.ts';
import { gist } from '../findings/words.ts';
import type { Plan } from '../plan/schema.ts';
import { Room } from '../room.ts';
import { schedule } from '../schedule.ts';
import type { Schedule } from '../schedule-types.ts';
import { firstWhere } from '../search.ts';

/** How far a start can slip. */
export interface Slip {
  /** Whole seconds by which the run can begin late without a new stop or warning, or one of more frames. */
  delayS: number;
  /** Whether one comes then; if not, none came within a day. */
  limited: boolean;
  /** The one that comes. */
  by: Finding | null;
}

/** How far a start is let slip. */
export const LONGEST_SLIP_S = 86_400;

/** Something that holds for less than a stride may be missed: in plans of up to `LONG` frames, and in longer ones. */
const STRIDE_S = 900;
const STRIDE_LONG_S = 1800;
const LONG = 10_000;

/** Delays to try, seconds: close together at first. */
function delays(frames: number): number[] {
  const stride = frames > LONG ? STRIDE_LONG_S : STRIDE_S;
  const soon = [60, 240];
  const late = Array.from({ length: LONGEST_SLIP_S / stride }, (_, n) => (n + 1) * stride);
  return [...soon, ...late];
}

/**
 * How late a run can begin before a stop or a warning comes that the plan does not have.
 * @param made - schedule of the plan; its columns must stay as they are meanwhile
 */
export function slipOf(plan: Plan, made: Schedule, { nowMs }: { nowMs?: number } = {}): Slip {
  const room = new Room();
  // Worst first: of several with one key the worst counts.
  const before = new Map([...made.findings].reverse().map((finding) => [keyOf(finding), finding]));
  const now = nowMs === undefined ? {} : { nowMs };
  const comes = (delayS: number): Finding | null => {
    const { findings } = schedule(plan, { room, before: made, delayS, ...now });
    return findings.find((finding) => isNew(finding, before.get(keyOf(finding)))) ?? null;
  };
  let fine = 0;
  for (const delayS of delays(made.totals.frames)) {
    if (comes(delayS) !== null) {
      const first = firstWhere(fine + 1, delayS, (at) => comes(at) !== null);
      return { delayS: first - 1, limited: true, by: comes(first) };
    }
    fine = delayS;
  }
  return { delayS: LONGEST_SLIP_S, limited: false, by: null };
}

const framesOf = ({ values: { frames } }: Finding): number => (typeof frames === 'number' ? frames : 0);

/** Whether a finding was not there before, has become worse, or concerns more frames; notes do not count. */
function isNew(finding: Finding, before: Finding | undefined): boolean {
  if (finding.severity === 'note') return false;
  if (before === undefined) return true;
  const worse = SEVERITIES.indexOf(before.severity) - SEVERITIES.indexOf(finding.severity);
  return worse > 0 || (worse === 0 && framesOf(finding) > framesOf(before));
}

/** Whether anything in a plan goes by sun, moon or clock. */
const goesByTheClock = ({ place, light, window, pane, view }: Plan): boolean =>
  place.latitudeDeg !== null &&
  place.longitudeDeg !== null &&
  (light.kind === 'sky' || window.used || pane.used || view.used || view.stars);

/** The slip as a margin, of the day within which it was searched; null where nothing in the plan goes by the clock. */
export function slipMargin(plan: Plan, made: Schedule, { delayS, by }: Slip): Margin | null {
  if (!goesByTheClock(plan)) return null;
  return {
    id: 'start',
    subject: 'place',
    label: 'Start may slip by',
    used: LONGEST_SLIP_S - delayS,
    available: LONGEST_SLIP_S,
    unit: 's',
    reserve: 0,
    left: delayS,
    frame: Math.min(by?.frame ?? 1, made.totals.frames),
    when: by === null ? 'nothing comes within 24\u00A0hours' : `then: ${gist(by.message)}`,
  };
}
