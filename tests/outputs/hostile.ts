/** Plans whose every text is hostile, and what may not come of it. */
import type { Plan } from '../../src/engine/plan/schema.ts';
import { planOf } from './plans.ts';

/** Texts that would do something if they were taken for anything but text; most fit a name of 40 characters. */
export const HOSTILE: readonly (readonly [what: string, text: string])[] = [
  ['markup with a handler', '<img src=x onerror="hit()">'],
  ['the end of a script', '</script><script>hit()</script>'],
  ['the end of an attribute', '" autofocus onfocus="hit()'],
  ['markup in SVG', '</text><svg onload="hit()">'],
  ['an address that runs', 'javascript:hit()'],
  ['a template', `${'$'}{hit()} {{hit()}} <%= hit() %>`],
  ['an entity', '&lt;b&gt; &#60;b&#62; &amp;'],
  ['a terminal’s commands', 'a\u001b[2J\u001b]0;x\u0007\u009b31mb\u0000\u007f'],
  ['bells and line ends', 'a\r\nX-Header: 1\r\n\r\nb\u2028c'],
  ['a direction turned', 'a\u202egnp.\u202cb\u2066c\u2069'],
  ['a formula', '=HYPERLINK("http://x","y")'],
  ['a formula in disguise', ' \u200b=1+1'],
  ['a formula in full width', '\uff1d1+1'],
  ['a command', '-2+3+cmd|" /C calc"!A0'],
  ['a path', '../../../etc/passwd'],
  ['a path of Windows', 'C:\\x\\..\\NUL.txt'],
  ['a device of Windows', 'com¹'],
  ['a prototype', '__proto__'],
  ['half a character', 'a\ud800b\udfff'],
  ['a long word', 'x'.repeat(40)],
];

const KITCHEN = { name: 'x', zone: 'Europe/Paris', latitudeDeg: 48, longitudeDeg: 2 };

/** A time-lapse with a rig, power, cards and a sky. */
export const hostileLapse = (text: string): Plan =>
  planOf({
    title: text,
    notes: text,
    place: { ...KITCHEN, name: text },
    camera: { name: text },
    trigger: { name: text },
    light: { kind: 'sky' },
    pacing: { workedOut: 'clip', eventS: 120, intervalS: 1 },
    rig: { axes: [{ name: text, source: text, holdW: 1, moveW: 5, torqueNm: 0.1 }] },
    move: {
      mode: 'moveShootMove',
      tracks: [
        {
          axis: text,
          keyframes: [
            { share: 0, position: 0 },
            { share: 1, position: 100 },
          ],
        },
      ],
    },
    power: {
      sources: [{ name: text, capacityMah: 100, count: 1 }],
      loads: [{ name: text, source: text, idleW: 5 }],
    },
    storage: { cards: [{ name: text, cardBytes: 1e9 }] },
    day: { bring: [text] },
  });

/** A stop-motion production with shots, cues, passes and ticks. */
export const hostileStop = (text: string): Plan =>
  planOf({
    ...hostileLapse(text),
    technique: 'stopMotion',
    sheet: {
      passes: [{ name: text }],
      notes: text,
      shots: [
        {
          name: text,
          actions: [{ text, frames: 24, passes: [text], details: [{ exposure: 1, text, passes: [text] }] }],
          cues: [{ frame: 1, text }],
        },
      ],
      ticks: [{ shot: 1, exposure: 1, atMs: Date.parse('2026-06-21T09:10:00+02:00'), note: text }],
    },
  });

/** Control characters and marks that turn directions: none may reach a terminal or a reader. */
export const ACTS =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069\u2028\u2029]/u;
