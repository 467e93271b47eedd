import { defineConfig } from 'vitest/config';
import LongFirst from './test/order.ts';

/** These put something of their own in the place of a module: what they load must not be loaded before, nor stay. */
const alone = ['test/cli-picture.test.ts', 'src/cli/threads/*.test.ts'];
/** These too, but all the same: they share it among themselves. */
const commands = ['test/cli*.test.ts'];

export default defineConfig({
  test: {
    environment: 'node',
    // Three times what the slowest takes on a machine that does other work beside.
    testTimeout: 180_000,
    hookTimeout: 120_000,
    pool: 'forks',
    maxWorkers: 2,
    sequence: { sequencer: LongFirst },
    expect: { poll: { timeout: 20_000 } },
    projects: [
      {
        extends: true,
        // Rooms are pure: files share what is loaded, and code that has run is quick in the next one.
        test: {
          name: 'together',
          include: ['src/**/*.test.ts', 'test/**/*.test.ts', 'bench/**/*.test.ts'],
          exclude: ['**/node_modules/**', ...alone, ...commands],
          isolate: false,
        },
      },
      {
        extends: true,
        test: {
          name: 'commands',
          include: commands,
          exclude: ['**/node_modules/**', ...alone],
          isolate: false,
          setupFiles: ['test/command-setup.ts'],
        },
      },
      { extends: true, test: { name: 'alone', include: alone, isolate: true } },
    ],
  },
});
