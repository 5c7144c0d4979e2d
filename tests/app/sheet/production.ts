/** A production of the tests' own: two shots, three actions, an axis, two passes, a break. */
import { fetchChecks } from '../../../src/app/store/checker.ts';
import { newAxis, readPlan } from '../../../src/engine/plan/parse.ts';
import { PLAN_FORMAT, PLAN_VERSION, type Plan } from '../../../src/engine/plan/schema.ts';

// In the page the checker comes with the view; here it is there from the start.
await fetchChecks();

/** Monday 2 March 2026, 09:00; work to 13:00 with a break from 10:00 to 10:30; 30 min an exposure, no set-up. */
export function production(sheet: object = {}): Plan {
  const read = readPlan({
    format: PLAN_FORMAT,
    version: PLAN_VERSION,
    title: 'Test',
    technique: 'stopMotion',
    clip: { frameRate: '25', holdFrames: 2 },
    start: { date: '2026-03-02', time: '09:00:00' },
    place: { zone: 'Etc/UTC' },
    exposure: { shutterS: 0.01 },
    rig: { axes: [{ ...newAxis(), name: 'Slide' }] },
    move: {
      mode: 'moveShootMove',
      tracks: [
        {
          axis: 'Slide',
          keyframes: [
            { share: 0, position: 0 },
            { share: 1, position: 90 },
          ],
        },
      ],
    },
    sheet: {
      minutesPerExposure: 29,
      setUpMin: 0,
      testFrames: 0,
      workFrom: '09:00',
      workTo: '13:00',
      breaks: [{ from: '10:00', to: '10:30' }],
      passes: [{ name: 'Key' }, { name: 'Rim' }],
      shots: [
        {
          name: 'One',
          actions: [
            { text: 'Wakes', frames: 8, holds: [2], details: [{ exposure: 2, text: 'Blinks' }] },
            { text: 'Turns', frames: 6, holds: [1, 2] },
          ],
          cues: [{ kind: 'sound', frame: 3, frames: 4, text: 'knock' }],
        },
        { name: 'Two', actions: [{ text: 'Leaves', frames: 6, holds: [3] }] },
      ],
      ...sheet,
    },
  });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.plan;
}
