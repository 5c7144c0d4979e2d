/** Fields of a stop-motion production: its shots with their actions, and the time that working on them takes. */

import * as z from 'zod/mini';
import { MAX_FRAMES, MAX_HOLDS, WEEKDAYS } from './constants.ts';
import {
  choice,
  count,
  fieldRegistry,
  flag,
  formattedText,
  name,
  optionalQuantity,
  quantity,
  section,
  text,
} from './fields.ts';
import { track } from './move-fields.ts';

const clock = (title: string, description: string, byDefault: string) =>
  formattedText(
    { title, description, pattern: /^([01]\d|2[0-3]):[0-5]\d$/, form: 'a 24-hour clock time such as 09:30' },
    byDefault,
  );

const minutes = (title: string, description: string, byDefault: number) =>
  quantity({ title, unit: 'min', description, minimum: 0, maximum: 10_000, step: 0.5 }, byDefault);

const passName = z
  .string()
  .check(z.minLength(1), z.maxLength(40))
  .register(fieldRegistry, { title: 'Pass', description: 'Name of a pass of the production.' });

/** Exposures of one pass: its own light, and its own settings where they differ from the plan's. */
export const pass = z.strictObject({
  name: name('Main'),
  shutterS: optionalQuantity({
    title: 'Shutter',
    unit: 's',
    description: 'Marked; if not given, the plan’s.',
    minimum: 0.00001,
    maximum: 3600,
  }),
  apertureF: optionalQuantity({
    title: 'Aperture',
    unit: 'f/',
    description: 'Marked; if not given, the plan’s.',
    minimum: 0.5,
    maximum: 256,
  }),
  iso: optionalQuantity({
    title: 'ISO',
    description: 'If not given, the plan’s.',
    minimum: 1,
    maximum: 10_000_000,
  }),
  changeMin: minutes('Change takes', 'Hands on, to switch its light: at every exposure that has it.', 0),
});

/** What differs at one exposure of an action. */
export const detail = z.strictObject({
  /** Exposure within the action, counted from 1. */
  exposure: count({ title: 'Exposure of the action', minimum: 1, maximum: MAX_FRAMES }, 1),
  text: z._default(
    z.nullable(z.string().check(z.maxLength(200))).register(fieldRegistry, {
      title: 'What happens',
      description: 'If not given, the action’s.',
    }),
    null,
  ),
  passes: z._default(
    z.nullable(z.array(passName).check(z.maxLength(20))).register(fieldRegistry, {
      title: 'Passes',
      description: 'If not given, the action’s.',
    }),
    null,
  ),
});

/** What is animated, in one go. */
export const action = z.strictObject({
  text: text({ title: 'Action', description: 'What happens.', longest: 200 }, ''),
  lengthIn: choice({ title: 'Length in' }, ['frames', 'seconds'], 'frames'),
  frames: count({ title: 'Length', unit: 'frames', minimum: 1, maximum: MAX_FRAMES }, 24),
  lengthS: quantity(
    {
      title: 'Length',
      unit: 's',
      description: 'On screen; rounded to whole frames.',
      minimum: 0.001,
      maximum: 86_400,
      step: 0.5,
    },
    1,
  ),
  holds: z._default(
    z
      .array(
        z
          .number()
          .check(z.int(), z.gte(1), z.lte(MAX_FRAMES))
          .register(fieldRegistry, { title: 'Held for', unit: 'frames' }),
      )
      .check(z.minLength(1), z.maxLength(MAX_HOLDS))
      .register(fieldRegistry, {
        title: 'Each exposure is held for',
        description: 'On ones 1, on twos 2, a mix 1, 2: said again from its start until the action is full.',
      }),
    () => [2],
  ),
  passes: z._default(
    z.nullable(z.array(passName).check(z.maxLength(20))).register(fieldRegistry, {
      title: 'Passes',
      description: 'Of each exposure; if not given, all of the production’s.',
    }),
    null,
  ),
  minutesPerExposure: optionalQuantity({
    title: 'Minutes an exposure',
    unit: 'min',
    description: 'Of animating; if not given, the production’s.',
    minimum: 0,
    maximum: 10_000,
    step: 0.5,
  }),
  details: z._default(z.array(detail).check(z.maxLength(100_000)), () => []),
});

/** Something to know at a frame of a shot. */
export const cue = z.strictObject({
  kind: choice({ title: 'Cue' }, ['sound', 'word', 'light', 'other'], 'sound'),
  frame: count(
    { title: 'At frame', description: 'Of the shot, counted from 1.', minimum: 1, maximum: MAX_FRAMES },
    1,
  ),
  frames: count({ title: 'For', unit: 'frames', minimum: 1, maximum: MAX_FRAMES }, 1),
  text: text({ title: 'Cue', longest: 200 }, ''),
});

/** One shot. */
export const shot = z.strictObject({
  name: name('Shot 1'),
  actions: z._default(z.array(action).check(z.maxLength(5000)), () => []),
  cues: z._default(z.array(cue).check(z.maxLength(5000)), () => []),
  /** Moves of the rig over the shot, its last frame at share 1; the plan's own if there are none. */
  tracks: z._default(z.array(track).check(z.maxLength(12)), () => []),
  setUpMin: optionalQuantity({
    title: 'Set-up',
    unit: 'min',
    description: 'Before its first exposure; if not given, the production’s.',
    minimum: 0,
    maximum: 100_000,
    step: 5,
  }),
});

/** An exposure that is in the camera. */
export const tick = z.strictObject({
  shot: count({ title: 'Shot', description: 'Counted from 1.', minimum: 1, maximum: 200 }, 1),
  exposure: count(
    { title: 'Exposure', description: 'Of the shot, counted from 1.', minimum: 1, maximum: MAX_FRAMES },
    1,
  ),
  atMs: quantity(
    { title: 'Done at', unit: 'ms', description: 'Milliseconds of the epoch.', minimum: 0, maximum: 1e14 },
    0,
  ),
  retakes: count({ title: 'Retakes', minimum: 0, maximum: 10_000 }, 0),
  note: text({ title: 'Note', longest: 500 }, ''),
});

/** A break in the working day. */
export const rest = z.strictObject({
  from: clock('Break from', 'Local clock.', '13:00'),
  to: clock('Break to', 'Local clock, later than its start.', '13:30'),
});

/** A stop-motion production. */
export const sheet = section({
  startTimecode: formattedText(
    {
      title: 'First timecode',
      description: 'Label of the first frame of the first shot.',
      pattern: /^\d{2}:[0-5]\d:[0-5]\d[:;]\d{2,3}$/,
      form: 'a timecode such as 01:00:00:00',
    },
    '00:00:00:00',
  ),
  dropFrame: flag(
    { title: 'Drop-frame', description: 'Where the rate has it: 30000/1001, 60000/1001, 120000/1001.' },
    true,
  ),
  passes: z._default(z.array(pass).check(z.minLength(1), z.maxLength(20)), () => [pass.parse({})]),
  minutesPerExposure: minutes('Minutes an exposure', 'Of animating, for a hand that is warm.', 3),
  setUpMin: minutes('Set-up of a shot', 'Set, light, rig, camera, before its first exposure.', 60),
  testFrames: count(
    { title: 'Test frames', description: 'Before the first exposure of a shot.', minimum: 0, maximum: 1000 },
    3,
  ),
  workFrom: clock('Work from', 'Local clock.', '09:00'),
  workTo: clock('Work until', 'Local clock, later than its start.', '18:00'),
  breaks: z._default(z.array(rest).check(z.maxLength(10)), () => [rest.parse({})]),
  daysOff: z._default(
    z.array(z.enum(WEEKDAYS)).check(z.maxLength(6)).register(fieldRegistry, { title: 'Days off' }),
    () => ['saturday' as const, 'sunday' as const],
  ),
  closedDates: z._default(
    z
      .array(z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/, 'a date such as 2026-08-08')))
      .check(z.maxLength(400))
      .register(fieldRegistry, { title: 'Also closed on', description: 'Dates.' }),
    () => [],
  ),
  shots: z._default(z.array(shot).check(z.maxLength(200)), () => []),
  ticks: z._default(z.array(tick).check(z.maxLength(MAX_FRAMES)), () => []),
  notes: text({ title: 'Shoot notes', longest: 20_000 }, ''),
});
