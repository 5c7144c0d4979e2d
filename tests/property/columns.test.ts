import fc from 'fast-check';
import { test, vi } from 'vitest';
import { defaultPlan } from '../../src/engine/plan/parse.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';
import { schedule } from '../../src/engine/schedule.ts';
import type { Schedule } from '../../src/engine/schedule-types.ts';
import { close, closeAll, must, near, same } from './close.ts';
import { type Judged, judged } from './judged.ts';
import { type Case, plans, rigPlans } from './plans.ts';
import { PATIENCE_MS, settings } from './settings.ts';
import { isAimed } from './slow/motion-findings.ts';
import { placed, positionAt, restingPosition } from './slow/position.ts';
import { oscillatorOf } from './slow/ring.ts';
import { elapsedOf, frameBytes, packWh, usableBytes } from './slow/run.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const property = (check: (given: Judged) => void, drawn = plans) =>
  fc.assert(
    fc.property(drawn, (given) => check(judged(given))),
    settings(),
  );

/** On plans of every kind, and on short ones with a rig. */
const everywhere = (check: (given: Judged) => void) => {
  property(check);
  property(check, rigPlans);
};

/** What a column of pixels cannot hold any more. */
const SMALLEST = 2 ** -126;

const CYCLE = ['elapsedS', 'intervalS', 'exposureS', 'holdS', 'cameraS', 'moveS', 'settleS', 'rigS'] as const;

test('every column of the cycle agrees with a slow computation', () => {
  everywhere(({ run, plan, slow: { frames } }) => {
    const { columns } = run;
    // Where two ways of moving end as soon but for a rounding, either may be taken.
    if (frames.some((frame) => frame.tied)) return;
    // An ill-conditioned sum of phasors has fewer places.
    const { omega, damping } = oscillatorOf(plan);
    const noiseS = frames.map(({ ringPx, summedPx }) =>
      ringPx > 0 ? (1e-2 * summedPx) / ringPx / (omega * damping) : 0,
    );
    for (const name of CYCLE)
      closeAll(
        columns[name],
        frames.map((frame) => frame[name]),
        name,
        (k) => (name === 'settleS' || name === 'rigS' ? (noiseS[k] ?? 0) : 0),
      );
    const sizes = frames.map((frame, k) => frame.intervalS + frame.cameraS + frame.rigS + (noiseS[k] ?? 0));
    closeAll(
      columns.spareS,
      frames.map((frame) => frame.spareS),
      'spareS',
      (k) => sizes[k] ?? 0,
    );
    for (const [i, axis] of columns.axes.entries()) {
      closeAll(
        axis.moveS,
        frames.map((frame) => frame.axisMoveS[i] ?? Number.NaN),
        `axes[${i}].moveS`,
      );
    }
    same(
      columns.ringPx === null,
      !(plan.move.mode === 'moveShootMove' && plan.move.settleBy === 'ringing'),
      'ringPx',
    );
    if (columns.ringPx === null) return;
    for (const [k, { ringPx, summedPx }] of frames.entries())
      near(columns.ringPx[k], ringPx, `ringPx[${k}]`, 1e-6 * ringPx + 1e-9 * summedPx + SMALLEST);
  });
});

/** @param elapsed - seconds to each frame, and to the end of the last interval */
function checkPositions(plan: Plan, run: Schedule, elapsed: readonly number[]): void {
  const { frames } = run.totals;
  for (const [i, axis] of plan.rig.axes.entries()) {
    const columns = run.columns.axes[i];
    same(columns?.name, axis.name, `axes[${i}].name`);
    if (!columns || isAimed(plan, axis)) continue;
    const perUnit = (axis.fullStepsPerTurn * axis.microsteps * axis.gearRatio) / axis.unitsPerTurn;
    close(columns.stepsPerUnit, perUnit, `axes[${i}].stepsPerUnit`);
    const track = plan.move.tracks.find((candidate) => candidate.axis === axis.name);
    const reach = track ? Math.max(...track.keyframes.map((keyframe) => Math.abs(keyframe.position))) : 0;
    const list = track && placed(track, elapsed);
    for (let k = 0; k < frames; k += 1) {
      const at = plan.move.mode === 'still' ? 0 : k;
      const step = columns.steps[k] ?? Number.NaN;
      const slack = 0.5 + 1e-6 + 1e-8 * reach * perUnit;
      // Where a curve stands upright, the last place of the frame's share decides: then any place nearby will do.
      const place = (frame: number) =>
        (track && list ? positionAt(track, list, frame, frames) : restingPosition(axis)) * perUnit;
      if (Math.abs(step - place(at)) <= slack) continue;
      const [a, b] = [place(at * (1 - 1e-14)), place(at * (1 + 1e-14))];
      const around = step >= Math.min(a, b) - slack && step <= Math.max(a, b) + slack;
      if (!around) throw new Error(`axes[${i}].steps[${k}]: ${step}, wanted ${place(at)}`);
    }
  }
}

test('every position is the whole step nearest to where its track is', () => {
  everywhere(({ plan, run, slow }) => checkPositions(plan, run, elapsedOf(slow)));
});

/** At dusk, from shutters of 1/60 s to those of 8 s that a trigger waits for: a case's own rig, keyframes at times. */
function atDusk({ plan }: Case): Plan {
  const tracks = plan.move.tracks.map((track) => ({
    ...track,
    keyframes: track.keyframes.map((keyframe, i) => ({
      ...keyframe,
      at: 'time' as const,
      timeS: 100 * i + (keyframe.timeS % 100),
    })),
  }));
  const { exposure } = defaultPlan();
  const steps = [{ setting: 'shutter' as const, to: 8, step: 'third' as const, by: 'camera' as const }];
  return {
    ...plan,
    start: { ...plan.start, date: '2026-05-02', tiedTo: 'sky', event: 'sunset', offsetMin: 15 },
    place: { ...plan.place, zone: 'Europe/Lisbon', latitudeDeg: 38.7, longitudeDeg: -9.4 },
    light: { ...plan.light, kind: 'sky' },
    pacing: { ...plan.pacing, workedOut: 'clip', intervalS: 15, eventS: 1500 },
    trigger: { ...plan.trigger, stepS: 1, minS: 1, counts: 'endToStart' },
    exposure: {
      ...exposure,
      shutterS: 1 / 60,
      apertureF: 5.6,
      ramp: { ...exposure.ramp, used: true, steps },
    },
    move: { ...plan.move, tracks },
  };
}

test('where intervals grow with the exposure, keyframes stand at their times', () => {
  let grown = 0;
  fc.assert(
    fc.property(rigPlans.map(atDusk), (plan) => {
      const run = schedule(plan);
      const { elapsedS, intervalS } = run.columns;
      const [first, last] = [intervalS[0] as number, intervalS.at(-1) as number];
      if (last > first) grown += 1;
      checkPositions(plan, run, [...elapsedS, (elapsedS.at(-1) as number) + last]);
    }),
    settings(0.3),
  );
  must(grown > 0, 'no interval grew');
});

test('there and back: the second half mirrors the first to the step', () => {
  everywhere(({ plan, run }) => {
    for (const track of plan.move.tracks) {
      const axis = plan.rig.axes.find(({ name }) => name === track.axis);
      if (!track.thereAndBack || (axis && isAimed(plan, axis))) continue;
      const steps = run.columns.axes.find((axis) => axis.name === track.axis)?.steps ?? new Int32Array();
      for (let k = 0; k < steps.length; k += 1)
        same(steps[k], steps[steps.length - 1 - k], `${track.axis}, frame ${k + 1}`);
    }
  });
});

test('energy: what is drawn, what is left, and swaps before the reserve but not sooner', () => {
  property(({ plan, run, slow }) => {
    for (const [i, source] of plan.power.sources.entries()) {
      const summary = run.sources[i];
      const left = run.columns.sources[i]?.leftWh;
      if (!summary || !left) throw new Error(`source ${i} is missing`);
      const drawn = slow.frames.map((frame) => frame.drawnWh[i] ?? Number.NaN);
      const total = drawn.reduce((sum, wh) => sum + wh, 0);
      const seconds = slow.frames.reduce((sum, frame) => sum + frame.periodS, 0);
      close(summary.drawnWh, total, `${source.name}: drawnWh`, 1e-6);
      close(summary.meanW, (total * 3600) / seconds, `${source.name}: meanW`, 1e-6);
      if (source.kind === 'mains') {
        must(
          left.every((wh) => wh === Number.POSITIVE_INFINITY),
          'mains runs down',
        );
        same(summary.needed, 1, 'mains: needed');
        same(summary.shortAtFrame, null, 'mains: shortAtFrame');
        continue;
      }
      const full = packWh(source, plan.power.temperatureC);
      const usable = full - full * source.reserveShare;
      close(summary.usableWh ?? Number.NaN, usable, `${source.name}: usableWh`);
      // Follow the engine's swaps: before each the pack must not have lasted, and up to it it must have.
      const near = 1e-9 * (usable + 1e-6);
      const lefts: number[] = [];
      let used = 0;
      let packs = 1;
      let short: number | null = null;
      for (const [k, wh] of drawn.entries()) {
        if (summary.swapFrames.includes(k + 1)) {
          must(used + wh > usable - near, `${source.name}: swapped too soon, before frame ${k + 1}`);
          packs += 1;
          used = 0;
        } else if (used + wh > usable + near) {
          must(
            packs === source.count || k === 0 || used === 0,
            `${source.name}: no swap before frame ${k + 1}`,
          );
          short ??= k + 1;
        }
        lefts.push(Math.max(0, full - used));
        used += wh;
      }
      closeAll(left, lefts, `${source.name}: leftWh`, () => full);
      same(packs, 1 + summary.swapFrames.length, `${source.name}: packs`);
      if (short !== null)
        must(
          summary.shortAtFrame !== null && summary.shortAtFrame <= short,
          `${source.name}: short at ${short}`,
        );
      if (summary.shortAtFrame !== null)
        must(
          packs === source.count || usable < Math.max(...drawn) + near,
          `${source.name}: short with packs left`,
        );
      same(
        summary.needed > source.count || usable < Math.max(...drawn) - near,
        summary.shortAtFrame !== null,
        `${source.name}: short and needed agree`,
      );
    }
    const all = slow.frames.reduce((sum, frame) => sum + frame.drawnWh.reduce((a, b) => a + b, 0), 0);
    close(run.totals.energyWh, all, 'energyWh', 1e-6);
  });
});

test('storage: every frame on a card with room, changed no sooner than it must be', () => {
  property(({ plan, run }) => {
    const bytes = frameBytes(plan);
    const { frames } = run.totals;
    const { cards } = plan.storage;
    const { cardIndex, cardBytes } = run.columns;
    close(run.totals.frameBytes, bytes, 'frameBytes');
    close(run.totals.storageBytes, bytes * frames, 'storageBytes');
    close(run.totals.copiesBytes, bytes * frames * plan.storage.copies, 'copiesBytes');
    // A card is judged by whole frames, with a billionth of a frame to spare.
    const holds = cards.map((card) => Math.floor(usableBytes(card) / bytes + 1e-9));
    const changes: number[] = [];
    let index = 0;
    let onCard = 0;
    let full: number | null = null;
    for (let k = 0; k < frames; k += 1) {
      if (onCard >= (holds[index] ?? 0)) {
        const next = holds.findIndex((room, i) => i > index && room > 0);
        if (next !== -1) {
          if (k > 0) changes.push(k + 1);
          index = next;
          onCard = 0;
        } else full ??= k + 1;
      }
      if (full === null) {
        onCard += 1;
        if (cardIndex[k] !== index) same(cardIndex[k], index, `cardIndex[${k}]`);
        if (cardBytes[k] !== onCard * bytes) close(cardBytes[k], onCard * bytes, `cardBytes[${k}]`);
      }
    }
    const finding = run.findings.find(({ id }) => id === 'card-full');
    same(finding?.frame ?? null, full, 'card-full');
    const told = run.events.filter(({ kind }) => kind === 'cardChange').map(({ frame }) => frame);
    same(told.join(' '), changes.join(' '), 'card changes');
    const fitted = (full ?? frames + 1) - 1;
    close(
      run.cards.reduce((sum, card) => sum + card.usedBytes, 0),
      fitted * bytes,
      'usedBytes of all cards',
    );
  });
});

test('buffer: what comes in and what the card takes', () => {
  property(({ plan, run }) => {
    const bytes = frameBytes(plan);
    const room = Math.max(plan.camera.bufferBytes, bytes);
    let waiting = 0;
    let full: number | null = null;
    let unsure = false;
    const levels: number[] = [];
    for (let k = 0; k < run.totals.frames; k += 1) {
      if (Math.abs(waiting + bytes - room) < 1e-9 * room && plan.camera.bufferBytes > bytes) unsure = true;
      if (waiting + bytes > room * (1 + 1e-12)) full ??= k + 1;
      waiting = Math.min(room, waiting + bytes);
      levels.push(waiting);
      const rate = plan.storage.cards[run.columns.cardIndex[k] ?? 0]?.writeBytesPerS ?? Number.NaN;
      waiting = Math.max(0, waiting - rate * run.totals.intervalS);
    }
    closeAll(run.columns.bufferBytes, levels, 'bufferBytes', () => room);
    const finding = run.findings.find(({ id }) => id === 'buffer-fills');
    if (!unsure) same(finding?.frame ?? null, full, 'buffer-fills');
  });
});

test('totals are what their columns say', () => {
  property(({ plan, run, slow }) => {
    const { totals, columns } = run;
    const { frames } = slow;
    const lanes = frames.map((frame) => Math.max(frame.cameraS, frame.rigS));
    const spares = frames.map((frame) => frame.spareS);
    const scale = slow.frames[0]?.intervalS ?? 1;
    same(totals.frames, frames.length, 'frames');
    close(totals.shortestIntervalS, Math.max(...lanes) + plan.cycle.guardS, 'shortestIntervalS');
    close(totals.tightestSpareS, Math.min(...spares), 'tightestSpareS', scale + Math.max(...lanes));
    same(columns.spareS[totals.tightestFrame - 1], Math.min(...columns.spareS), 'tightestFrame');
    close(lanes[totals.longestCycleFrame - 1], Math.max(...lanes), 'longestCycleFrame');
    close(columns.elapsedS.at(-1), totals.eventDurationS, 'last frame');
    close(
      Date.parse(totals.lastFrameAt) - Date.parse(totals.firstFrameAt),
      totals.eventDurationS * 1000,
      'first to last',
      1e9 * 2,
    );
    same(Date.parse(totals.firstFrameAt), run.startMs, 'firstFrameAt');
  });
});
