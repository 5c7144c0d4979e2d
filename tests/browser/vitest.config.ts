import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// Journeys through the built page, two browsers at a time. Run `npm run build` first.
export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    include: ['tests/browser/**/*.journey.ts'],
    globalSetup: ['tests/browser/serve.ts'],
    maxWorkers: 3,
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
