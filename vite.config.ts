import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { helpLater } from './src/dev/help-later.ts';
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

export default defineConfig({
  base: './',
  plugins: [react(), policy, helpLater(), readyPlans()],
  build: {
    outDir: 'dist',
    modulePreload: { polyfill: false },
    rolldownOptions: {
      // What opens the page is one piece: cut up by who else needs which part, it would weigh a kilobyte more.
      output: { codeSplitting: { groups: [{ name: 'first', tags: ['$initial'] }] } },
    },
  },
  preview: { headers: { 'Content-Security-Policy': POLICY } },
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/browser/**', 'node_modules/**'],
  },
});
