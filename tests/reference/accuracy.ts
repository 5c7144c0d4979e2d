/** Prints every outside check with its worst error, and puts the table into README.md between its markers. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { measureBalance } from './balance/measure.ts';
import { measureCalendar } from './calendar/measure.ts';
import { measureClock } from './clock/measure.ts';
import { measureEase } from './ease/measure.ts';
import { measureEnergy } from './energy/measure.ts';
import { measureExposure } from './exposure/measure.ts';
import { measureLight } from './light/measure.ts';
import { measurePartProgram } from './part-program/measure.ts';
import { measurePath } from './path/measure.ts';
import { measureProfile } from './profile/measure.ts';
import { measureRinging } from './ringing/measure.ts';
import type { Row } from './rows.ts';
import { measureSheet } from './sheet/measure.ts';
import { measureSky } from './sky/measure.ts';
import { measureSteps } from './steps/measure.ts';
import { measureStorage } from './storage/measure.ts';
import { measureTimecode } from './timecode/measure.ts';

/** Every subject, in the order of the table. */
const SUBJECTS: Readonly<Record<string, () => Row[]>> = {
  Timecode: measureTimecode,
  'Local clock': measureClock,
  Ease: measureEase,
  Moves: measureProfile,
  Steps: measureSteps,
  Path: measurePath,
  Ringing: measureRinging,
  Balance: measureBalance,
  Exposure: measureExposure,
  Light: measureLight,
  Sky: measureSky,
  Energy: measureEnergy,
  Storage: measureStorage,
  'Exposure sheet': measureSheet,
  'Part program': measurePartProgram,
  Calendar: measureCalendar,
};

const START = '<!-- accuracy:start -->';
const END = '<!-- accuracy:end -->';

/** A number to two digits, or whole if it is. */
const short = (value: number): string =>
  Number.isInteger(value) && Math.abs(value) < 1e6 ? String(value) : value.toExponential(1);

const cell = (text: string): string => text.replaceAll('|', '\\|');

/** The table in Markdown, and the rows that are over their bound. */
function table(): { markdown: string; exceeded: string[] } {
  const lines = [
    '| what | over | against | cases | worst error | bound | unit |',
    '| --- | --- | --- | ---: | ---: | ---: | --- |',
  ];
  const exceeded: string[] = [];
  for (const [subject, measure] of Object.entries(SUBJECTS)) {
    for (const { quantity, regime, reference, cases, worst, worstAt, bound, unit } of measure()) {
      const what = `${subject}: ${quantity}`;
      const cells = [what, regime, reference, String(cases), short(worst), short(bound), unit].map(cell);
      lines.push(`| ${cells.join(' | ')} |`);
      if (worst > bound) exceeded.push(`${what}, ${regime}: ${worstAt}`);
    }
  }
  return { markdown: lines.join('\n'), exceeded };
}

/** Puts the table between the markers of the README, if it has them. */
function intoReadme(markdown: string): void {
  const file = new URL('../../README.md', import.meta.url);
  if (!existsSync(file)) return;
  const text = readFileSync(file, 'utf8');
  const [from, to] = [text.indexOf(START), text.indexOf(END)];
  if (from === -1 || to < from) return;
  writeFileSync(file, `${text.slice(0, from + START.length)}\n${markdown}\n${text.slice(to)}`);
}

const { markdown, exceeded } = table();
console.log(markdown);
intoReadme(markdown);
for (const line of exceeded) console.error(`over its bound: ${line}`);
process.exitCode = exceeded.length > 0 ? 1 : 0;
