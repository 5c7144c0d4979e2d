/**
 * The times of `schedule()` in a process that loads nothing else, as JSON: see {@link engineAlone}.
 *
 * Once some library has handed the memory of an array over to somebody else (those that the other parts of the bench
 * load do), V8 asks at every access to an array whether its memory is still there. The kernel, which does nothing but
 * access, then takes longer by more than the engine does: how they compare in Node depends on what else is loaded.
 */
import { execFileSync } from 'node:child_process';
import { argv, execPath } from 'node:process';
import { fileURLToPath } from 'node:url';
import { dayFiguresIn } from './engine.ts';
import type { Figure } from './report.ts';

const here = fileURLToPath(import.meta.url);

/** Times of a day of frames, each kind of plan: told, not judged, since they are judged beside other libraries. */
export function engineAlone(): Figure[] {
  const said = execFileSync(execPath, ['--expose-gc', '--import', 'tsx', here], { encoding: 'utf8' });
  return (JSON.parse(said) as Figure[]).map(({ budget: _, ...figure }) => figure);
}

if (argv[1] === here) console.log(JSON.stringify(dayFiguresIn('in a process alone')));
