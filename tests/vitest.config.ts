import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { SlowFirst } from './slow-first.ts';

// Nothing is timed here: a limit only ends what hangs, on a slow and busy machine too.
const PATIENT = { poll: { timeout: 60_000, interval: 100 } };

/**
 * Fast tests of the pure core, and tests of the built book in a real browser.
 *
 * A worker goes on from file to file with what it has imported and compiled: to load and warm all of it again for each took longer than
 * the tests. So no file may leave a global changed, or a module mocked.
 */
export default defineConfig({
  test: {
    // Half of the time somebody waits: for a server, a browser, a disk. So two even where there are but two processors.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    sequence: { sequencer: SlowFirst },
    // Only with `--coverage`. Every file counts, those that no test imports too.
    coverage: {
      provider: 'v8',
      include: ['src/**/*.ts'],
      exclude: ['src/**/*.d.ts'],
      reporter: ['text-summary'],
      reportsDirectory: '.build/coverage',
      // What is reached, less a little: new code comes with its tests. A run of some files alone stays below. What of src/browser the
      // journeys run in a page is not counted by Node, so how much of that folder there is may not decide for the rest.
      thresholds: {
        'src/!(browser)/**': { lines: 96, branches: 91 },
        'src/browser/**': { lines: 30, branches: 34 },
      },
    },
    projects: [
      {
        test: {
          name: 'core',
          root: '.',
          isolate: false,
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/site/**'],
          setupFiles: ['tests/one-seed.ts'],
          testTimeout: 180_000,
          expect: PATIENT,
        },
      },
      {
        test: {
          name: 'site',
          root: '.',
          isolate: false,
          include: ['tests/site/**/*.test.ts'],
          globalSetup: 'tests/site/built-book.ts',
          runner: 'tests/site/browser-runner.ts',
          testTimeout: 180_000,
          hookTimeout: 300_000,
          expect: PATIENT,
        },
      },
    ],
  },
});
