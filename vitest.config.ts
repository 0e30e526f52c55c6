import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // Vitest keeps a core for itself, and the tests would have one of two.
    maxWorkers: Math.max(2, availableParallelism()),
    benchmark: { include: ['tests/bench/**/*.bench.ts'] },
  },
});
