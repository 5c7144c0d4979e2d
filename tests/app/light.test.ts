/** Place & light and the ramp without a screen: notation, summaries, and edits of the steps. */
import { beforeAll, describe, expect, test } from 'vitest';
import { enterAll } from '../../src/app/fields/entry.ts';
import { codecOf } from '../../src/app/format/quantity.ts';
import {
  horizonSummary,
  lampsText,
  paneText,
  viewText,
  windowText,
} from '../../src/app/sections/lightText.ts';
import { rampStepText, startText } from '../../src/app/sections/summary.ts';
import { fetchChecks } from '../../src/app/store/checker.ts';
import { draftAt, setDraft } from '../../src/app/store/drafts.ts';
import { currentPlan, startWith, undo } from '../../src/app/store/plan.ts';
import { addStep, MOST_STEPS, moveStep, removeStep, turnStep } from '../../src/app/store/rampEdits.ts';
import { readPlan } from '../../src/engine/plan/parse.ts';
import type { Plan, RampStep } from '../../src/engine/plan/schema.ts';
import { planOf } from '../outputs/plans.ts';

const spaced = (text: string) => text.replaceAll('\u00a0', ' ');

describe('a time from an event of the sky', () => {
  const codec = codecOf('start.offsetMin', 'min');

  test.each([
    [-50, '50 min before'],
    [70, '1 h 10 min after'],
    [0, '0 min'],
    [-0.5, '30 s before'],
  ])('%d min is shown as %s and read back', (minutes, text) => {
    expect(spaced(codec.text(minutes))).toBe(text);
    expect(codec.read(text, 0)).toBe(minutes);
  });

  test.each([
    ['50', -20, -50],
    ['50', 20, 50],
    ['50', 0, 50],
    ['-50', 20, -50],
    ['\u221250', 20, -50],
    ['+50', -20, 50],
    ['0', -20, 0],
    ['1 h', -20, -60],
    ['50 AFTER', -20, 50],
    ['noon', -20, null],
    ['', -20, null],
  ])('%j where %d stands is %d', (text, present, minutes) => {
    const read = codec.read(text, present);
    expect(read === null ? null : read + 0).toBe(minutes);
  });
});

describe('what folded groups say', () => {
  const { window, pane, lamps, view, start } = planOf({});

  test('nothing asked for', () => {
    expect(windowText(window)).toBe('Not asked for');
    expect(windowText({ ...window, used: true })).toBe('Any time will do');
    expect(paneText(pane)).toBe('None');
    expect(lampsText(lamps)).toBe('None on the mains');
    expect(viewText(view)).toBe('Not watched');
    expect(horizonSummary([])).toBe('Level all round');
  });

  test('everything asked for', () => {
    const asked = {
      ...window,
      used: true,
      sunAltitudeMinDeg: -12.5,
      sunAltitudeMaxDeg: 3,
      sunAzimuthToDeg: 300,
      clockFrom: '17:00',
      sunAndHorizon: 'above',
      sunOnPane: 'offSet',
      moon: 'downOrDim',
    } as const;
    expect(windowText(asked)).toBe(
      'Sun from −12.5° to 3°, azimuth at most 300°, not before 17:00, above own horizon, sun off the set, moon down or dim',
    );
    expect(spaced(paneText({ ...pane, used: true }))).toBe('Faces 180°, 1200 × 1200 mm');
    expect(spaced(lampsText({ ...lamps, mainsHz: '50' }))).toBe('50 Hz, ripple 30 %');
    expect(spaced(viewText({ ...view, used: true, stars: true }))).toBe(
      'Lens to 180°, up 0°, stars trail at most 3 px',
    );
    expect(
      spaced(
        horizonSummary([
          { azimuthDeg: 10, altitudeDeg: 4 },
          { azimuthDeg: 20, altitudeDeg: 8.5 },
        ]),
      ),
    ).toBe('2 points, up to 8.5° at 20°');
  });

  test('a start by the sky', () => {
    expect(spaced(startText({ ...start, event: 'sunset', offsetMin: -50 }))).toBe('50 min before sunset');
    expect(startText({ ...start, event: 'nauticalDusk', offsetMin: 0 })).toBe('at nautical dusk');
  });
});

describe('steps of the ramp', () => {
  const step = (setting: RampStep['setting'], to: number): RampStep => ({
    setting,
    to,
    step: 'third',
    by: 'camera',
  });
  const withSteps = (steps: RampStep[]): Plan => planOf({ exposure: { ramp: { used: true, steps } } });
  const said = (plan: Plan) => plan.exposure.ramp.steps.map((one) => spaced(rampStepText(one)));
  const three = withSteps([step('shutter', 1), step('iso', 200), step('aperture', 2.8)]);

  test('are moved, and stay at the ends', () => {
    expect(said(moveStep(three, 1, -1))).toEqual(['ISO to 200', 'shutter to 1 s', 'aperture to f/2.8']);
    expect(said(moveStep(three, 1, 1))).toEqual(['shutter to 1 s', 'aperture to f/2.8', 'ISO to 200']);
    expect(moveStep(three, 0, -1)).toBe(three);
    expect(moveStep(three, 2, 1)).toBe(three);
  });

  test('are added, removed and turned, and always make a plan that fits', () => {
    let plan = withSteps([]);
    for (let i = 0; i < MOST_STEPS; i += 1) plan = addStep(plan);
    expect(readPlan(plan).ok).toBe(true);
    expect(readPlan(addStep(plan)).ok).toBe(false);
    expect(said(removeStep(three, 0))).toEqual(['ISO to 200', 'aperture to f/2.8']);
    expect(said(turnStep(three, 0, 'iso'))[0]).toBe('ISO to 800');
    expect(turnStep(three, 0, 'shutter').exposure.ramp.steps[0]?.to).toBe(1);
  });
});

describe('several values at once', () => {
  beforeAll(async () => {
    await fetchChecks();
  });

  test('come in as one step, and take the place of what was typed there', () => {
    startWith(planOf({}));
    setDraft('place.latitudeDeg', { text: '43,,3', error: 'Not a number.' });
    expect(
      enterAll([
        ['place.latitudeDeg', 43.3],
        ['place.longitudeDeg', 6.4],
      ]),
    ).toBeNull();
    expect(currentPlan().place).toMatchObject({ latitudeDeg: 43.3, longitudeDeg: 6.4 });
    expect(draftAt('place.latitudeDeg')).toBeUndefined();
    undo();
    expect(currentPlan().place).toMatchObject({ latitudeDeg: null, longitudeDeg: null });
  });

  test('stay out together, with the reason', () => {
    startWith(planOf({}));
    const before = currentPlan();
    expect(
      enterAll([
        ['camera.frameBytes', 375],
        ['camera.focalLengthMm', 35],
      ]),
    ).toMatch(/Allowed/);
    expect(currentPlan()).toBe(before);
  });
});
