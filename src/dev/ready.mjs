/**
 * Makes a clone ready to run: checks Node, and installs from the lock when that has not been done yet.
 * Says what it does on standard error only, so that the prompt's standard output stays clean.
 */
import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const OLDEST_NODE = 20;
const root = fileURLToPath(new URL('../..', import.meta.url));

const changedAt = (file) => statSync(`${root}${file}`, { throwIfNoEntry: false })?.mtimeMs ?? 0;

function giveUp(sentence) {
  console.error(sentence);
  process.exit(1);
}

/** npm as it was started, or as it is found on the path; its messages go to standard error. */
function npmCi() {
  // Shown whatever `npm run -s` set; development packages too, whatever NODE_ENV says.
  const options = ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'];
  const [command, ...start] = process.env.npm_execpath
    ? [process.execPath, process.env.npm_execpath]
    : ['npm'];
  const onWindowsPath = command === 'npm' && process.platform === 'win32';
  return spawnSync(command, [...start, ...options], {
    cwd: root,
    stdio: ['ignore', 2, 2],
    shell: onWindowsPath,
  });
}

if (Number(process.versions.node.split('.')[0]) < OLDEST_NODE) {
  giveUp(`Escapement needs Node ${OLDEST_NODE} or newer; this is Node ${process.versions.node}.`);
}

// npm writes this file last, so it stands for a finished install.
if (changedAt('node_modules/.package-lock.json') < changedAt('package-lock.json')) {
  console.error('Installing what the lock file names; this happens once …');
  const { status, error } = npmCi();
  if (error) giveUp(`npm could not be started: ${error.message}. Install npm, then try again.`);
  if (status !== 0)
    giveUp('npm could not install the packages: its message is above. Is the registry reached?');
}
