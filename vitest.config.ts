import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

/** Nothing in these rooms keeps a state of its own, so that their tests can share one load of each module. */
const pure = [
  'tests/shared/**/*.test.ts',
  'tests/references/**/*.test.ts',
  'tests/server/classroom/**/*.test.ts',
];

export default defineConfig({
  test: {
    // Vitest keeps a core for itself, and the tests would have one of two.
    maxWorkers: Math.max(2, availableParallelism()),
    // For a machine that is busy with something else; nothing here is judged by its time.
    testTimeout: 30_000,
    hookTimeout: 30_000,
    benchmark: { include: ['tests/bench/**/*.bench.ts'] },
    projects: [
      { extends: true, test: { name: 'pure', include: pure, isolate: false } },
      { extends: true, test: { name: 'parts', include: ['tests/**/*.test.ts'], exclude: pure } },
    ],
  },
});
