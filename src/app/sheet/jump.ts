/** Finding a place on the sheet: by frame, timecode, exposure, or words of an action. */
import { lastWhere } from '../../engine/search.ts';
import { dropsFrames, startFrameOf } from '../../engine/sheet/labels.ts';
import { exposureText } from '../../engine/sheet/texts.ts';
import type { SheetShot } from '../../engine/sheet/types.ts';
import { frameOfTimecode } from '../../engine/time/timecode.ts';
import type { Sheeted } from './sheeted.ts';

/** What was found: index of an exposure; or why nothing was. */
export type Found = { index: number; text: string } | { error: string };

/** Exposure of a frame of a shot, counted from 1. */
export function exposureOfFrame({ sheet }: Sheeted, shot: number, frame: number): number | null {
  const placed = sheet.shots[shot];
  if (!placed || frame < 1 || frame > placed.frames) return null;
  const { firstFrame } = sheet.columns;
  const first = placed.firstExposure - 1;
  return lastWhere(first, first + placed.exposures, (i) => (firstFrame[i] as number) <= frame);
}

const shotOfFrame = (shots: readonly SheetShot[], frame: number): number =>
  shots.findIndex(({ firstFrame, frames }) => frame >= firstFrame && frame < firstFrame + frames);

function byTimecode(of: Sheeted, label: string): Found {
  const { plan, sheet } = of;
  try {
    // Whether the last sign is a semicolon the rate says, as on the sheet.
    const written = label.replace(/[:;](\d+)$/, dropsFrames(plan) ? ';$1' : ':$1');
    const frame = frameOfTimecode(written, plan.clip.frameRate) - startFrameOf(plan) + 1;
    const shot = shotOfFrame(sheet.shots, frame);
    const index =
      shot < 0 ? null : exposureOfFrame(of, shot, frame - (sheet.shots[shot]?.firstFrame ?? 1) + 1);
    if (index === null) return { error: `${written} is not on the sheet.` };
    return { index, text: `${written} is in exposure ${index + 1}.` };
  } catch (error) {
    return { error: error instanceof RangeError ? `No such timecode: ${label}.` : String(error) };
  }
}

function byFrame(of: Sheeted, frame: number, at: number): Found {
  const { shots, columns } = of.sheet;
  const shot = columns.shot[at] ?? 0;
  const own = shots[shot];
  const index = exposureOfFrame(of, shot, frame);
  const where = shots.length > 1 ? ` of ${own?.name}` : '';
  if (index === null) return { error: `There are frames 1 to ${own?.frames ?? 0}${where}, not ${frame}.` };
  return { index, text: `Frame ${frame}${where} is in exposure ${index + 1}.` };
}

function byText(of: Sheeted, text: string, at: number): Found {
  const { plan, sheet } = of;
  const wanted = text.toLowerCase();
  const actions = sheet.actions.map((action) => action.text.toLowerCase().includes(wanted));
  for (let n = 1; n <= sheet.exposures; n += 1) {
    const i = (at + n) % sheet.exposures;
    const own = sheet.columns.action[i] ?? -1;
    const begins = (sheet.actions[own]?.firstExposure ?? 0) === i + 1;
    if ((begins && actions[own]) || exposureText(plan, sheet, i).toLowerCase().includes(wanted))
      return {
        index: i,
        text: `Exposure ${i + 1}: ${exposureText(plan, sheet, i) || sheet.actions[own]?.text}.`,
      };
  }
  return { error: `No action has “${text}” in it.` };
}

/**
 * Finds what was asked for: `128` or `frame 128` a frame of the shot that one is in, `00:00:05:08` a timecode, `#32` an exposure,
 * anything else a part of an action's words, from the exposure after `at` on.
 */
export function find(of: Sheeted, asked: string, at: number): Found {
  const text = asked.trim();
  const { exposures } = of.sheet;
  if (text === '') return { error: 'Type a frame, a timecode, or words of an action.' };
  if (exposures === 0) return { error: 'There are no exposures yet.' };
  const exposure = /^(?:#|exp(?:osure)?\.?\s*)(\d+)$/i.exec(text)?.[1];
  if (exposure !== undefined) {
    const index = Number(exposure) - 1;
    if (index < 0 || index >= exposures) return { error: `There are exposures 1 to ${exposures}.` };
    return { index, text: `Exposure ${exposure}.` };
  }
  const frame = /^(?:f(?:r(?:ame)?)?\.?\s*)?(\d+)$/i.exec(text)?.[1];
  if (frame !== undefined) return byFrame(of, Number(frame), at);
  return /^[\d:;]+$/.test(text) ? byTimecode(of, text) : byText(of, text, at);
}
