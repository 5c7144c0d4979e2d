/** What is expected to be said of the picture, the aim, the ringing and the balance. */
import type { Severity } from '../../../src/engine/findings/types.ts';
import type { Judged } from '../judged.ts';
import { actingAxis, armDeg, type Positions, positionsAt } from './camera.ts';
import { above, type Expected, either, firstOf, sure, type Table, type Verdict } from './expected.ts';
import { rateOf, toDouble } from './fraction.ts';
import { distanceTo, excusedPx, takesPart } from './image.ts';
import {
  aheadOf,
  armMoment,
  atMotor,
  insideFeetMm,
  offMiddleMm,
  onSupportKg,
  slowCounterweight,
} from './masses.ts';
import { oscillatorOf } from './ring.ts';
import { quietMatters } from './run.ts';

// Columns of pixels have seven places.
const HAIR_PX = 1e-5;

function picture(judged: Judged, table: Table): void {
  const { plan, slow } = judged;
  const { subject, move, camera, clip } = plan;
  table.set('motion-blur', 'no');
  table.set('panning-fast', 'no');
  if (!subject.used || move.mode === 'still' || !takesPart(judged)) return;
  const moved = judged.images;
  if (move.mode === 'continuous') {
    const blurs = moved.map(({ subjectPx, backgroundPx }, k): Expected => {
      const { exposureS, intervalS } = slow.frames[k] ?? { exposureS: 0, intervalS: 1 };
      const over = (px: number | null) =>
        px === null ? 'open' : above((px * exposureS) / intervalS, subject.blurMaxPx, HAIR_PX);
      return either(over(subjectPx), over(backgroundPx));
    });
    table.set('motion-blur', firstOf(blurs));
  }
  const framesAcross = toDouble(rateOf(clip.frameRate)) * subject.crossingMinS;
  const most = (camera.imageWidthPx * clip.holdFrames) / framesAcross;
  table.set(
    'panning-fast',
    firstOf(moved.map(({ backgroundPx: px }) => (px === null ? 'open' : above(px, most, HAIR_PX)))),
  );
}

function aim(judged: Judged, table: Table): void {
  const { plan } = judged;
  table.set('aim-out-of-limits', 'no');
  if (!plan.subject.used || !plan.subject.aimed || plan.rig.axes.length === 0) return;
  const excused = excusedPx(judged);
  const misses = judged.images.map((image): Expected => {
    const distance = distanceTo(image);
    if (distance < 0.99) return 'no';
    return distance < 1.01 ? 'open' : above(image.offPx, excused, HAIR_PX);
  });
  table.set('aim-out-of-limits', firstOf(misses));
}

function ringing({ plan, slow }: Judged, table: Table): void {
  const { measuredSettleS, tolerancePx } = plan.ringing;
  const { mode, settleBy, quiet } = plan.move;
  table.set('not-settled', 'no');
  table.set('quiet-move', 'no');
  if (mode !== 'moveShootMove' || settleBy !== 'ringing') return;
  if (measuredSettleS !== null) {
    const { omega, damping } = oscillatorOf(plan);
    // Nobody times to the millisecond.
    const most = tolerancePx * Math.exp(damping * omega * (measuredSettleS + 0.001));
    const short = slow.frames.map(({ ringPx, summedPx }) =>
      either(above(ringPx, most, HAIR_PX), above(ringPx + 1e-9 * summedPx, most, HAIR_PX)),
    );
    table.set('not-settled', firstOf(short, 2));
  }
  if (!quietMatters(plan) || quiet) return;
  const longest = (lane: 'rigS' | 'rigOtherwiseS') =>
    Math.max(...slow.frames.map((frame) => Math.max(frame[lane], frame.cameraS)));
  const tied = slow.frames.some((frame) => frame.tied);
  table.set('quiet-move', tied ? 'open' : above(longest('rigS') - longest('rigOtherwiseS'), 0.05, 1e-5));
}

/** Positions at every frame, and at moments between them where arm and slide go far. */
function moments({ plan, run }: Judged): { at: number; positions: Positions }[] {
  const list: { at: number; positions: Positions }[] = [];
  for (let k = 0; k < run.totals.frames; k += 1) {
    const positions = positionsAt(plan, run.columns.axes, k);
    list.push({ at: k, positions });
    if (k + 1 === run.totals.frames) continue;
    const next = positionsAt(plan, run.columns.axes, k + 1);
    const turn = Math.abs((armDeg(plan, next) ?? 0) - (armDeg(plan, positions) ?? 0));
    const pieces = Math.min(400, Math.ceil(turn));
    for (let i = 1; i < pieces; i += 1) {
      const at = k + i / pieces;
      list.push({ at, positions: positionsAt(plan, run.columns.axes, at) });
    }
  }
  return list;
}

/** A value over two limits, at frames and between them: where it passes the higher one it is a stop. */
function worstOf(values: readonly { at: number; value: number }[], warns: number, stops: number): Verdict {
  // Between two of the moments looked at, half a degree apart, it may be a little more.
  const most = values.reduce((max, { value }) => Math.max(max, value), 0);
  const fails = above(most, stops, 1e-4);
  const is = above(most, warns, 1e-4);
  if (is !== 'yes' || fails === 'open') return { is };
  const severity: Severity = fails === 'yes' ? 'stop' : 'warning';
  const atFrames = values.filter(({ at }) => Number.isInteger(at));
  const first = firstOf(atFrames.map(({ value }) => above(value, fails === 'yes' ? stops : warns)));
  return first.frame === undefined ? { is, severity } : { is, severity, frame: first.frame };
}

const LEVEL_DEG = 0;

function armFindings(judged: Judged, all: ReturnType<typeof moments>, table: Table): void {
  const { plan } = judged;
  const { balance, rig } = plan;
  const axis = actingAxis(plan, 'boom');
  if (!axis) return;
  const felt = Math.abs(armMoment(plan, LEVEL_DEG));
  const { fits, edge } = slowCounterweight(plan);
  const out = above(felt, 0.02 * aheadOf(plan), 1e-6);
  table.set('out-of-balance', edge ? either('open', out) : either(out, sure(!fits)));
  const { torqueNm } = axis;
  if (torqueNm !== null) {
    const needs = all.map(({ at, positions }) => ({
      at,
      value: atMotor(plan, armMoment(plan, armDeg(plan, positions) ?? 0)),
    }));
    table.set(`motor-cannot-hold ${axis.name}`, worstOf(needs, torqueNm / 1.5, torqueNm));
  }
  if (balance.ratedKg !== null)
    table.set(
      'arm-overloaded',
      above(balance.payloadKg * rig.arm.lengthMm, balance.ratedKg * balance.ratedMm),
    );
}

function balance(judged: Judged, table: Table): void {
  const { plan } = judged;
  for (const id of ['out-of-balance', 'arm-overloaded', 'support-overloaded', 'tips-over'])
    table.set(id, 'no');
  for (const axis of plan.rig.axes) table.set(`motor-cannot-hold ${axis.name}`, 'no');
  if (!plan.balance.used) return;
  const all = moments(judged);
  armFindings(judged, all, table);
  const { supportRatedKg } = plan.balance;
  if (supportRatedKg !== null) table.set('support-overloaded', above(onSupportKg(plan), supportRatedKg));
  const inside = insideFeetMm(plan);
  const off = all.map(({ at, positions }) => ({ at, value: offMiddleMm(plan, positions) }));
  table.set('tips-over', worstOf(off, 0.8 * inside, inside));
}

export function rigFindings(judged: Judged, table: Table): void {
  for (const subject of [picture, aim, ringing, balance]) subject(judged, table);
}
