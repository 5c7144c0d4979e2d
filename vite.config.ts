import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { helpLater } from './src/dev/help-later.ts';
import { offline } from './src/dev/offline.ts';
import { readyPlans } from './src/dev/ready-plans.ts';

const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "font-src 'self'",
  "img-src 'self' data:",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** What a server can say besides: only there a page can forbid that others frame it. */
const HEADERS = {
  'Content-Security-Policy': `${POLICY}; frame-ancestors 'none'`,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
};

/** The built page carries its policy itself, wherever it is served from. */
const policy: Plugin = {
  name: 'content-security-policy',
  apply: 'build',
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY },
      injectTo: 'head-prepend',
    },
  ],
};

const tests = (name: string, include: string[], isolate: boolean, globalSetup: string[] = []) => ({
  extends: true as const,
  test: { name, include, isolate, globalSetup, pool: 'threads' as const },
});

export default defineConfig({
  base: './',
  plugins: [react(), policy, helpLater(), readyPlans(), offline()],
  build: {
    outDir: 'dist',
    // What a part imports in its turn is found when the part is here: its list of files would weigh more than it saves.
    modulePreload: {
      polyfill: false,
      resolveDependencies: (_, files) => files.filter((file) => file.endsWith('.css')),
    },
    rolldownOptions: {
      // Nothing here is read for what reading it does.
      treeshake: { propertyReadSideEffects: false },
      // What opens the page is one piece: cut up by who else needs which part, it would weigh a kilobyte more.
      output: {
        codeSplitting: {
          groups: [
            { name: 'first', tags: ['$initial'], priority: 3 },
            // Without it nothing can be edited, and what is edited is kept: it waits for no chart and no field.
            {
              name: 'checks',
              test: /(plan\/(check|parse)|fields\/entry|store\/(pacingEdits|keeping))\.ts$/,
              priority: 2,
            },
            // What every opening fetches next, the charts and then the fields: together they weigh less.
            {
              name: 'charts',
              test: /(charts\/((Run|Cycle|Margins)Panel|Comb)|rig\/PathPlace)\.tsx$/,
              priority: 1,
            },
            {
              name: 'fields',
              test: /(sections\/bodies|bar\/Dialogs|app\/shortcuts|store\/expectWays)\.tsx?$/,
            },
          ],
        },
      },
    },
  },
  preview: { headers: HEADERS },
  test: {
    projects: [
      // The page keeps its state in modules, so that each of its files needs a world of its own. Nothing else does:
      // without one these take a third of the time.
      tests('page', ['tests/app/**/*.test.{ts,tsx}'], true),
      tests('others', ['tests/!(app|browser)/**/*.test.ts', 'tests/*.test.ts'], false, [
        'tests/cli/built.ts',
      ]),
    ],
  },
});
