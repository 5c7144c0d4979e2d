import { describe, expect, test } from 'vitest';
import { keyOf } from '../../src/engine/findings/types.ts';
import { newSource } from '../../src/engine/plan/parse.ts';
import { type Edit, editAll } from '../../src/engine/plan/paths.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { differencesOf } from '../../src/outputs/compare.ts';
import { testPlan } from '../app/plan.ts';

const plain = (text: string | undefined) => text?.replaceAll('\u00a0', ' ').replaceAll('\u2212', '-');
const compare = (a: Plan, b: Plan) => differencesOf(a, schedule(a), b, schedule(b));
const plan = testPlan();
const changed = (...edits: Edit[]) => editAll(plan, edits);

describe('two plans', () => {
  test('that are alike differ in nothing', () => {
    const { inputs, figures, margins, findings, verdicts } = compare(plan, testPlan());
    expect([inputs, figures, margins]).toEqual([[], [], []]);
    expect(findings).toEqual({ gone: [], came: [], changed: [] });
    expect(verdicts.was).toBe(verdicts.now);
  });

  test('show what was changed, under its title in the table of fields, and what follows', () => {
    const { inputs, figures, margins } = compare(plan, changed(['pacing.intervalS', 24]));
    expect(inputs).toEqual([
      { path: 'pacing.intervalS', title: 'Interval', unit: 's', of: '', was: 12, now: 24 },
    ]);
    const texts = new Map(figures.map(({ label, was, now }) => [label, `${plain(was)}, ${plain(now)}`]));
    expect(texts.get('Frames')).toBe('301, 151');
    expect(texts.get('Clip')).toBe('12.04 s, 6.04 s');
    expect(texts.has('First frame')).toBe(false);
    expect(margins.map(({ label }) => label)).toContain('Interval');
  });

  test('name the member of a list that a field belongs to', () => {
    const { inputs } = compare(
      plan,
      changed(
        ['rig.axes.1.maxSpeed', 3],
        ['move.tracks.0.keyframes.1.position', 250],
        ['power.sources.0.count', 7],
      ),
    );
    expect(inputs.map(({ of, was, now }) => [of, was, now])).toEqual([
      ['Pan', plan.rig.axes[1]?.maxSpeed, 3],
      ['Slide, 2', 300, 250],
      ['Rig pack', 1, 7],
    ]);
  });

  test('say what only one of them has', () => {
    const { inputs, figures } = compare(
      plan,
      changed(['power.sources', [...plan.power.sources, { ...newSource(), name: 'Spare pack' }]]),
    );
    expect(inputs).toHaveLength(1);
    expect(inputs[0]?.title).toBe('Sources');
    expect(figures.find(({ label }) => label === 'Spare pack, needed')?.was).toBe('–');
    const still = compare(plan, changed(['move.mode', 'still'], ['move.tracks', []])).margins;
    const travel = still.find(({ label }) => label === 'Slide travel');
    expect([travel?.was === '–', travel?.now]).toEqual([false, '–']);
  });

  test('tell findings that came from findings that went, and give both verdicts', () => {
    const short = changed(['pacing.intervalS', 0.5]);
    const { findings, verdicts } = compare(plan, short);
    const before = new Set(schedule(plan).findings.map(keyOf));
    const after = new Set(schedule(short).findings.map(keyOf));
    expect(findings.came.map(keyOf)).toEqual([...after].filter((key) => !before.has(key)));
    expect(findings.gone.map(keyOf)).toEqual([...before].filter((key) => !after.has(key)));
    expect(findings.came.map(({ id }) => id)).toContain('cycle-overrun');
    expect(verdicts.was).toMatch(/^Shootable/);
    expect(verdicts.now).toMatch(/^Not shootable/);
    const back = compare(short, plan);
    expect(back.findings.gone).toEqual(findings.came);
    expect(back.findings.came).toEqual(findings.gone);
  });
});
