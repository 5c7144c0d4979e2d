import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// Journeys through the built page, three browsers at a time: while one waits, the others work. Run `npm run build` first.
export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    include: ['tests/browser/**/*.journey.ts'],
    globalSetup: ['tests/browser/serve.ts'],
    maxWorkers: 4,
    isolate: false,
    // Patience for slow machines; what does not come fails all the same.
    expect: { poll: { timeout: 10_000 } },
    testTimeout: 120_000,
    hookTimeout: 60_000,
  },
});
