/** Starts the Chromium that is there: the system's, or the one that came with the packages. */
import { existsSync } from 'node:fs';

/** Where Debian, Ubuntu and others put Chromium and Chrome. */
const SYSTEM_BROWSERS = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Of several such switches the last one counts, so that those of the driver stand here too. */
const WITHOUT = [
  'AimEnabled',
  'AvoidCorsURLLoaderRestartOnRedirect',
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsFirstBalancedModeAutoEnable',
  'HttpsUpgrades',
  'LensOverlay',
  'MediaRouter',
  'NetworkTimeServiceQuerying',
  'OptimizationHints',
  'PaintHolding',
  'PreconnectToSearch',
  'ThirdPartyStoragePartitioning',
  // A full browser keeps two pages of its own ready for the address bar of every window: half of its work here.
  'WebUIOmniboxAimPopup',
  'WebUIOmniboxPopup',
];

/** Own arguments throughout: those of the packaged Chromium would switch web security off. */
export const BROWSER_ARGS: readonly string[] = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  `--disable-features=${WITHOUT.join(',')}`,
  // A container's /dev/shm is often too small for a page.
  '--disable-dev-shm-usage',
];

/**
 * Path of a Chromium or Chrome: `$CHROME_PATH`, the system's, else the packaged one, which unpacks itself.
 * @throws Error if `$CHROME_PATH` names no file
 */
export async function browserPath(): Promise<string> {
  const { CHROME_PATH: named } = process.env;
  if (named) {
    if (!existsSync(named)) throw new Error(`CHROME_PATH: found ${named}, which is no file`);
    return named;
  }
  return SYSTEM_BROWSERS.find((path) => existsSync(path)) ?? packagedBrowser();
}

async function packagedBrowser(): Promise<string> {
  // Read when the package is imported: without it the libraries that a bare Debian lacks stay packed.
  Object.assign(process.env, { AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs20.x' });
  const { default: chromium } = await import('@sparticuz/chromium');
  return chromium.executablePath();
}
