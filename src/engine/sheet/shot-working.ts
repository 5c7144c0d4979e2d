/** How the figures of one shot of the sheet came about. */
import { type Draft, sameAs, term, type Worked, type Workings } from '../working/make.ts';
import { doneDraft, shotDraft } from './counts-working.ts';
import { knownSheet } from './known.ts';
import { startFrameOf } from './labels.ts';
import type { SheetShot } from './types.ts';

function timecode(plan: Worked['plan'], { name, firstFrame, timecode: label }: SheetShot): Draft {
  const start = startFrameOf(plan);
  return {
    title: `${name}: timecode`,
    value: start + firstFrame - 1,
    unit: 'frames',
    label,
    expression: 'startFrame + firstFrame - 1',
    terms: [
      term('startFrame', `frames from 00:00:00:00 to ${plan.sheet.startTimecode}`, start, 'frames'),
      term('firstFrame', 'first frame of the shot, in the production', firstFrame, ''),
    ],
    remarks: [`Label ${label}: so many frames after 00:00:00:00.`],
    source: 'SMPTE ST 12-1; after 24 hours the labels begin anew.',
  };
}

/** Workings of one shot, counted from 0; names without the `sheet.shot.N.` before them. */
export function sheetShotWorkings({ plan }: Worked, s: number): Workings {
  const sheet = knownSheet(plan);
  const shot = sheet?.shots[s];
  if (!sheet || !shot) return {};
  return {
    frames: () => shotDraft(sheet, s, 'frames'),
    exposures: () => shotDraft(sheet, s, 'exposures'),
    setUpMin: () => sameAs(`${shot.name}: set-up`, 'set-up as typed', shot.setUpMin, 'min', null),
    done: () => doneDraft(sheet, shot, `${shot.name}: exposures done`),
    timecode: () => timecode(plan, shot),
  };
}
