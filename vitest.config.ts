import { availableParallelism } from 'node:os';
import { configDefaults, defineConfig } from 'vitest/config';

/** Files that put something of their own in the place of a module, which others must not meet, or that take times. */
const ALONE = 'tests/**/*.alone.test.ts';

export default defineConfig({
  test: {
    testTimeout: 20_000,
    globalSetup: 'tests/one-temp-folder.ts',
    reporters: ['default'],
    // The runner's own choice leaves a core for a watching editor.
    maxWorkers: availableParallelism(),
    projects: [
      {
        extends: true,
        test: {
          name: 'together',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: [...configDefaults.exclude, ALONE],
          // Loading the program again for each file took two thirds of the time.
          isolate: false,
        },
      },
      {
        extends: true,
        // After all others, one by one.
        test: { name: 'alone', include: [ALONE], maxWorkers: 1, sequence: { groupOrder: 1 } },
      },
    ],
  },
});
