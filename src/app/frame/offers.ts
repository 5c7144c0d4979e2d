/** What a test frame offers to the plan, each to be taken by itself. */
import { readingEv } from '../../engine/light/scene.ts';
import { type Edit, editAll, getAt } from '../../engine/plan/paths.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { isoIn } from '../../engine/time/clock.ts';
import { bytesText } from '../format/bytes.ts';
import { clockOf, dateOf } from '../format/clock.ts';
import { shutterText } from '../format/exposure.ts';
import { numberText, withUnit } from '../format/numbers.ts';
import { positionText } from '../place/position.ts';
import type { TestFrame } from './testFrame.ts';

/** Something that a test frame can bring into the plan. */
export interface Offer {
  id: 'sky' | 'studio' | 'frameSize' | 'focalLength' | 'imageSize' | 'place';
  /** What it would be in the plan. */
  title: string;
  /** What stands there in words. */
  text: string;
  /** What to mind. */
  note: string | null;
  edits: readonly Edit[];
}

/** Date and clock at which the frame was taken, on the clock of the plan's place. */
function takenAt({ taken }: TestFrame, plan: Plan): { date: string; time: string } | null {
  if (!taken || taken.offset === null) return taken;
  const ms = Date.parse(`${taken.date}T${taken.time}${taken.offset}`);
  if (!Number.isFinite(ms)) return null;
  const local = isoIn(ms, plan.place);
  return { date: local.slice(0, 10), time: clockOf(local) };
}

const CLOCK = 'The time is that of the camera’s own clock: check that it was right.';
const NO_CLOCK = 'It does not say when it was taken: set ‘Read on’ and ‘Read at’ yourself.';

function readingOffers(frame: TestFrame, plan: Plan): Offer[] {
  const { shutterS, apertureF, iso } = frame;
  if (shutterS === null || apertureF === null || iso === null) return [];
  const settings: Edit[] = [
    ['light.meteredShutterS', shutterS],
    ['light.meteredApertureF', apertureF],
    ['light.meteredIso', iso],
  ];
  const at = takenAt(frame, plan);
  const times: Edit[] = at
    ? [
        ['light.meteredDate', at.date],
        ['light.meteredTime', at.time],
      ]
    : [];
  const text = `${shutterText(shutterS)}, f/${numberText(apertureF)}, ISO ${numberText(iso)}`;
  const when = at ? `, ${dateOf(at.date)} at ${at.time}` : '';
  const studioEv = Number(readingEv(editAll(plan, settings)).toFixed(1));
  const sky: Offer = {
    id: 'sky',
    title: 'Reading of the sky’s light',
    text: `${text}${when}`,
    note: at ? (frame.taken?.offset === null ? CLOCK : null) : NO_CLOCK,
    edits: [['light.kind', 'sky'], ['light.metered', true], ...settings, ...times],
  };
  const studio: Offer = {
    id: 'studio',
    title: 'Studio light',
    text: `${withUnit(numberText(studioEv), 'EV')}, from ${text}`,
    note: null,
    edits: [
      ['light.kind', 'studio'],
      ['light.studioEv', studioEv],
    ],
  };
  // A plan that says which light it has is offered that one only.
  return [sky, studio].filter(({ id }) => plan.light.kind === 'none' || plan.light.kind === id);
}

function imageOffers({ widthPx, heightPx, focalLengthMm, position }: TestFrame): Offer[] {
  const offers: Offer[] = [];
  if (focalLengthMm !== null)
    offers.push({
      id: 'focalLength',
      title: 'Focal length',
      text: withUnit(numberText(focalLengthMm, 1), 'mm'),
      note: null,
      edits: [['camera.focalLengthMm', Number(focalLengthMm.toFixed(2))]],
    });
  if (widthPx !== null && heightPx !== null)
    offers.push({
      id: 'imageSize',
      title: 'Image size',
      text: withUnit(`${widthPx} × ${heightPx}`, 'px'),
      note: null,
      edits: [
        ['camera.imageWidthPx', widthPx],
        ['camera.imageHeightPx', heightPx],
      ],
    });
  if (position)
    offers.push({
      id: 'place',
      title: 'Place',
      text: positionText(position),
      note: null,
      edits: [
        ['place.latitudeDeg', position.latitudeDeg],
        ['place.longitudeDeg', position.longitudeDeg],
      ],
    });
  return offers;
}

/** Everything that a test frame offers. Its size is always there. */
export function offersOf(frame: TestFrame, plan: Plan): Offer[] {
  const size: Offer = {
    id: 'frameSize',
    title: 'Frame size',
    text: bytesText(frame.fileBytes, 2),
    note: null,
    edits: [['camera.frameBytes', frame.fileBytes]],
  };
  return [...readingOffers(frame, plan), size, ...imageOffers(frame)];
}

/** Whether everything that is offered stands in the plan already. */
export const isTaken = (offer: Offer, plan: Plan): boolean =>
  offer.edits.every(([path, value]) => Object.is(getAt(plan, path), value));
