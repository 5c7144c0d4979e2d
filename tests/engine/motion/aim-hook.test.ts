/** An aim may set pan and tilt: everything that follows from positions follows from its own. */
import { expect, test } from 'vitest';
import { type Aim, motionOf } from '../../../src/engine/motion/motion.ts';
import { Room } from '../../../src/engine/room.ts';
import { axisOf, plainPlan, straight } from '../../reference/plans.ts';

const FRAMES = 9;

const axis = (name: string, kind: 'slide' | 'pan') =>
  axisOf({
    name,
    kind,
    unit: kind === 'pan' ? 'deg' : 'mm',
    fullStepsPerTurn: 100,
    microsteps: 1,
    unitsPerTurn: 1,
    maxSpeed: 10,
    maxAccel: 10,
  });

const PLAN = plainPlan(FRAMES, 10, {
  rig: { axes: [axis('Slide', 'slide'), axis('Pan', 'pan'), axis('Second pan', 'pan')] },
  move: {
    mode: 'moveShootMove',
    settleS: 0,
    tracks: [straight('Slide', 0, 8), straight('Pan', 0, 8), straight('Second pan', 0, 0.04)],
  },
});

const motion = (aim?: Aim) => motionOf(PLAN, new Float64Array(FRAMES).fill(10), new Room(), aim);

test('ranges, moves and reversals are those of the positions that it sets', () => {
  const { axes } = motion(([, pan]) => pan?.steps.set([5, 5, 7, 7, 7, 4, 4, 4, 4]));
  expect(axes[1]).toMatchObject({
    lowestSteps: 4,
    highestSteps: 7,
    largestMoveSteps: 3,
    smallestMoveSteps: 2,
    reversals: 1,
    firstReversal: 6,
  });
  expect(axes[1]?.moveS[1]).toBeCloseTo(2 * Math.sqrt(0.02 / 10), 12);
  expect(axes[1]?.moveS[0]).toBe(0);
});

test('it sees the positions of all axes by their tracks', () => {
  motion((axes) => {
    expect(axes.map(({ steps }) => [steps[0], steps[8]])).toEqual([
      [0, 800],
      [0, 800],
      [0, 4],
    ]);
  });
});

test('it repeats a position where another axis moves, between its own first move and its last', () => {
  const set: Aim = ([slide, pan, second]) => {
    slide?.steps.set([0, 1, 2, 3, 3, 4, 5, 6, 7]);
    pan?.steps.set([5, 5, 6, 6, 6, 6, 7, 7, 7]);
    second?.steps.set([0, 0, 0, 0, 1, 1, 1, 1, 1]);
  };
  // Frames 4 to 6 stand like frame 3, and the slide stands still before frame 5: but the second pan moves then.
  expect(motion(set).axes[1]).toMatchObject({ repeats: 3, firstRepeat: 4 });
  const alone: Aim = (axes) => {
    set(axes);
    axes[2]?.steps.fill(0);
  };
  expect(motion(alone).axes[1]).toMatchObject({ repeats: 2, firstRepeat: 4 });
});

test('the second pan goes by its track', () => {
  const { axes } = motion(() => undefined);
  expect(axes[2]).toMatchObject({ repeats: 4, firstRepeat: 3 });
  expect([...(axes[2]?.steps ?? [])]).toEqual([0, 1, 1, 2, 2, 3, 3, 4, 4]);
});
