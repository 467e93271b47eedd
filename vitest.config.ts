import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.ts', 'test/**/*.test.ts', 'bench/**/*.test.ts'],
    environment: 'node',
    // Three times what the slowest takes on a machine that does other work beside.
    testTimeout: 180_000,
    hookTimeout: 120_000,
    pool: 'forks',
    // Rooms are pure: files share what is loaded, and code that has run is quick in the next one.
    isolate: false,
    maxWorkers: 2,
    expect: { poll: { timeout: 20_000 } },
  },
});
