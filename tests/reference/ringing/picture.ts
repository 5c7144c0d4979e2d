/** How far the picture shifts, against published pixel values and an arm that is bent and projected by hand. */
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { pixelsPerUnit } from '../../../src/engine/ringing/pixels.ts';
import { axisOf, plainPlan, type Some } from '../plans.ts';
import { type NumberCase, numberRow, type Row, relative } from '../rows.ts';

/** 6000 px of 6 um: 36 mm. */
const planOf = (change: Some<Plan>): Plan =>
  plainPlan(2, 10, {
    ...change,
    camera: { focalLengthMm: 50, sensorWidthMm: 36, imageWidthPx: 6000, ...change.camera },
  });

const PAN = axisOf({ kind: 'pan', unit: 'deg' });
const SLIDE = axisOf({ kind: 'slide', unit: 'mm' });

/** Pixels of a slide whose camera sways by a millimetre without nodding: what the subject adds. */
function parallaxPx(distanceMm: number): number {
  const subject = { rightMm: 0, forwardMm: distanceMm, heightMm: 1200 };
  const rig = { pivotHeightMm: 1200 };
  const of = (used: boolean) => pixelsPerUnit(planOf({ rig, subject: { ...subject, used } }), SLIDE);
  return of(true) - of(false);
}

/** Deflection and slope at the tip of a cantilever loaded there: its curvature, P (L - s), integrated twice. */
function tipOf(lengthMm: number): { deflection: number; slope: number } {
  const slices = 20_000;
  const ds = lengthMm / slices;
  let [slope, deflection] = [0, 0];
  for (let n = 0; n < slices; n += 1) {
    const bend = (lengthMm - (n + 0.5) * ds) * ds;
    deflection += (slope + bend / 2) * ds;
    slope += bend;
  }
  return { deflection, slope };
}

/** Where a pinhole shows a point straight ahead, once the camera has sunk by `sinkMm` and nods down by `slope`. */
function shownPx(distanceMm: number, sinkMm: number, slope: number, focalPx: number): number {
  const up = sinkMm * Math.cos(slope) + distanceMm * Math.sin(slope);
  const ahead = distanceMm * Math.cos(slope) - sinkMm * Math.sin(slope);
  return (focalPx * up) / ahead;
}

function* bentArms(): Generator<NumberCase> {
  const sinkMm = 0.01;
  for (const flexMm of [400, 1000, 2500]) {
    for (const distanceMm of [600, 1200, 5000]) {
      const tip = tipOf(flexMm);
      const want = shownPx(distanceMm, sinkMm, (tip.slope / tip.deflection) * sinkMm, (50 * 6000) / 36);
      const plan = planOf({
        rig: { pivotHeightMm: 1000 },
        subject: { used: true, rightMm: 0, forwardMm: distanceMm, heightMm: 1000 },
        ringing: { flexMm },
      });
      yield { at: `${flexMm} mm, ${distanceMm} mm`, got: pixelsPerUnit(plan, SLIDE) * sinkMm, want };
    }
  }
}

export const measurePicture = (): Row[] => [
  numberRow(
    {
      quantity: 'shift of the picture',
      reference: 'OPT-04, OPT-05: f_px tan(angle), f dx / Z (computed)',
      regime: '0.1 degree of pan at 50 and 24 mm; 10 mm at 2 m; to 5 and 4 digits',
      bound: 1e-4,
      unit: 'relative',
    },
    [
      { at: 'pan 0.1 deg, 50 mm', got: 0.1 * pixelsPerUnit(planOf({}), PAN), want: 14.544 },
      {
        at: 'pan 1 deg, 24 mm, small angle',
        got: pixelsPerUnit(planOf({ camera: { focalLengthMm: 24 } }), PAN),
        // f_px tan(1 deg) = 69.820; without the tangent's third order, 1e-4 of it, it is f_px times one degree.
        want: 69.82 / (1 + (Math.PI / 180) ** 2 / 3),
      },
      { at: 'slide 10 mm at 2 m', got: 10 * parallaxPx(2000), want: 41.67 },
    ],
    relative,
  ),
  numberRow(
    {
      quantity: 'shift of the picture of a bent arm',
      reference: 'cantilever’s curvature integrated twice, then a pinhole (computed)',
      regime: '0.01 mm at the tip, arms of 0.4 to 2.5 m, subject at 0.6 to 5 m',
      bound: 1e-6,
      unit: 'relative',
    },
    bentArms(),
    relative,
  ),
];
