import { defineConfig } from 'vitest/config';

/** Unit and property tests: everything but what needs the built office, a browser or many minutes. */
export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/deep/**', 'tests/browser/**', 'node_modules/**'],
    testTimeout: 30_000,
  },
});
