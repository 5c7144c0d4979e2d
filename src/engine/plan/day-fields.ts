/** Fields of the day of a shoot, and of the text for rigs that read part programs. */
import * as z from 'zod/mini';
import { fieldRegistry, flag, quantity, section, text } from './fields.ts';

const minutes = (title: string, description: string, byDefault: number) =>
  quantity({ title, unit: 'min', description, minimum: 0, maximum: 2880, step: 5 }, byDefault);

/** What the day takes before the first frame and after the last. Common practice, no source: put in your own. */
export const day = section({
  travelMin: minutes('Way there', 'From leaving to standing on the spot, and back again.', 0),
  setUpMin: minutes('Set-up', 'Support, rig, camera, cables.', 20),
  balanceMin: minutes('Balance and home', 'Weights, then every axis to its zero.', 10),
  rehearsalMin: minutes('Rehearsal', 'The whole move, without exposures.', 10),
  testFramesMin: minutes('Test frames', 'Framing, focus, exposure, settle.', 5),
  inHandMin: minutes('Time in hand', 'Left over before the first frame.', 15),
  packUpMin: minutes('Pack up', 'After the last frame.', 20),
  bring: z._default(
    z
      .array(z.string().check(z.minLength(1), z.maxLength(80)))
      .check(z.maxLength(40))
      .register(fieldRegistry, {
        title: 'Also bring',
        description: 'One thing a line, besides what the plan itself knows.',
      }),
    () => [],
  ),
});

/** RS-274 text for rigs whose controller reads it. */
export const partProgram = section({
  inches: flag(
    { title: 'In inches', description: 'Lengths in inches (G20); otherwise in millimetres (G21).' },
    false,
  ),
  feedShare: quantity(
    {
      title: 'Feed',
      unit: 'share',
      description: 'Of the top speed of the axis that has to go slowest.',
      minimum: 0.01,
      maximum: 1,
      step: 0.05,
    },
    1,
  ),
  triggerLines: text(
    {
      title: 'Trigger lines',
      description:
        'What your controller reads to fire the camera, line by line. Common practice, no source: an output on, a moment, off.',
      longest: 1000,
    },
    'M8\nG4 P0.2\nM9',
  ),
});
