/** Ways out of what the storage says. */
import { longerIntervals } from '../cycle/fixes.ts';
import { fewerExposures } from '../exposure/camera-ways.ts';
import { handsShortS } from '../exposure/fixes.ts';
import { bytes, counted } from '../findings/words.ts';
import { numberIn, planWith, way } from '../fixes/build.ts';
import { intervalLonger, shorterRun, slowerRun } from '../fixes/common-ways.ts';
import type { SubjectWays, Way, WaysOut } from '../fixes/types.ts';
import { fewerHandles } from '../pacing/fixes.ts';
import { MAX_NAME } from '../plan/constants.ts';
import type { Card, Plan } from '../plan/schema.ts';

const MOST_CARDS = 64;

/** A name like the last one that is not taken: `Card B` after `Card A`, `Card 3` after `Card 2`. */
function nextName(cards: readonly Card[], last: string): string {
  const taken = new Set(cards.map(({ name }) => name));
  const letter = /^(.*\b)([A-Y])$/.exec(last);
  const following = letter ? `${letter[1]}${String.fromCharCode((letter[2] ?? 'A').charCodeAt(0) + 1)}` : '';
  if (following !== '' && !taken.has(following)) return following;
  const stem = last.replace(/\s*\d+$/, '').slice(0, MAX_NAME - 4);
  let number = 2;
  while (taken.has(`${stem} ${number}`)) number += 1;
  return `${stem} ${number}`;
}

function withCards(cards: readonly Card[], more: number): Card[] {
  const all = [...cards];
  const last = cards.at(-1);
  for (let i = 0; last && i < more; i += 1)
    all.push({ ...last, name: nextName(all, all.at(-1)?.name ?? last.name) });
  return all;
}

/** More cards like the last one. @param wanted - cards more that should just suffice */
function moreCards(plan: Plan, wanted: number): Way[] {
  const { cards } = plan.storage;
  const more = ({ storage }: Plan) => storage.cards.length - cards.length;
  const size = bytes(cards.at(-1)?.cardBytes ?? 0);
  return way({
    kind: 'cards-more',
    steps: MOST_CARDS - cards.length,
    first: wanted,
    at: (step) => planWith(plan, [['storage.cards', withCards(cards, step)]]),
    label: (changed) => `${counted(more(changed), 'card')} more of ${size}`,
    needs: (changed) => `${counted(more(changed), 'card')} more to bring`,
  });
}

const full: WaysOut = (finding, plan, made) => {
  const [needed, usable] = [numberIn(finding, 'neededBytes'), numberIn(finding, 'usableBytes')];
  const last = made.cards.at(-1)?.usableBytes ?? 0;
  const { dialS, intervalS, frames } = made.totals;
  const fits = Math.floor(usable / numberIn(finding, 'frameBytes'));
  return [
    ...moreCards(plan, Math.ceil((needed - usable) / last)),
    ...intervalLonger(plan, made, (dialS * (frames - 1)) / Math.max(1, fits - 1)),
    ...shorterRun(plan, made, Math.max(0, fits - 1) * intervalS),
    ...fewerExposures(plan),
    ...fewerHandles(plan, plan.clip.handlesFrames - Math.ceil(((frames - fits) * plan.clip.holdFrames) / 2)),
  ];
};

const changeDoesNotFit: WaysOut = (finding, plan, made) => {
  const { intervalS } = made.totals;
  const shortS = handsShortS(made, finding.frame, numberIn(finding, 'cardChangeS'));
  return [
    ...longerIntervals(plan, made, shortS, (finding.frame ?? 2) - 1),
    ...shorterRun(plan, made, (finding.elapsedS ?? 0) - intervalS),
    ...fewerExposures(plan),
  ];
};

const bufferFills: WaysOut = (finding, plan, made) => {
  const wantedS = numberIn(finding, 'frameBytes') / numberIn(finding, 'writeBytesPerS');
  const dialS = made.totals.dialS + wantedS - numberIn(finding, 'intervalS');
  return [
    ...intervalLonger(plan, made, dialS),
    ...slowerRun(plan, made, dialS),
    ...fewerExposures(plan),
    ...shorterRun(plan, made, (finding.elapsedS ?? 0) - made.totals.intervalS),
  ];
};

export const storageWays: SubjectWays<'card-full' | 'card-change-does-not-fit' | 'buffer-fills'> = {
  'card-full': full,
  'card-change-does-not-fit': changeDoesNotFit,
  'buffer-fills': bufferFills,
};
