/** A browser of its own process with a profile on disk, to be killed as a flat battery would. */
import { type ChildProcess, spawn } from 'node:child_process';
import { type Browser, chromium } from 'playwright-core';
import { BROWSER_ARGS, browserPath } from './launch.ts';

/** A running browser that can be killed. */
export interface Killable {
  browser: Browser;
  /** Ends every process of it at once: no page is told. */
  kill: () => Promise<void>;
}

/** Address at which the browser takes commands; it prints it once it is up. */
const addressOf = (process: ChildProcess): Promise<string> =>
  new Promise((resolve, reject) => {
    let said = '';
    process.stderr?.on('data', (piece) => {
      said += piece;
      const address = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (address) resolve(address);
    });
    process.once('exit', () => reject(new Error(`the browser ended: ${said}`)));
  });

/** Starts a browser with the profile in a folder. */
export async function startWithProfile(folder: string): Promise<Killable> {
  const args = [
    ...BROWSER_ARGS,
    '--headless',
    '--window-size=1440,900',
    '--remote-debugging-port=0',
    `--user-data-dir=${folder}`,
    'about:blank',
  ];
  // A process group of its own, so that all of its processes can be killed together.
  const child = spawn(await browserPath(), args, { detached: true, stdio: ['ignore', 'ignore', 'pipe'] });
  const browser = await chromium.connectOverCDP(await addressOf(child));
  const kill = async () => {
    const ended = new Promise((resolve) => child.once('exit', resolve));
    if (child.pid !== undefined) process.kill(-child.pid, 'SIGKILL');
    await ended;
  };
  return { browser, kill };
}
