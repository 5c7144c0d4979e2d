/** How the settings of one frame came about: what is wanted of them, which step set them, and until when they stay. */
import { night, scene } from '../light/working.ts';
import {
  DEFINITION,
  type Draft,
  framesUntil,
  ofFrame,
  sameAs,
  term,
  type Worked,
  type Workings,
  worth,
} from '../working/make.ts';
import type { Rung } from './ladder.ts';

/** Which change of the ramp set them: the last one so far. */
function setBy({ made }: Worked, k: number): string {
  const last = made.exposure?.changes.findLast(({ frame }) => frame <= k + 1);
  if (!last) return 'As the run begins with it.';
  return `Last changed at frame ${last.frame}, ${last.by === 'hand' ? 'by hand' : 'by the camera'}.`;
}

const marked = (of: Worked, k: number, title: string, words: string, value: number): Draft =>
  sameAs(title, words, value, '', null, {
    remarks: [setBy(of, k), 'As it is marked on the camera; the exposure value goes by the exact one.'],
  });

/** Exposure value that the picture should be taken with: the scene, darker at night. */
const wanted = (of: Worked, k: number): Draft => ({
  title: 'Wanted',
  unit: 'EV',
  expression: 'evScene + nightStops',
  terms: [
    term('evScene', 'scene', worth(scene(of, k)), 'EV', ofFrame(k, 'evScene')),
    term('nightStops', 'night allowance', worth(night(of, k)), 'stops', ofFrame(k, 'nightStops')),
  ],
  source: DEFINITION,
});

/** Workings of the settings of one frame, counted from 0. @param rung - its settings */
export function frameSettingsWorkings(of: Worked, k: number, rung: Rung): Workings {
  const next = of.made.exposure?.changes.find(({ frame }) => frame > k + 1);
  return {
    apertureF: () => marked(of, k, 'Aperture', 'f-number', rung.apertureF),
    iso: () => marked(of, k, 'ISO', 'ISO speed', rung.iso),
    evWanted: () => wanted(of, k),
    ...(next && {
      toChange: () => framesUntil('Next change in', 'changeFrame', 'frame of the next change', k, next.frame),
    }),
  };
}
