/** Plans of the bench: as many frames, axes and sources as the budgets speak of. */
import { readPlan } from '../../src/engine/plan/parse.ts';
import type { Plan } from '../../src/engine/plan/schema.ts';

const EASES = [
  { kind: 'linear' },
  { kind: 'smooth' },
  { kind: 'smoother' },
  { kind: 'cubicBezier', x1: 0.42, y1: 0, x2: 0.58, y2: 1 },
  { kind: 'ramped', headShare: 0.2, tailShare: 0.2 },
];
const KINDS = ['boom', 'slide', 'pan', 'tilt', 'roll'];
const SOURCES = ['Camera pack', 'Rig pack', 'Heater pack', 'Lamp pack'];

// From noon to a dark night and back, again and again.
const RAMP = [
  { setting: 'shutter', to: 1 },
  { setting: 'iso', to: 800 },
  { setting: 'shutter', to: 8 },
  { setting: 'iso', to: 6400 },
];

const LIT = {
  place: { zone: 'Europe/Lisbon', latitudeDeg: 38.7, longitudeDeg: -9.4 },
  light: { kind: 'sky' },
  exposure: { shutterS: 1 / 1000, apertureF: 8, ramp: { used: true, steps: RAMP } },
};

// A boom and a slide carry a head that keeps a subject framed; every move settles by its own ring.
const RIGGED = {
  rig: { arm: { lengthMm: 1500, zeroDeg: -20 } },
  move: { settleBy: 'ringing', quiet: true },
  subject: { used: true, aimed: true, forwardMm: 3000, rightMm: 500 },
  balance: { used: true, payloadKg: 2 },
};
const TURNING = { unit: 'deg', unitsPerTurn: 360, gearRatio: 60, travelMin: -180, travelMax: 180 };

/** Move-shoot-move with one axis for each kind of ease, each fed by one of four sources. */
function fields(frames: number, lit: boolean, rigged: boolean): object {
  const axes = KINDS.map((kind, i) => ({
    name: kind,
    kind,
    source: SOURCES[i % SOURCES.length],
    ...(rigged && i > 1 ? TURNING : {}),
  }));
  return {
    format: 'escapement-plan',
    version: 1,
    pacing: { workedOut: 'event', intervalS: 20, clipLengthS: frames / 25 },
    start: { date: '2026-03-27' },
    ...(lit ? LIT : { place: { zone: 'Europe/Lisbon' } }),
    ...(rigged ? { subject: RIGGED.subject, balance: RIGGED.balance } : {}),
    rig: { axes, ...(rigged ? RIGGED.rig : {}) },
    move: {
      mode: 'moveShootMove',
      ...(rigged ? RIGGED.move : {}),
      tracks: axes.map(({ name }, i) => ({
        axis: name,
        keyframes: [
          { share: 0, position: 10 * i, ease: EASES[i] },
          { share: 1, position: rigged && i > 1 ? 90 : 900 - 10 * i },
        ],
      })),
    },
    power: {
      sources: SOURCES.map((name) => ({ name, energyWh: 99, count: 200 })),
      loads: SOURCES.map((source) => ({
        name: `${source} load`,
        source,
        idleW: 2,
        exposingW: 4,
        movingW: 1,
      })),
    },
    storage: { cards: [{ name: 'Card', cardBytes: 100_000_000_000_000 }] },
  };
}

const STAGED = ['Slide', 'Pan', 'Turntable'];
const EXPOSURES_AN_ACTION = 50;
const ACTIONS_A_SHOT = 50;

/** A shot of a production: on twos, a word of its own in every fifth action, a sound now and then. */
const benchShot = (_: unknown, s: number): object => ({
  name: `Shot ${s + 1}`,
  cues: Array.from({ length: 20 }, (_one, c) => ({ text: 'knock', frame: 1 + 250 * c, frames: 6 })),
  actions: Array.from({ length: ACTIONS_A_SHOT }, (_one, a) => ({
    text: `Crosses step ${a + 1}`,
    frames: 2 * EXPOSURES_AN_ACTION,
    holds: [2],
    details: a % 5 === 0 ? [{ exposure: 3, text: 'Looks up' }] : [],
  })),
});

/**
 * A stop-motion production of so many exposures, a multiple of 2500: on twos, two passes, three axes, of which two take
 * their lost motion up; a fifth of it is ticked.
 */
export function benchProduction(exposures: number): Plan {
  const each = EXPOSURES_AN_ACTION * ACTIONS_A_SHOT;
  const axes = STAGED.map((name, i) => ({
    name,
    ...(i > 0 ? { ...TURNING, backlash: 0.2, arrive: 'upwards' } : {}),
  }));
  const tracks = axes.map(({ name }) => ({
    axis: name,
    keyframes: [
      { share: 0, position: 0, ease: { kind: 'smooth' } },
      { share: 1, position: 90 },
    ],
  }));
  const startMs = Date.UTC(2026, 2, 2, 9);
  const ticks = Array.from({ length: exposures / 5 }, (_, i) => ({
    shot: 1 + Math.floor(i / each),
    exposure: 1 + (i % each),
    atMs: startMs + i * 150_000,
  }));
  const parsed = readPlan({
    format: 'escapement-plan',
    version: 1,
    technique: 'stopMotion',
    start: { date: '2026-03-02', time: '09:00' },
    place: { zone: 'Europe/Lisbon' },
    rig: { axes },
    move: { mode: 'moveShootMove', tracks },
    sheet: {
      passes: [{ name: 'Key' }, { name: 'Rim', changeMin: 0.5 }],
      shots: Array.from({ length: exposures / each }, benchShot),
      ticks,
    },
  });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.plan;
}

/**
 * A plan of so many frames, 5 axes with five kinds of ease, 4 sources.
 * @param lit - with a ramp from day to night and back
 * @param rigged - with aim, ringing, quiet moves and balance
 */
export function benchPlan(frames: number, lit = true, rigged = false): Plan {
  const parsed = readPlan(fields(frames, lit, rigged));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.plan;
}
