/** What the rig's screens say. The figures are made up here, or worked by hand. */
import { describe, expect, test } from 'vitest';
import { armResults, supportResults } from '../../../src/app/rig/balanceResults.ts';
import {
  imageReadings,
  imageReadingsAt,
  pathReadings,
  pathText,
  standingReadings,
} from '../../../src/app/rig/pathReadings.ts';
import {
  armText,
  lengthText,
  slideText,
  spotText,
  standsText,
  subjectText,
} from '../../../src/app/rig/rigText.ts';
import { ringingFacts } from '../../../src/app/rig/ringingFacts.ts';
import { subjectDistanceMm, subjectFacts } from '../../../src/app/rig/subjectFacts.ts';
import { SUMMARIES } from '../../../src/app/sections/summary.ts';
import { type Piece, plainText } from '../../../src/app/working/sentence.ts';
import type { ArmBalance } from '../../../src/engine/balance/arm.ts';
import type { BalanceRun } from '../../../src/engine/balance/balance.ts';
import type { AimSummary } from '../../../src/engine/path/aim.ts';
import type { ImageSummary } from '../../../src/engine/path/image-summary.ts';
import { defaultPlan } from '../../../src/engine/plan/parse.ts';
import type { RingingSummary } from '../../../src/engine/ringing/summary.ts';
import { boomPlan, drawnOf, slidePlan } from './rigs.ts';

/** With plain spaces and minus signs. */
const plain = (text: string) => text.replaceAll('\u00a0', ' ').replaceAll('\u2212', '-');

const said = (pieces: readonly Piece[]) => plain(plainText(pieces));

const ARM: ArmBalance = {
  counterweightKg: 5,
  counterweightMm: 340,
  fits: true,
  needsNone: false,
  balancedMm: 340,
  balancedKg: 5,
  aheadNm: 16.7,
  residualNm: 0,
  worstNm: 0,
  worstFrame: 12,
  motor: { ratio: 60, levelNm: 0, neededNm: 0, torqueNm: null, marginShare: null },
  cameraOff: { armNm: -14.7, motorNm: 0.3 },
  weightOff: { armNm: 16.7, motorNm: 0.35 },
  payloadAllowedKg: null,
};

const RUN: BalanceRun = {
  arm: ARM,
  support: { loadKg: 9, ratedKg: null },
  tip: { safeMm: 250, farthestMm: 40, marginMm: 210, frame: 7, leanDeg: 9.87, totalKg: 13 },
};

describe('balance', () => {
  const plan = boomPlan({ balance: { used: true, payloadKg: 1.5, counterweightMaxMm: 500 } });
  type What =
    | 'Counterweight'
    | 'Left unbalanced'
    | 'Motor holds'
    | 'Payload'
    | 'It would have to sit at'
    | 'At the end of the rear arm, 500 mm';
  const results = (change: Partial<ArmBalance>, of = plan): Partial<Record<What, string>> =>
    Object.fromEntries(
      armResults(of, { ...ARM, ...change }).map(({ what, value, standing }) => [
        plain(what),
        `${standing}: ${plain(value)}`,
      ]),
    );

  test('says where the counterweight is, and that nothing is left', () => {
    expect(results({})).toEqual({
      Counterweight: 'fine: 5 kg at 340 mm',
      'Left unbalanced': 'fine: nothing: it stays where it is put',
      'Motor holds': 'fine: nothing',
    });
  });

  test('says what the rear arm is too short for, and the mass that would do at its end', () => {
    // 3 kg that would balance at 800 mm: at 500 mm it takes 3 x 800 / 500 = 4.8 kg.
    const said = results({ fits: false, counterweightKg: 3, counterweightMm: 500, balancedMm: 800 });
    expect(said['It would have to sit at']).toBe('stop: 800 mm');
    expect(said['At the end of the rear arm, 500 mm']).toBe('fine: takes 4.8 kg');
    expect(said.Counterweight).toBeUndefined();
  });

  test('says which end drops, by as much as the arc’s lean leaves of it', () => {
    expect(results({ residualNm: 2 })['Left unbalanced']).toBe('fine: 2 N m, camera drops');
    expect(results({ residualNm: -2 })['Left unbalanced']).toBe('fine: 2 N m, counterweight drops');
    const leaning = { ...plan, rig: { ...plan.rig, arm: { ...plan.rig.arm, planeTiltDeg: 60 } } };
    expect(results({ residualNm: 2 }, leaning)['Left unbalanced']).toBe('fine: 1 N m, camera drops');
  });

  test('says what the motor holds of what it can', () => {
    const motor = { ...ARM.motor, neededNm: 0.3, torqueNm: 0.4 };
    expect(results({ motor })['Motor holds']).toBe('fine: 0.3 N m of 0.4 N m');
    expect(results({ motor: { ...motor, torqueNm: 0.2 } })['Motor holds']).toMatch(/^stop/);
    expect(results({ motor: { ...motor, torqueNm: null } })['Motor holds']).toBe('fine: 0.3 N m, frame 12');
  });

  test('says what payload the arm’s maker allows', () => {
    expect(results({ payloadAllowedKg: 2 }).Payload).toBe('fine: 1.5 kg of 2 kg at this arm');
    expect(results({ payloadAllowedKg: 1 }).Payload).toMatch(/^stop/);
    expect(results({ needsNone: true }).Counterweight).toMatch(/none needed/);
  });

  test('says what the support bears, and when it tips', () => {
    const said = (run: BalanceRun) =>
      supportResults(run).map(({ value, standing }) => [plain(value), standing]);
    expect(said(RUN)).toEqual([
      ['13 kg', 'fine'],
      ['9 kg', 'fine'],
      ['40 of 250 mm, frame 7', 'fine'],
      ['210 mm', 'fine'],
      // Rounded down: a little less already tips it.
      ['9.8°', 'fine'],
    ]);
    const over = { ...RUN, support: { loadKg: 9, ratedKg: 8 }, tip: { ...RUN.tip, marginMm: -5 } };
    expect(said(over).map(([, standing]) => standing)).toEqual(['fine', 'stop', 'stop', 'stop']);
  });

  test('is summed up in one line while it is folded', () => {
    const { made } = drawnOf(plan);
    const line = (balance: BalanceRun | null) =>
      plain(SUMMARIES.balance(plan, { ...made, rig: { ...made.rig, balance } }));
    expect(line(RUN)).toBe('payload 1.5 kg, 5 kg at 340 mm, footing 210 mm left');
    expect(line({ ...RUN, arm: null, tip: { ...RUN.tip, marginMm: 0 } })).toBe('payload 1.5 kg, tips over');
    expect(line(null)).toBe('payload 1.5 kg');
    expect(SUMMARIES.balance(defaultPlan(), made)).toBe('Not looked at');
  });
});

describe('ringing', () => {
  const SUMMARY: RingingSummary = {
    frequencyHz: 5,
    dampingRatio: 0.02,
    worstPx: 12.3,
    worstFrame: 198,
    longestSettleS: 5.1,
    quiet: { shortestIntervalS: 9.2, shortestIntervalWithoutS: 11.4, savesS: 2.2 },
  };
  const facts = (change: Partial<RingingSummary>, plan = defaultPlan()) =>
    ringingFacts(plan, { ...SUMMARY, ...change }).map(said);
  const quiet = { ...defaultPlan(), move: { ...defaultPlan().move, quiet: true } };

  test('says the worst move, the longest settle, and what quiet moves would save', () => {
    expect(facts({})).toEqual([
      'The worst move leaves a ring of 12.3 px, before frame 198.',
      'Longest settle 5.1 s.',
      'Quiet moves would bring the shortest interval from 11.4 s to 9.2 s: 2.2 s shorter.',
    ]);
  });

  test('says what quiet moves save', () => {
    expect(facts({}, quiet)[2]).toBe(
      'With quiet moves the shortest interval is 9.2 s instead of 11.4 s: 2.2 s shorter.',
    );
    const close = { shortestIntervalS: 9.785, shortestIntervalWithoutS: 11.413, savesS: 1.628 };
    expect(facts({ quiet: close })[2]).toMatch(/from 11.41 s to 9.79 s: 1.63 s shorter/);
    const none = { shortestIntervalS: 9.2, shortestIntervalWithoutS: 9.21, savesS: 0.01 };
    expect(facts({ quiet: none }, quiet)[2]).toBe('Quiet moves save no time here.');
    expect(facts({ quiet: none })[2]).toBe('Quiet moves would save no time here.');
  });

  test('says what keeps quiet moves from helping', () => {
    const plan = defaultPlan();
    const measured = { ...plan, ringing: { ...plan.ringing, measuredSettleS: 3 } };
    expect(facts({ quiet: null }, measured)[2]).toMatch(/measured settle counts/);
    expect(facts({ quiet: null }, { ...plan, move: { ...plan.move, moveS: 4 } })[2]).toMatch(/fixed time/);
    expect(facts({ quiet: null })).toHaveLength(2);
  });

  test('says nothing of what is not known', () => {
    expect(ringingFacts(defaultPlan(), null)).toEqual([]);
    expect(facts({ worstPx: null, worstFrame: null, quiet: null })).toEqual(['Longest settle 5.1 s.']);
    expect(facts({ worstFrame: null, longestSettleS: 0, quiet: null })).toEqual([
      'No move rings.',
      'Every move ends still enough: no settle.',
    ]);
  });
});

describe('the subject', () => {
  const plan = boomPlan({ subject: { used: true, rightMm: 0, forwardMm: 2366, heightMm: 700 } });
  const { axes } = drawnOf(plan).made.columns;
  const AIM: AimSummary = {
    missFrames: 0,
    firstMissFrame: null,
    worstPx: 0,
    worstDeg: 0,
    worstFrame: null,
    panFromDeg: -4,
    panToDeg: 8.25,
    tiltFromDeg: -2,
    tiltToDeg: -2,
    limits: [],
    lacks: [],
  };
  const facts = (change: Partial<AimSummary>) => subjectFacts(plan, axes, { ...AIM, ...change }).map(said);

  test('is as far off as a right-angled triangle says', () => {
    // First: 2366 - 866 level with it. Last: 1500 off and 1000 below.
    expect(subjectDistanceMm(plan, axes, 0)).toBeCloseTo(1500, 0);
    expect(subjectDistanceMm(plan, axes, 60)).toBeCloseTo(Math.hypot(1500, 1000), 0);
    expect(subjectFacts(plan, axes, null).map(said)).toEqual([
      '1.5 m from the lens at the first frame, 1.8 m at the last.',
    ]);
  });

  test('says what pan and tilt do to keep it framed', () => {
    expect(facts({}).slice(1)).toEqual([
      'Pan keeps between -4° and 8.3°.',
      'Tilt stays at -2°.',
      'The aim holds at every frame.',
    ]);
  });

  test('says how far it misses, and why', () => {
    const miss = { missFrames: 34, firstMissFrame: 28, worstPx: 320, worstDeg: 4.5, worstFrame: 61 };
    expect(facts({ ...miss, limits: ['pan'], lacks: ['tilt'], tiltFromDeg: null }).slice(1)).toEqual([
      'Pan keeps between -4° and 8.3°.',
      'Tilt: the rig has no such axis. Add one under Rig.',
      'Pan stops at an end of the travel.',
      'It is off the centre on 34 frames, from frame 28, by up to 320 px (4.5°) at frame 61.',
    ]);
    expect(facts({ lacks: ['pan', 'tilt'], panFromDeg: null, tiltFromDeg: null })[1]).toMatch(
      /^Pan and tilt:/,
    );
  });

  test('says nothing without one', () => {
    expect(subjectFacts(boomPlan(), axes, null)).toEqual([]);
    expect(subjectText(boomPlan().subject)).toBe('None');
  });
});

describe('folded groups', () => {
  const { rig } = boomPlan({ rig: { lensBearingDeg: 90, lensTiltDeg: -10 } });

  test('say how the rig stands and its arm lies', () => {
    expect(plain(standsText({ ...rig, pivotHeightMm: 1200 }))).toBe('1200 mm up, lens to 90°, down 10°');
    expect(plain(armText({ lengthMm: 1000, planeTiltDeg: 0, zeroDeg: 0, keepsLevel: true }))).toBe(
      '1000 mm, swings upright, head stays level',
    );
    expect(plain(armText({ lengthMm: 800, planeTiltDeg: 90, zeroDeg: -15, keepsLevel: false }))).toBe(
      '800 mm, swings flat, -15° at zero, camera turns with it',
    );
    expect(plain(slideText({ bearingDeg: 90, inclineDeg: 0 }))).toBe('to 90°, level');
  });

  test('say where things are', () => {
    expect(plain(spotText(-300, 1500))).toBe('300 mm to the left, 1.5 m forward');
    expect(plain(spotText(0, -200))).toBe('200 mm back');
    expect([0, 999, 1234, 12_340].map(lengthText).map(plain)).toEqual(['0 mm', '999 mm', '1.23 m', '12.3 m']);
  });
});

describe('figures beside the drawing', () => {
  const { made, rig } = drawnOf(boomPlan({ subject: { used: true, forwardMm: 20_000 } }));
  const named = (readings: ReturnType<typeof pathReadings>) =>
    Object.fromEntries(readings.map(({ name, value, unit }) => [name, plain(`${value} ${unit}`)])) as Partial<
      Record<'Sagitta' | 'Subject away', string>
    >;
  if (!made.rig.path) throw new Error('no path');
  const { path } = made.rig;

  test('are those of the path', () => {
    expect(named(pathReadings(path))).toMatchObject({
      // An arc of 60 degrees on 1 m: 1047 mm long, 1000 mm high.
      'Way of the lens': '1047 mm',
      Rise: '1000 mm',
      Reach: '1000 mm',
      'Arm swings': '60.0 °',
      Sagitta: '134 mm',
      'Lowest above the floor': '700 mm',
    });
    expect(named(pathReadings({ ...path, swingDeg: 0 })).Sagitta).toBeUndefined();
    expect(pathReadings({ ...path, lengthMm: 0 })).toEqual([]);
  });

  test('are those of the frame under the cursor', () => {
    expect(named(standingReadings(rig.at(30)))).toMatchObject({
      'Lens above the floor': '1200 mm',
      Forward: '1000 mm',
      'To the right': '0 mm',
      'Looks to': '0.0 °',
      'Subject away': '19.0 m',
    });
    const slid = standingReadings(drawnOf(slidePlan()).rig.last);
    expect(named(slid)).toMatchObject({ 'To the right': '+800 mm' });
    expect(named(slid)['Subject away']).toBeUndefined();
  });

  test('are those of the picture', () => {
    const image: ImageSummary = {
      subject: { px: 12.44, frame: 201 },
      background: { px: 0, frame: 1 },
      outOfSightFrames: 0,
      blur: { px: 4.2, frame: 180, of: 'background', firstOver: 100 },
      crossing: { shortestS: 7.61, frame: 180, firstUnder: null },
    };
    expect(named(imageReadings(image))).toEqual({
      'Subject, frame 201': '12.4 px',
      Background: '0.0 px',
      'Blur, background, frame 180': '4.2 px',
      'Crosses the frame in': '7.6 s',
    });
    const still = { ...image, blur: null, crossing: null, outOfSightFrames: 3 };
    expect(Object.keys(named(imageReadings(still)))).toContain('Subject out of sight');
    const columns = {
      subjectPx: Float32Array.of(1.5, 0),
      backgroundPx: null,
      aimMissPx: Float32Array.of(0, 8),
    };
    expect(named(imageReadingsAt(columns, 1))).toEqual({
      'Subject moves': '0.0 px',
      'Aim is off by': '8.0 px',
    });
    expect(imageReadingsAt({ subjectPx: null, backgroundPx: null, aimMissPx: null }, 0)).toEqual([]);
  });

  test('are said in words for who does not see the drawing', () => {
    expect(plain(pathText(boomPlan(), path))).toBe(
      'The lens goes from 700 mm to 1700 mm above the floor, rises 1000 mm, reaches 1 m from the pivot, is 134 mm off a straight line at most, and sees 74° across.',
    );
    expect(pathText(boomPlan(), null)).toBe('The rig, from its side and from above.');
  });
});
