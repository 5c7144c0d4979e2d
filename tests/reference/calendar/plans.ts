/** Plans whose calendars are read back. */
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { planOf } from '../../outputs/plans.ts';

/** Commas, semicolons, a backslash, a line feed, quotes, letters of two to four bytes, and a long rest. */
export const TITLE = 'Möwe, Kai; 港 🌒 "low\\tide"\nBEGIN:VEVENT äöüßéèàçñøå, again and again äöüßéèàçñøå';

const sky = (latitudeDeg: number, longitudeDeg: number, zone: string) => ({
  place: { name: 'Pier; west, "old"', latitudeDeg, longitudeDeg, zone },
  light: { kind: 'sky' },
});
const ramp = {
  ramp: {
    used: true,
    steps: [
      { setting: 'shutter', to: 2, step: 'full', by: 'hand' },
      { setting: 'iso', to: 1600, step: 'full', by: 'camera' },
    ],
  },
};
const small = {
  power: {
    sources: [{ name: 'Pack', energyWh: 8, count: 9, swapS: 4 }],
    loads: [{ name: 'Body', source: 'Pack', idleW: 4 }],
  },
  storage: {
    cards: [
      { name: 'A', cardBytes: 16e9 },
      { name: 'B', cardBytes: 64e9 },
      { name: 'C', cardBytes: 512e9 },
    ],
  },
};
const lapse = (date: string, time: string, eventS: number, rest: object): Plan =>
  planOf({
    title: TITLE,
    pacing: { workedOut: 'clip', eventS, intervalS: 20 },
    start: { date, time },
    exposure: { shutterS: 1 / 125, ...ramp },
    day: { travelMin: 42, inHandMin: 7 },
    ...small,
    ...rest,
  });

/** By what each tries. */
export const CALENDAR_PLANS: Readonly<Record<string, Plan>> = {
  'clocks go back': lapse('2026-10-25', '01:30', 9 * 3600, sky(43.3, 6.4, 'Europe/Paris')),
  'clocks go forward': lapse('2026-03-08', '00:10', 8 * 3600, sky(40.7, -74, 'America/New_York')),
  'UTC+14': lapse('2026-01-01', '00:05', 20_000, sky(1.9, -157.4, 'Pacific/Kiritimati')),
  'polar night': lapse('2026-12-21', '10:00', 20_000, sky(78.2, 15.6, 'Arctic/Longyearbyen')),
  'midnight sun': lapse('2026-06-21', '20:00', 30_000, sky(78.2, 15.6, 'Arctic/Longyearbyen')),
  'four days': lapse('2026-08-08', '18:00', 4 * 86_400, sky(43.3, 6.4, 'Europe/Paris')),
  'an offset by hand': lapse('2026-08-08', '18:00', 30_000, {
    place: { ...sky(43.3, 6.4, 'Europe/Paris').place, utcOffsetMin: 345 },
    light: { kind: 'sky' },
  }),
};

/** Two shots over several working days, the clocks changing between them, a pane to the south. */
export const STOP_MOTION = planOf({
  title: TITLE,
  technique: 'stopMotion',
  start: { date: '2026-10-23', time: '09:00' },
  place: { ...sky(52, 5, 'Europe/Amsterdam').place },
  pane: { used: true, facingDeg: 180 },
  sheet: {
    daysOff: [],
    shots: [
      { name: 'One', actions: [{ text: 'walks', lengthIn: 'frames', frames: 500 }] },
      { name: 'Two', actions: [{ text: 'stops', lengthIn: 'frames', frames: 200 }] },
    ],
  },
});
