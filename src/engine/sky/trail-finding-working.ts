/** How the figures came about that the finding of trailing stars states. */
import { openAt } from '../cycle/working.ts';
import { bracketS } from '../exposure/shutter.ts';
import type { Finding } from '../findings/types.ts';
import { counted, figure, seconds } from '../findings/words.ts';
import { sameAs, type Worked } from '../working/make.ts';
import { firstFrame, framesWhere, numberOf, type Said, type Sayer } from '../working/said.ts';
import { STARS_BELOW_DEG } from './findings.ts';
import { leastDeclinationDeg, lensOver, starTrailPx } from './view.ts';
import { stars } from './working.ts';

/** How far stars trail on each frame, counted from 0; nothing by day. */
function trailsOf(of: Worked): (k: number) => number {
  const { camera, view, place } = of.plan;
  const { sky, axes } = of.made.columns;
  const lensAt = lensOver(of.plan, axes);
  const opens = (k: number) => bracketS(of.plan, openAt(of, k)).at(-1) as number;
  const { latitudeDeg } = place;
  const declination = (k: number) =>
    view.used && latitudeDeg !== null ? leastDeclinationDeg(lensAt(k), latitudeDeg, camera) : 0;
  const pitchMm = camera.sensorWidthMm / camera.imageWidthPx;
  const isDay = (k: number) => sky !== null && (sky.sunAltitudeDeg[k] as number) >= STARS_BELOW_DEG;
  return (k) => (isDay(k) ? 0 : starTrailPx(opens(k), declination(k), camera.focalLengthMm, pitchMm));
}

/** The first frame, counted from 0, on which they trail farthest. */
function worstOf(of: Worked): number {
  const pxAt = trailsOf(of);
  let [worst, most] = [0, 0];
  for (let k = 0; k < of.made.totals.frames; k += 1) {
    const px = pxAt(k);
    if (px > most) [worst, most] = [k, px];
  }
  return worst;
}

const farthest = (of: Worked, finding: Finding): Said => ({
  text: `${figure(numberOf(finding, 'worstPx'))}\u00A0px`,
  what: 'worstPx',
  draft: () => {
    const k = worstOf(of);
    return { ...stars(of, k), frame: k + 1 };
  },
});

const openTime = (of: Worked, finding: Finding): Said => {
  const openS = numberOf(finding, 'worstS');
  return {
    text: seconds(openS),
    what: 'worstS',
    draft: () =>
      sameAs('Shutter open, where stars trail farthest', 'longest exposure of the frame', openS, 's', null, {
        frame: worstOf(of) + 1,
      }),
  };
};

export const trailSays: Sayer = (of, finding) => {
  const allowed = of.plan.view.starTrailMaxPx;
  const pxAt = trailsOf(of);
  return [
    farthest(of, finding),
    openTime(of, finding),
    framesWhere(of, {
      text: counted(numberOf(finding, 'frames'), 'frame'),
      title: 'Frames on which stars trail too far',
      others: 'frames by day, or on which they trail less',
      holds: (k) => pxAt(k) > allowed,
      remarks: [`You allow ${allowed} px. It is night while the sun is lower than ${STARS_BELOW_DEG}°.`],
    }),
    firstFrame(finding, 'first frame on which they trail too far'),
  ];
};
