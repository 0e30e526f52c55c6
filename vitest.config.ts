import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // Vitest keeps a core for itself, and the tests would have one of two.
    maxWorkers: Math.max(2, availableParallelism()),
    // For a machine that is busy with something else; nothing here is judged by its time.
    testTimeout: 30_000,
    hookTimeout: 30_000,
    benchmark: { include: ['tests/bench/**/*.bench.ts'] },
  },
});
