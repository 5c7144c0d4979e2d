import { describe, expect, test } from 'vitest';
import { remediesOf } from '../../src/engine/fixes/remedies.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { askedBy, fixesJson } from '../../src/outputs/fixes-json.ts';
import { FEW } from '../engine/fixes/own-ways.ts';
import { BARE, production, shotOf } from '../engine/sheet/plans.ts';
import { loadOf, plainPlan, sourceOf } from '../reference/plans.ts';

const draws = (source: string) =>
  loadOf({ name: `${source} load`, source, idleW: 0, exposingW: 0, writingW: 0, alwaysOnW: 2 });
// 1000 s at 2 W are 0.556 Wh of 0.1 Wh.
const plan = plainPlan(100, 10, {
  title: 'Two packs',
  camera: { writeS: 12 },
  power: {
    sources: ['Camera: A', 'Rig'].map((name) => sourceOf({ name, energyWh: 0.1, reserveShare: 0, swapS: 0 })),
    loads: ['Camera: A', 'Rig'].map(draws),
  },
});
const made = schedule(plan);
const remedies = [...remediesOf(plan, made, { ways: FEW })];
const printed = JSON.parse(fixesJson(plan, made, remedies));

describe('fixes as JSON', () => {
  test('name a finding by its id, and by what it is about where there are several', () => {
    expect(askedBy(made.findings)).toEqual([
      'camera-not-ready',
      'source-short:Camera: A',
      'source-short:Rig',
    ]);
    expect(printed.findings.map(({ id }: { id: string }) => id)).toEqual(askedBy(made.findings));
  });

  test('have the findings as the schedule says them', () => {
    const said = ({ severity, message, frame, at }: (typeof made.findings)[number]) => ({
      severity,
      message,
      frame,
      at,
    });
    expect(printed.findings.map(said)).toEqual(made.findings.map(said));
    expect(printed).toMatchObject({ title: 'Two packs', verdict: made.verdict });
  });

  test('have every fix, counted from 1, with its cost in words and in figures', () => {
    for (const [i, { fixes, whyNone }] of remedies.entries()) {
      expect(printed.findings[i].whyNone).toBe(whyNone);
      expect(printed.findings[i].fixes).toEqual(
        fixes.map(({ kind, label, changes, alsoFixes, cost: { text, parts, ...costs } }, n) => ({
          n: n + 1,
          kind,
          label,
          cost: text,
          costs,
          figures: parts.flatMap(({ of }) =>
            of === null ? [] : [`fix.${printed.findings[i].id}.${n + 1}.cost.${of}`],
          ),
          changes,
          alsoFixes,
        })),
      );
    }
    expect(remedies.some(({ fixes }) => fixes.length > 0)).toBe(true);
  });

  test('have the findings of a sheet, with the names of what they state', () => {
    const short = production({ ...BARE, shots: [shotOf({ frames: 25 })] });
    expect(JSON.parse(fixesJson(short, schedule(short), [])).sheetFindings).toMatchObject([
      {
        id: 'last-short',
        exposure: 13,
        figures: ['sheet.findings.last-short.actionExposure', 'sheet.action.1.frames'],
      },
    ]);
    expect(printed.sheetFindings).toBe(undefined);
  });
});
