/** Balance against published and hand-worked figures; the arithmetic is in the README beside. */
import { type NumberCase, numberRow, type Row, relative } from '../rows.ts';
import { armOf, balanced, rigOf } from './rigs.ts';

const LEVER = 'BAL-02: sum of m g x about the pivot is 0 (statics, computed)';
const SEESAW = 'topmygrade.aartiq.com GCSE p5.6: 40 kg at 1.5 m, 30 kg at 2.0 m (V1)';
const INFOGRAPHIC = 'nofilmschool.com 2015/08: 5 lb at 4 ft on a camera arm take 10 lb (V1), at 2 ft';
const MOTOR = 'BAL-03: g sum(m x) cos a / (ratio x efficiency) (computed)';
const HINGE = 'frictionhinge.com/calc.html: weight x distance x cos(angle) (V1)';
const TIP = 'BAL-01: atan(r/h), homemadetools.net post 138948 (V1: 56.3°)';
const EDGE = 'BAL-04: nearest edge of three feet at R/2 (computed)';
const HEXAGON = 'help.matheass.eu E205: circle inside a hexagon in a circle of 1 (V1)';
const MARGIN = 'BAL-05, STP-04: Parker EIPKB1 “Torque Margin” (V1)';
const SHORTER = 'heavier camera, shorter arm: the same moment (common practice, no source)';

const relativeRow = (
  quantity: string,
  reference: string,
  regime: string,
  cases: Iterable<NumberCase>,
  bound = 1e-9,
): Row => numberRow({ quantity, reference, regime, bound, unit: 'relative' }, cases, relative);

/** A lever: payload kg at mm, arm kg at mm, counterweight kg at mm. */
const lever = (
  workedOut: 'place' | 'mass' | 'residual',
  [payloadKg, lengthMm, armKg, armCentreMm, counterweightKg, counterweightMm]: readonly number[],
  options: { endMm?: number; zeroDeg?: number; torqueNm?: number | null } = {},
) =>
  rigOf(
    {
      boom: [0, 0],
      axis: { gearRatio: 5, driveEfficiencyShare: 0.9, torqueNm: options.torqueNm ?? null },
    },
    {
      rig: { arm: { lengthMm: lengthMm ?? 0, zeroDeg: options.zeroDeg ?? 0 } },
      balance: {
        workedOut,
        payloadKg: payloadKg ?? 0,
        armKg: armKg ?? 0,
        armCentreMm: armCentreMm ?? 0,
        counterweightKg: counterweightKg ?? 0,
        counterweightMm: counterweightMm ?? 0,
        counterweightMaxMm: options.endMm ?? 5000,
      },
    },
  );

const FEET = 304.8;
const POUNDS = 0.45359237;

/** The residual of BAL-02. */
const OUT = [1.5, 1000, 0.6, 250, 4, 400];

const places = (): NumberCase[] => [
  { at: '2 kg at 1.2 m', got: armOf(lever('place', [2, 1200, 0, 0, 6, 0])).counterweightMm, want: 400 },
  { at: 'with the arm', got: armOf(lever('place', OUT)).counterweightMm, want: 412.5 },
];

const masses = (): NumberCase[] => [
  { at: '2 kg at 1.2 m', got: armOf(lever('mass', [2, 1200, 0, 0, 0, 400])).counterweightKg, want: 6 },
  { at: 'with the arm', got: armOf(lever('mass', OUT)).counterweightKg, want: 4.125 },
];

function moments(): NumberCase[] {
  const { residualNm, cameraOff, weightOff } = armOf(lever('residual', OUT));
  const short = armOf(lever('place', OUT, { endMm: 300 }));
  return [
    { at: 'left', got: residualNm, want: 0.4903325 },
    { at: 'camera off', got: cameraOff.armNm, want: -14.2196425 },
    { at: 'weight off', got: weightOff.armNm, want: 16.1809725 },
    { at: 'rear arm too short', got: short.residualNm, want: 0.45 * 9.80665 },
  ];
}

function motors(): NumberCase[] {
  const { motor } = armOf(lever('residual', OUT));
  const byArc = rigOf(
    { boom: [0, 0], axis: { unit: 'mm', unitsPerTurn: 40, gearRatio: 3 } },
    { rig: { arm: { lengthMm: 1000 } } },
  );
  return [
    { at: 'torque', got: motor.neededNm, want: 0.4903325 / 4.5 },
    { at: 'turns a turn', got: motor.ratio, want: 5 },
    { at: 'turns a turn, by the arc', got: armOf(byArc).motor.ratio, want: 150 * Math.PI },
  ];
}

/** An arm that stands still at an angle. */
function* angles(): Generator<NumberCase> {
  for (const angle of [0, 15, 30, 45, 60, 75, -20, -60, 120, 200]) {
    const { worstNm } = armOf(lever('residual', OUT, { zeroDeg: angle }));
    const want = 0.4903325 * Math.abs(Math.cos((angle * Math.PI) / 180));
    yield { at: `${angle}°`, got: worstNm, want };
  }
}

/** Nothing but a support of one height, its feet so that the circle inside them is 1.5 m. */
const stand = (feetRadiusMm: number, legs: number, pivotHeightMm = 1000) =>
  balanced(rigOf({}, { rig: { pivotHeightMm }, balance: { feetRadiusMm, legs } })).tip;

/** What is left of the feet of a lever on its support. */
function margins(): NumberCase[] {
  const masses = { feetRadiusMm: 500, legs: 3, ballastKg: 0, baseKg: 1, armKg: 0 };
  const slid = rigOf(
    { slide: [0, 600] },
    { balance: { ...masses, payloadKg: 2, supportKg: 7 }, rig: { slide: { inclineDeg: 0 } } },
  );
  const arm = { payloadKg: 2, counterweightKg: 3, counterweightMm: 400, supportKg: 4 };
  const level = rigOf(
    { boom: [-90, 90] },
    { rig: { arm: { lengthMm: 1000 } }, balance: { ...masses, ...arm, workedOut: 'residual' } },
  );
  return [
    { at: 'slide', got: balanced(slid).tip.marginMm, want: 130 },
    { at: 'arm through level', got: balanced(level).tip.marginMm, want: 170 },
  ];
}

/** 3 kg at 1 m: twice the length, half the camera. */
const payloads = (): NumberCase[] =>
  [
    [1000, 3],
    [600, 5],
    [1500, 2],
    [2000, 1.5],
  ].map(([lengthMm, want]) => ({
    at: `${lengthMm} mm`,
    got:
      armOf(
        rigOf(
          { boom: [0, 0] },
          { rig: { arm: { lengthMm: lengthMm ?? 0 } }, balance: { ratedKg: 3, ratedMm: 1000 } },
        ),
      ).payloadAllowedKg ?? Number.NaN,
    want: want ?? Number.NaN,
  }));

const loads = (): NumberCase[] => {
  const kg = { payloadKg: 2, armKg: 1, counterweightKg: 6, baseKg: 1.5, ballastKg: 5, supportKg: 4 };
  const change = { balance: { ...kg, workedOut: 'residual' as const } };
  return [
    { at: 'with an arm', got: balanced(rigOf({ boom: [0, 0] }, change)).support.loadKg, want: 15.5 },
    { at: 'without', got: balanced(rigOf({ slide: [0, 0] }, change)).support.loadKg, want: 8.5 },
  ];
};

export function measureWorked(): Row[] {
  const seesaw = armOf(lever('place', [40, 1500, 0, 0, 30, 0])).counterweightMm;
  const infographic = armOf(lever('mass', [5 * POUNDS, 4 * FEET, 0, 0, 0, 2 * FEET]));
  // 0.4 N m needed through 5:1 at 90 %: 1.8 N m at the arm, by a payload on 1 m.
  const margin = armOf(lever('residual', [1.8 / 9.80665, 1000, 0, 0, 0, 0], { torqueNm: 0.6 })).motor;
  const tip = { quantity: 'lean that tips a rig over', reference: TIP, unit: '°' };
  return [
    relativeRow('place of the counterweight', LEVER, 'two levers', places()),
    relativeRow('mass of the counterweight', LEVER, 'two levers', masses()),
    relativeRow('place of the counterweight', SEESAW, 'the worked example', [
      { at: '30 kg', got: seesaw, want: 2000 },
    ]),
    relativeRow('mass of the counterweight', INFOGRAPHIC, 'the worked example', [
      { at: '2 ft', got: infographic.counterweightKg, want: 10 * POUNDS },
    ]),
    relativeRow('moments at the arm', LEVER, 'left, camera off, weight off, rear arm too short', moments()),
    relativeRow('torque and turns of the motor', MOTOR, 'BAL-03, and a boom by the arc', motors()),
    relativeRow('moment of an arm out of level', HINGE, 'ten angles', angles()),
    numberRow({ ...tip, regime: 'r 1.5, h 1, as printed', bound: 0.05 }, [
      { at: '3 legs', got: stand(3000, 3).leanDeg, want: 56.3 },
    ]),
    numberRow({ ...tip, regime: 'r 1.5, h 1, to 6 digits', bound: 5e-5 }, [
      { at: '3 legs', got: stand(3000, 3).leanDeg, want: 56.3099 },
    ]),
    relativeRow('circle inside the feet', EDGE, 'three feet at 500 mm', [
      { at: '3 legs', got: stand(500, 3).safeMm, want: 250 },
    ]),
    numberRow(
      {
        quantity: 'circle inside the feet',
        reference: HEXAGON,
        regime: 'six feet, as printed',
        bound: 5e-5,
        unit: 'mm',
      },
      [{ at: '6 legs', got: stand(1000, 6).safeMm, want: 866.0254 }],
    ),
    relativeRow('room until it tips over', EDGE, 'slide, and an arm through level', margins()),
    relativeRow('torque margin', MARGIN, '0.6 N m where 0.4 are needed', [
      { at: '0.5', got: margin.marginShare ?? Number.NaN, want: 0.5 },
    ]),
    relativeRow('payload allowed', SHORTER, '0.6 to 2 m', payloads()),
    relativeRow('load on the support', 'added by hand (computed)', 'with an arm and without', loads()),
  ];
}
