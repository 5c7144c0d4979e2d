/** A visit to the page that takes note of everything that must not happen. */
import { type Browser, type BrowserContext, chromium, type Page, type Request } from 'playwright-core';
import { BROWSER_ARGS, browserPath } from './launch.ts';

/** Starts a browser without a profile. */
export const startBrowser = async (): Promise<Browser> =>
  chromium.launch({
    executablePath: await browserPath(),
    args: [...BROWSER_ARGS],
    headless: true,
  });

/** One page with what went wrong on it. */
export interface Visit {
  page: Page;
  /** Console warnings and errors (violations of the content security policy are among them), exceptions, and
   * requests that leave the page's origin. */
  problems: string[];
  /** Waits until nothing that was asked for is still on its way. */
  fetchedAll: () => Promise<void>;
}

/** Themes of the page. */
export const THEMES = ['light', 'dark', 'dim'] as const;

/** What the driver says where a visit goes without the worker. */
const BLOCKED = /Service Worker registration blocked by Playwright/;

/** Takes note of problems on a page from now on. */
export function watch(page: Page, origin: string): Visit {
  const problems: string[] = [];
  page.on('console', (message) => {
    const said = message.text();
    if (['warning', 'error'].includes(message.type()) && !BLOCKED.test(said))
      problems.push(`console: ${said}`);
  });
  page.on('pageerror', (error) => problems.push(`exception: ${error.message}`));
  const underWay = new Set<Request>();
  page.on('requestfinished', (request) => underWay.delete(request));
  page.on('request', (request) => {
    underWay.add(request);
    const url = request.url();
    if (!url.startsWith(`${origin}/`) && !/^(data|blob):/.test(url)) problems.push(`request: ${url}`);
  });
  page.on('requestfailed', (request) => {
    underWay.delete(request);
    const why = request.failure()?.errorText;
    // Whoever leaves a page breaks off what it was still fetching.
    if (why !== 'net::ERR_ABORTED') problems.push(`failed: ${request.url()} (${why})`);
  });
  const fetchedAll = async () => {
    while (underWay.size > 0) await new Promise((resume) => setTimeout(resume, 50));
  };
  return { page, problems, fetchedAll };
}

interface VisitOptions {
  viewport?: { width: number; height: number };
  theme?: (typeof THEMES)[number];
  /** A phone: coarse pointer, touch. */
  touch?: boolean;
  /** Query of the address, such as `?demo=loaf-proving`. */
  query?: string;
  /**
   * With the worker that serves the page without a network. It fetches all the page in every context anew, and a page
   * that it serves takes nothing from the network that a test could keep from it: so only where it is what matters.
   */
  offline?: boolean;
  /** What is done with the page before it opens. */
  before?: (page: Page) => Promise<unknown>;
}

/** Opens the page in a context of its own, with nothing stored but the theme. */
export async function visit(
  browser: Browser,
  origin: string,
  {
    viewport = { width: 1440, height: 900 },
    theme = 'light',
    touch = false,
    query = '',
    offline = false,
    before,
  }: VisitOptions = {},
): Promise<Visit & { context: BrowserContext }> {
  const context = await browser.newContext({
    viewport,
    locale: 'en-GB',
    hasTouch: touch,
    isMobile: touch,
    serviceWorkers: offline ? 'allow' : 'block',
  });
  context.setDefaultTimeout(20_000);
  await context.addInitScript((name) => localStorage.setItem('escapement-theme', name), theme);
  const watched = watch(await context.newPage(), origin);
  await before?.(watched.page);
  await watched.page.goto(`${origin}/${query}`);
  await watched.page.getByRole('main').waitFor();
  return { ...watched, context };
}
