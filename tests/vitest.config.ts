import { defineConfig } from 'vitest/config';

/** Fast tests of the pure core, and tests of the built book in a real browser. */
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'core',
          root: '.',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/site/**'],
          testTimeout: 30_000,
        },
      },
      {
        test: {
          name: 'site',
          root: '.',
          include: ['tests/site/**/*.test.ts'],
          globalSetup: 'tests/site/built-book.ts',
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
