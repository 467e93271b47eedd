import { defineConfig } from 'vitest/config';

/** The tests that hold core's formulas: those beside the code, the properties, the outside checks. No browser, no command line. */
export default defineConfig({
  test: {
    include: ['src/core/**/*.test.ts', 'test/property/*.test.ts', 'test/outside/{colour,units,press,edition,ink-overprints,ink-learning,ink-recipes}.test.ts'],
    environment: 'node',
    testTimeout: 60_000,
    pool: 'threads',
  },
});
