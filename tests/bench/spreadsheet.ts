/**
 * The same 8 columns in a general-purpose spreadsheet engine, as one would plan a shoot in a spreadsheet:
 * elapsed time, share of the run, position, steps, move, rig lane, spare, energy left.
 *
 * HyperFormula is used here alone, for comparison, under its GPL-3.0 terms; nothing of it is in the page.
 */
import { HyperFormula } from 'hyperformula';
import { readPlan } from '../../src/engine/plan/parse.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { type Figure, median } from './report.ts';

const FRAMES = 86_400;

/** Inputs, one a row of the sheet `In`. */
const IN = {
  intervalS: 20,
  frames: FRAMES,
  travelMm: 900,
  stepsPerMm: 80,
  speed: 20,
  accel: 40,
  holdS: 0.6,
  settleS: 1,
  cameraS: 1.4,
  guardS: 0.5,
  fullWh: 19_800,
  periodW: 3.5,
  extraJ: 2.6,
  movingW: 4.5,
};
type Input = keyof typeof IN;
const cell = (name: Input): string => `In!$B$${Object.keys(IN).indexOf(name) + 1}`;

/** One row of formulas; `r` counts from 1. */
function formulas(r: number): string[] {
  const distance = `(ABS(D${r + 1}-D${r})/${cell('stepsPerMm')})`;
  const ramp = `${distance}<=${cell('speed')}^2/${cell('accel')}`;
  const short = `2*SQRT(${distance}/${cell('accel')})`;
  const long = `${distance}/${cell('speed')}+${cell('speed')}/${cell('accel')}`;
  const drawn = `(${cell('periodW')}*${cell('intervalS')}+${cell('extraJ')}+${cell('movingW')}*E${r})/3600`;
  return [
    `=(ROW()-1)*${cell('intervalS')}`,
    `=(ROW()-1)/(${cell('frames')}-1)`,
    `=${cell('travelMm')}*(3*B${r}^2-2*B${r}^3)`,
    `=ROUND(C${r}*${cell('stepsPerMm')},0)`,
    r < FRAMES ? `=IF(${ramp},${short},${long})` : '=0',
    `=${cell('holdS')}+IF(E${r}=0,0,E${r}+${cell('settleS')})`,
    `=${cell('intervalS')}-${cell('guardS')}-MAX(F${r},${cell('cameraS')})`,
    r === 1 ? `=${cell('fullWh')}` : `=H${r - 1}-${drawn.replaceAll(`E${r}`, `E${r - 1}`)}`,
  ];
}

/** The same shoot for `schedule()`. */
function samePlan(intervalS: number): Plan {
  const parsed = readPlan({
    format: 'escapement-plan',
    version: 1,
    pacing: { workedOut: 'event', intervalS, clipLengthS: FRAMES / 25 },
    exposure: { shutterS: 0.5 },
    camera: { shutterLagS: 0.1, writeS: 0.8 },
    rig: { axes: [{ name: 'Slide', source: 'Pack', holdW: 1.5, moveW: 6 }] },
    move: {
      mode: 'moveShootMove',
      settleS: 1,
      tracks: [
        {
          axis: 'Slide',
          keyframes: [
            { share: 0, position: 0 },
            { share: 1, position: 900 },
          ],
        },
      ],
    },
    power: {
      temperatureC: 25,
      sources: [{ name: 'Pack', energyWh: 19_800 }],
      loads: [{ name: 'Camera', source: 'Pack', idleW: 2, exposingW: 4, writingW: 4 }],
    },
    storage: { cards: [{ name: 'Card', cardBytes: 100_000_000_000_000 }] },
  });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.plan;
}

function timed<T>(work: () => T): [ms: number, result: T] {
  const started = performance.now();
  const result = work();
  return [performance.now() - started, result];
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-6 * Math.max(1, Math.abs(b));

/** Both must have worked out the same shoot, or the comparison is of no worth. */
function compare(sheet: HyperFormula, intervalS: number): void {
  const { columns } = schedule(samePlan(intervalS));
  const [slide] = columns.axes;
  const [pack] = columns.sources;
  const row = FRAMES - 2;
  const ours = [
    columns.elapsedS[row],
    undefined,
    undefined,
    slide?.steps[row],
    columns.moveS[row],
    columns.rigS[row],
    columns.spareS[row],
    pack?.leftWh[row],
  ];
  ours.forEach((value, col) => {
    const theirs = sheet.getCellValue({ sheet: 1, col, row });
    if (value !== undefined && !near(Number(theirs), value)) {
      throw new Error(`column ${col + 1}: the sheet has ${theirs}, the engine ${value}`);
    }
  });
}

/** Building and editing, the sheet against the engine. */
export function spreadsheetFigures(): Figure[] {
  const rows = Array.from({ length: FRAMES }, (_, i) => formulas(i + 1));
  const [buildMs, sheet] = timed(() =>
    HyperFormula.buildFromSheets(
      { In: Object.entries(IN), Run: rows },
      { licenseKey: 'gpl-v3', maxRows: FRAMES },
    ),
  );
  compare(sheet, 20);
  const editMs = [21, 22, 20].map(
    (intervalS) => timed(() => sheet.setCellContents({ sheet: 0, col: 1, row: 0 }, intervalS))[0],
  );
  compare(sheet, 20);
  const engineMs = Array.from({ length: 30 }, (_, i) => timed(() => schedule(samePlan(20 + (i % 3))))[0]);
  sheet.destroy();
  return [
    { what: '86,400 rows of 8 formulas in a spreadsheet engine: build', value: buildMs, unit: 'ms' },
    { what: '  one input edited', value: median(editMs), unit: 'ms' },
    { what: '  schedule() of the same shoot, every column', value: median(engineMs), unit: 'ms' },
    { what: '  spreadsheet build / schedule()', value: buildMs / median(engineMs), unit: '×' },
    { what: '  spreadsheet edit / schedule()', value: median(editMs) / median(engineMs), unit: '×' },
  ];
}
