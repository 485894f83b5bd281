import { defineConfig } from 'vitest/config';

// One run for everything; the engine's and the app's sources are used directly, no build needed.
export default defineConfig({
  resolve: { conditions: ['source'] },
  ssr: { resolve: { conditions: ['source'], externalConditions: ['source'] } },
  test: {
    include: ['packages/*/src/**/*.test.{ts,tsx}', 'packages/*/test/**/*.test.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // A page repaints when it can: on a busy machine later than a second.
    expect: { poll: { timeout: 15_000 } },
  },
});
