/** Ways out by what the camera does for each frame: brackets, dark frames, who keeps the shutter time. */
import { figure } from '../findings/words.ts';
import { switchWay, wayOver } from '../fixes/build.ts';
import type { Way } from '../fixes/types.ts';
import type { Plan } from '../plan/schema.ts';

/** Fewer exposures a frame, as many on either side of the middle one. */
export function fewerExposures(plan: Plan): Way[] {
  const { bracketCount } = plan.exposure;
  const fewer = Array.from({ length: bracketCount - 1 }, (_, i) => bracketCount - 1 - i);
  return wayOver(
    fewer.filter((count) => count === 1 || (bracketCount - count) % 2 === 0),
    {
      plan,
      kind: 'bracket-fewer',
      edits: (count) => [['exposure.bracketCount', count]],
      label: ({ exposure }) =>
        exposure.bracketCount === 1 ? 'One exposure a frame' : `${exposure.bracketCount} exposures a frame`,
      needs: 'less range to blend from',
    },
  );
}

const SPACINGS = [3, 2.5, 2, 1.5, 1, 0.7, 0.5, 0.3];

/** Exposures of a bracket closer together: the longest is shorter. */
export function closerExposures(plan: Plan): Way[] {
  const { bracketCount, bracketStops } = plan.exposure;
  const closer = bracketCount === 1 ? [] : SPACINGS.filter((stops) => stops < bracketStops);
  return wayOver(closer, {
    plan,
    kind: 'bracket-closer',
    edits: (stops) => [['exposure.bracketStops', stops]],
    label: ({ exposure }) => `Bracket ${figure(exposure.bracketStops)}\u00A0stops apart`,
    needs: 'less range to blend from',
  });
}

/** No dark frame after each long exposure. */
export const noDarkFrames = (plan: Plan): Way[] =>
  switchWay(plan, [['camera.noiseReduction', false]], {
    kind: 'noise-reduction-off',
    label: () => 'Noise reduction off',
    needs: 'hot pixels to clean afterwards',
  });

/** The trigger holds the shutter open for just the time that is written. */
export const timedByTrigger = (plan: Plan): Way[] =>
  switchWay(plan, [['exposure.timedBy', 'trigger']], {
    kind: 'timed-by-trigger',
    label: () => 'Let the trigger keep the shutter time',
    needs: 'a trigger that holds the shutter open',
  });
