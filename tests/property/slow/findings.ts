/**
 * Which findings a run must have and which it must not, said again from the columns and the plan alone.
 */
import type { Judged } from '../judged.ts';
import { offsetsOf, wallInstants } from './clock.ts';
import { above, type Expected, either, sure, type Table } from './expected.ts';
import { subtract, toDouble } from './fraction.ts';
import { motionFindings } from './motion-findings.ts';
import { rigFindings } from './rig-findings.ts';
import { frameBytes, packWh, usableBytes } from './run.ts';

function cycle({ plan, slow }: Judged, table: Table): void {
  const between = slow.frames.slice(0, -1);
  const longest = (lane: 'rigS' | 'cameraS') => Math.max(0, ...between.map((frame) => frame[lane]));
  const intervalS = toDouble(slow.pace.interval);
  const rig = above(longest('rigS'), intervalS);
  const camera = above(longest('cameraS'), intervalS);
  table.set('cycle-overrun', rig);
  table.set('camera-not-ready', camera);
  const overrun = either(rig, camera);
  const tight = above(plan.cycle.guardS, intervalS - Math.max(longest('rigS'), longest('cameraS')));
  table.set(
    'guard-used',
    overrun === 'yes' || between.length === 0 ? 'no' : overrun === 'open' ? 'open' : tight,
  );
}

function pacing({ plan, slow: { pace } }: Judged, table: Table): void {
  table.set('interval-not-settable', sure(!pace.settable));
  const stretch = Math.abs(toDouble(subtract(pace.interval, pace.raw)));
  const asked = plan.pacing.workedOut !== 'interval' && pace.settable;
  table.set('interval-stretched', asked ? above(stretch, 0.0005, 1e-3) : 'no');
  table.set('no-clip', sure(pace.clipFrames <= 2 * plan.clip.handlesFrames));
}

function exposure({ plan, slow }: Judged, table: Table): void {
  const { shutterS, timedBy, bracketCount, bracketStops } = plan.exposure;
  let markedS = 0;
  for (let i = 0; i < bracketCount; i += 1)
    markedS += shutterS * 2 ** (bracketStops * (i - (bracketCount - 1) / 2));
  const openS = slow.shots.reduce((sum, shot) => sum + shot.openS, 0);
  table.set('shutter-marked-exact', timedBy === 'camera' ? above(Math.abs(openS - markedS), 0.1) : 'no');
}

/** Whether hands that need `handsS` before a frame counted from 1 hold up the run. */
function holdsUp({ slow }: Judged, frame: number, handsS: number): Expected {
  const before = slow.frames[frame - 2];
  if (!before) return 'no';
  return above(handsS, Math.max(0, before.intervalS - Math.max(before.cameraS, before.rigS)));
}

function energy(judged: Judged, table: Table): void {
  const { plan, run, slow } = judged;
  plan.power.sources.forEach((source, i) => {
    const swaps = run.sources[i]?.swapFrames ?? [];
    table.set(
      `swap-does-not-fit ${source.name}`,
      either('no', ...swaps.map((frame) => holdsUp(judged, frame, source.swapS))),
    );
    const rated = source.energyWh ?? (source.voltageV * source.capacityMah) / 1000;
    table.set(`flight-limit ${source.name}`, source.kind === 'mains' ? 'no' : above(rated, 100, 1e-12));
    if (source.kind === 'mains') {
      table.set(`source-short ${source.name}`, 'no');
      return;
    }
    const usable = packWh(source, plan.power.temperatureC) * (1 - source.reserveShare);
    let packs = 1;
    let used = 0;
    let short: Expected = 'no';
    for (const [k, frame] of slow.frames.entries()) {
      const drawn = frame.drawnWh[i] ?? Number.NaN;
      const one = above(drawn, usable);
      const over = above(used + drawn, usable);
      if (over === 'open' || one === 'open') {
        short = 'open';
        break;
      }
      if (over === 'yes' && k > 0) {
        packs += 1;
        used = 0;
      }
      if (packs > source.count || one === 'yes') short = 'yes';
      used += drawn;
    }
    table.set(`source-short ${source.name}`, short);
  });
}

function storage(judged: Judged, table: Table): void {
  const { plan, run, slow } = judged;
  const bytes = frameBytes(plan);
  const room = plan.storage.cards.reduce(
    (sum, card) => sum + Math.floor(usableBytes(card) / bytes + 1e-9),
    0,
  );
  table.set('card-full', sure(slow.pace.frames > room));
  const changes = run.events.filter(({ kind }) => kind === 'cardChange');
  table.set(
    'card-change-does-not-fit',
    either('no', ...changes.map(({ frame }) => holdsUp(judged, frame, plan.storage.cardChangeS))),
  );
}

function clock({ plan, run, slow }: Judged, table: Table): void {
  if (plan.place.utcOffsetMin !== null) {
    for (const id of ['clock-change', 'clock-skipped', 'clock-repeated']) table.set(id, 'no');
    return;
  }
  const instants = wallInstants(plan);
  table.set('clock-skipped', sure(instants.length === 0));
  table.set('clock-repeated', sure(instants.length > 1));
  const offsetMs = offsetsOf(plan.place.zone);
  const lastMs = run.startMs + Math.round((slow.frames.at(-1)?.elapsedS ?? 0) * 1000);
  const hours = Math.ceil((lastMs - run.startMs) / 3_600_000) + 1;
  const looks = Array.from({ length: hours }, (_, i) => Math.min(lastMs, run.startMs + i * 3_600_000));
  table.set('clock-change', sure(looks.some((ms) => offsetMs(ms) !== offsetMs(run.startMs))));
}

/** Every finding, `id` or `id name`, that is expected, not expected, or left open. */
export function expectedFindings(judged: Judged): Table {
  const table: Table = new Map();
  for (const subject of [cycle, pacing, exposure, motionFindings, rigFindings, energy, storage, clock])
    subject(judged, table);
  return table;
}
