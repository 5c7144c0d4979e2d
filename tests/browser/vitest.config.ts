import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// Journeys through the built page, one browser at a time. Run `npm run build` first.
export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    include: ['tests/browser/**/*.journey.ts'],
    globalSetup: ['tests/browser/serve.ts'],
    fileParallelism: false,
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
