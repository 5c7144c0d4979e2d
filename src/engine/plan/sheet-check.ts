/** Faults of a stop-motion production that no single field shows. */
import { workMinutes } from '../sheet/calendar.ts';
import { startFrameOf } from '../sheet/labels.ts';
import { actionFrames, exposuresIn } from '../sheet/production.ts';
import { clockMinutes } from '../time/day.ts';
import { MAX_FRAMES } from './constants.ts';
import { type Fault, foundText } from './fault.ts';
import type { Action, Cue, Plan, Shot } from './schema.ts';

/** Most frames of all shots together: as many as the longest run makes, each exposure held for a second of 24. */
export const MAX_SHEET_FRAMES = 24 * MAX_FRAMES;

const quoted = (names: readonly string[]) => names.map((name) => JSON.stringify(name)).join(', ');

function passFaults({ sheet: { passes } }: Plan): Fault[] {
  const names = passes.map(({ name }) => name);
  return names.flatMap((name, p) =>
    names.indexOf(name) === p
      ? []
      : [
          {
            path: `sheet.passes[${p}].name`,
            found: foundText(name),
            allowed: 'a name that is not taken yet',
          },
        ],
  );
}

/** Working hours in order, and breaks in order within them. */
function hoursFaults({ sheet }: Plan): Fault[] {
  const { workFrom, workTo, breaks } = sheet;
  if (clockMinutes(workTo) <= clockMinutes(workFrom)) {
    return [{ path: 'sheet.workTo', found: foundText(workTo), allowed: `later than workFrom, ${workFrom}` }];
  }
  let before = workFrom;
  const faults = breaks.flatMap(({ from, to }, b): Fault[] => {
    const path = `sheet.breaks[${b}]`;
    const earliest = before;
    before = to;
    if (clockMinutes(from) < clockMinutes(earliest)) {
      const what = b === 0 ? 'the beginning of work' : 'the end of the break before';
      return [{ path: `${path}.from`, found: foundText(from), allowed: `not before ${earliest}, ${what}` }];
    }
    if (clockMinutes(to) <= clockMinutes(from))
      return [{ path: `${path}.to`, found: foundText(to), allowed: `later than its start, ${from}` }];
    if (clockMinutes(to) > clockMinutes(workTo))
      return [{ path: `${path}.to`, found: foundText(to), allowed: `not after ${workTo}, the end of work` }];
    return [];
  });
  if (faults.length > 0 || workMinutes(sheet).length > 0) return faults;
  return [
    { path: 'sheet.breaks', found: 'breaks for all of the day', allowed: 'breaks that leave some work' },
  ];
}

function timecodeFaults(plan: Plan): Fault[] {
  try {
    startFrameOf(plan);
    return [];
  } catch {
    const { startTimecode } = plan.sheet;
    const allowed = `a timecode that there is at ${plan.clip.frameRate} frames a second`;
    return [{ path: 'sheet.startTimecode', found: foundText(startTimecode), allowed }];
  }
}

/** Names of passes that there are, each once. */
function namesFaults(names: readonly string[] | null, known: readonly string[], path: string): Fault[] {
  if (names === null) return [];
  if (names.length === 0)
    return [{ path, found: 'a list of 0', allowed: 'null for all passes, or a pass at least' }];
  return names.flatMap((name, n): Fault[] => {
    const at = `${path}[${n}]`;
    if (!known.includes(name))
      return [{ path: at, found: foundText(name), allowed: `one of ${quoted(known)}` }];
    return names.indexOf(name) === n
      ? []
      : [{ path: at, found: foundText(name), allowed: 'each pass once in an exposure' }];
  });
}

function lengthFaults(action: Action, frames: number, rate: string, path: string): Fault[] {
  if (frames < 1) {
    const found = `${foundText(action.lengthS)}, which makes no frame`;
    return [{ path: `${path}.lengthS`, found, allowed: `half a frame at ${rate} frames a second, or more` }];
  }
  return action.holds.flatMap((hold, h) =>
    hold <= frames
      ? []
      : [
          {
            path: `${path}.holds[${h}]`,
            found: foundText(hold),
            allowed: `at most ${frames}, the frames of the action`,
          },
        ],
  );
}

/** Cues within the shot, and those of one kind apart from one another. */
function cueFaults(cues: readonly Cue[], frames: number, path: string): Fault[] {
  const order = cues
    .map((_, c) => c)
    .sort((a, b) => (cues[a] as Cue).frame - (cues[b] as Cue).frame || a - b);
  const before = new Map<Cue['kind'], Cue>();
  return order.flatMap((c): Fault[] => {
    const { kind, frame, frames: long } = cues[c] as Cue;
    const last = frame + long - 1;
    if (last > frames) {
      const found = `${foundText(long)}, which ends at frame ${last}`;
      return [{ path: `${path}[${c}].frames`, found, allowed: `an end within the shot’s ${frames} frames` }];
    }
    const other = before.get(kind);
    const taken = other ? other.frame + other.frames - 1 : 0;
    before.set(kind, cues[c] as Cue);
    if (frame > taken) return [];
    const allowed = `after frame ${taken}: the ${kind} cue “${other?.text ?? ''}” lasts until then`;
    return [{ path: `${path}[${c}].frame`, found: foundText(frame), allowed }];
  });
}

/** How much of a production has been counted. */
interface Count {
  frames: number;
  exposures: number;
}

function actionFaults(plan: Plan, action: Action, path: string, count: Count): Fault[] {
  const { frameRate } = plan.clip;
  const names = plan.sheet.passes.map(({ name }) => name);
  const frames = actionFrames(action, frameRate);
  const before = { ...count };
  count.frames += frames;
  count.exposures += exposuresIn(action.holds, frames);
  return [
    ...lengthFaults(action, frames, frameRate, path),
    ...sizeFaults(action, path, before, count),
    ...namesFaults(action.passes, names, `${path}.passes`),
    ...action.details.flatMap(({ passes }, d) => namesFaults(passes, names, `${path}.details[${d}].passes`)),
  ];
}

/** The action that makes it too much. */
function sizeFaults(action: Action, path: string, before: Count, { frames, exposures }: Count): Fault[] {
  const field = action.lengthIn === 'frames' ? 'frames' : 'lengthS';
  const found = (total: string) => `${foundText(action[field])}, which makes ${total} in all`;
  if (exposures > MAX_FRAMES && before.exposures <= MAX_FRAMES) {
    const allowed = `what makes at most ${MAX_FRAMES} exposures`;
    return [{ path: `${path}.${field}`, found: found(`${exposures} exposures`), allowed }];
  }
  if (frames > MAX_SHEET_FRAMES && before.frames <= MAX_SHEET_FRAMES) {
    const allowed = `what makes at most ${MAX_SHEET_FRAMES} frames`;
    return [{ path: `${path}.${field}`, found: found(`${frames} frames`), allowed }];
  }
  return [];
}

function shotFaults(plan: Plan, shot: Shot, path: string, count: Count): Fault[] {
  const before = count.frames;
  const actions = shot.actions.flatMap((action, a) =>
    actionFaults(plan, action, `${path}.actions[${a}]`, count),
  );
  return [...actions, ...cueFaults(shot.cues, count.frames - before, `${path}.cues`)];
}

/**
 * Faults of the sheet: names of passes, working hours, lengths, holds, cues, and how much it comes to. Ticks of
 * exposures that there are not are no fault: the sheet leaves them out and says so.
 */
export function sheetFaults(plan: Plan): Fault[] {
  const count = { frames: 0, exposures: 0 };
  return [
    ...timecodeFaults(plan),
    ...passFaults(plan),
    ...hoursFaults(plan),
    ...plan.sheet.shots.flatMap((shot, s) => shotFaults(plan, shot, `sheet.shots[${s}]`, count)),
  ];
}
