/** How the figures came about that the finding of trailing stars states. */

import { bracketS } from '../exposure/shutter.ts';
import type { Finding } from '../findings/types.ts';
import { counted, figure, seconds } from '../findings/words.ts';
import { ofFrame, sameAs, term, type Worked } from '../working/make.ts';
import { firstFrame, framesWhere, numberOf, type Said, type Sayer } from '../working/said.ts';
import { STARS_BELOW_DEG } from './findings.ts';
import { leastDeclinationDeg, lensOver, starTrailPx } from './view.ts';

interface Trail {
  openS: number;
  declinationDeg: number;
  px: number;
}

/** How far stars trail on each frame, counted from 0; null where it is not night. */
function trailsOf({ plan, made }: Worked): (k: number) => Trail | null {
  const { camera, view, place } = plan;
  const { exposureS, sky, axes } = made.columns;
  const [middleS = 1, longestS = 1] = [
    bracketS(plan, 1).reduce((sum, each) => sum + each, 0),
    bracketS(plan, 1).at(-1),
  ];
  const share = longestS / middleS;
  const lensAt = lensOver(plan, axes);
  const pitchMm = camera.sensorWidthMm / camera.imageWidthPx;
  return (k) => {
    if (sky !== null && (sky.sunAltitudeDeg[k] as number) >= STARS_BELOW_DEG) return null;
    const openS = (exposureS[k] as number) * share;
    const declinationDeg =
      view.used && place.latitudeDeg !== null ? leastDeclinationDeg(lensAt(k), place.latitudeDeg, camera) : 0;
    return { openS, declinationDeg, px: starTrailPx(openS, declinationDeg, camera.focalLengthMm, pitchMm) };
  };
}

/** The frame, counted from 0, on which they trail farthest. */
function worstOf(of: Worked, trailAt: (k: number) => Trail | null): { k: number; trail: Trail } | null {
  let worst: { k: number; trail: Trail } | null = null;
  for (let k = 0; k < of.made.totals.frames; k += 1) {
    const trail = trailAt(k);
    if (trail && trail.px > (worst?.trail.px ?? 0)) worst = { k, trail };
  }
  return worst;
}

function farthest(of: Worked, finding: Finding): Said {
  const { camera } = of.plan;
  const one = of.plan.exposure.bracketCount === 1;
  return {
    text: `${figure(numberOf(finding, 'worstPx'))}\u00A0px`,
    what: 'worstPx',
    draft: () => {
      const worst = worstOf(of, trailsOf(of));
      const k = worst?.k ?? 0;
      return {
        title: 'Stars trail by',
        unit: 'px',
        expression:
          'arcsecAS * openS * cos(declinationDeg * pi / 180) * pi / 648000 * focalMm * widthPx / sensorMm',
        terms: [
          term('arcsecAS', 'turn of the sky, arc seconds a second', 15.041067, ''),
          term('openS', 'shutter open', worst?.trail.openS ?? 0, 's', one ? ofFrame(k, 'exposureS') : null),
          term(
            'declinationDeg',
            'declination in view nearest to the equator',
            worst?.trail.declinationDeg ?? 0,
            'deg',
          ),
          term('focalMm', 'focal length', camera.focalLengthMm, 'mm'),
          term('widthPx', 'width of the image', camera.imageWidthPx, 'px'),
          term('sensorMm', 'width of the sensor', camera.sensorWidthMm, 'mm'),
        ],
        frame: k + 1,
        remarks: ['Near the middle of the picture; towards the corners of a wide lens more.'],
        source: 'Sidereal rate 15.041067″ a second (IERS rotation rate, from memory); pinhole projection.',
      };
    },
  };
}

const openTime = (of: Worked, finding: Finding): Said => {
  const worstS = numberOf(finding, 'worstS');
  return {
    text: seconds(worstS),
    what: 'worstS',
    draft: () => {
      const k = worstOf(of, trailsOf(of))?.k ?? 0;
      const figureOf = of.plan.exposure.bracketCount === 1 ? ofFrame(k, 'exposureS') : null;
      return sameAs(
        'Shutter open, where stars trail farthest',
        'longest exposure of the frame',
        worstS,
        's',
        figureOf,
        {
          frame: k + 1,
        },
      );
    },
  };
};

export const trailSays: Sayer = (of, finding) => {
  const allowed = of.plan.view.starTrailMaxPx;
  // Worked out when it is asked for: the sentence itself has its numbers.
  let trailAt: ((k: number) => Trail | null) | null = null;
  const pxAt = (k: number): number => {
    trailAt ??= trailsOf(of);
    return trailAt(k)?.px ?? 0;
  };
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
