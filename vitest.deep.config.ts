import { defineConfig } from 'vitest/config';

/** Long tests: fuzz with many runs, kills while writing, migrations, soak. */
export default defineConfig({
  test: {
    include: ['tests/deep/**/*.test.ts'],
    fileParallelism: false,
    testTimeout: 900_000,
    hookTimeout: 120_000,
  },
});
