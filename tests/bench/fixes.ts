/** Fixes of a plan with ten findings: every way out of each, tried. */
import { remediesOf, remediesWith } from '../../src/engine/fixes/remedies.ts';
import { Trials } from '../../src/engine/fixes/trial.ts';
import { readPlan } from '../../src/engine/plan/parse.ts';
import { editAll } from '../../src/engine/plan/paths.ts';
import type { Keyframe, Plan } from '../../src/engine/plan/schema.ts';
import { Room } from '../../src/engine/room.ts';
import { schedule } from '../../src/engine/schedule.ts';
import { benchPlan } from './plans.ts';
import { type Figure, median, quantile } from './report.ts';

/** So many findings the plan has. */
const FINDINGS = 10;

const evenly = (keyframe: Keyframe): Keyframe => ({ ...keyframe, ease: { kind: 'linear' } });

/** The plan of the bench, with ramp, broken in ten ways at once. */
function brokenPlan(frames: number): Plan {
  const plan = benchPlan(frames, true);
  const { power, rig, exposure, move } = plan;
  const broken = editAll(plan, [
    ['start.date', '2026-04-01'],
    ['start.time', '18:40'],
    // The write takes as long as the interval.
    ['pacing.intervalS', 9],
    ['camera.writeS', 9],
    // The ramp ends too early, at a shutter that the cycle cuts short, under lamps that flicker.
    ['exposure.ramp.steps', exposure.ramp.steps.slice(0, 2)],
    ['exposure.filterStops', 3],
    ['exposure.shutterAngleMaxDeg', 60],
    ['lamps.mainsHz', '50'],
    // The slide is too short; all axes go evenly and in fine steps, so that none stands still on the way.
    ['move.tracks', move.tracks.map((track) => ({ ...track, keyframes: track.keyframes.map(evenly) }))],
    ['rig.axes', rig.axes.map((axis, i) => ({ ...axis, gearRatio: 97, travelMax: i === 1 ? 500 : 2000 }))],
    // Too few packs, too long a swap; a small buffer, a slow card, and too small.
    [
      'power.sources',
      power.sources.map((source, i) => ({
        ...source,
        energyWh: (99 * frames) / 86_400,
        count: i === 0 ? 3 : 200,
        swapS: i === 1 ? 45 : 0,
      })),
    ],
    ['camera.bufferBytes', 100e6],
    ['storage.cards.0.cardBytes', frames * 42e6 * 0.9],
    ['storage.cards.0.writeBytesPerS', 4e6],
    // The lens looks to where the sun sets.
    ['view.used', true],
    ['view.azimuthDeg', 260],
    ['view.altitudeDeg', 10],
  ]);
  const read = readPlan(broken);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const found = schedule(read.plan).findings.map(({ id }) => id);
  if (found.length !== FINDINGS) throw new Error(`findings: found ${found.join(', ')}; allowed: ${FINDINGS}`);
  return read.plan;
}

function timed(work: () => unknown): number {
  const started = performance.now();
  work();
  return performance.now() - started;
}

function figuresOf(frames: number, budgetMs: number, runs: number): Figure[] {
  const plan = brokenPlan(frames);
  const made = schedule(plan);
  // Memory used before, as the page keeps it for this.
  const room = new Room();
  const all = () => [...remediesOf(plan, made, { room })];
  all();
  const trials = new Trials(plan, made);
  const remedies = [...remediesWith(trials)];
  const helped = remedies.filter(({ fixes }) => fixes.length > 0).length;
  const ms = Array.from({ length: runs }, () => timed(all));
  const what = `all fixes of ${frames.toLocaleString('en')} frames with ${FINDINGS} findings`;
  return [
    { what: `${what}: median`, value: median(ms), unit: 'ms', budget: budgetMs },
    { what: '  95th percentile', value: quantile(ms, 0.95), unit: 'ms' },
    { what: '  plans tried', value: trials.count, unit: '' },
    { what: '  fixes offered', value: remedies.reduce((sum, { fixes }) => sum + fixes.length, 0), unit: '' },
    // Turned round, so that more than the budget is worse.
    { what: '  findings that nothing helps', value: remedies.length - helped, unit: '' },
  ];
}

export const fixesFigures = (): Figure[] => [...figuresOf(500, 100, 20), ...figuresOf(86_400, 1000, 5)];
