import { defineConfig } from 'vitest/config';

/** Tests of the built office, in a browser. They share the processor with it, so one file at a time. */
export default defineConfig({
  test: {
    include: ['tests/browser/**/*.test.ts'],
    fileParallelism: false,
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
