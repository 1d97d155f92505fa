import { defineConfig } from 'vitest/config';

/** The pages in a real browser: apart from `npm test`, which needs none. */
export default defineConfig({
  test: {
    include: ['tests/pages/**/*.pages.ts'],
    testTimeout: 120_000,
    hookTimeout: 300_000,
    reporters: ['default'],
    fileParallelism: false,
  },
});
