/**
 * The folder of check data beside the project. It is no part of the project: where it is missing, the tests that need it are
 * skipped, and say so.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'vitest';

// From the working folder, which is the project's, so that bundled benchmarks find it too.
const FOLDER = join(process.cwd(), '../shared/reference');

/** A test against check data; skipped, with the reason in its title, where there is none. */
export function referenceTest(title: string, check: () => void): void {
  if (existsSync(FOLDER)) test(title, check);
  else test.skip(`${title} (skipped: no folder ../shared/reference)`, check);
}

/** The text of a file of check data. */
export function referenceText(file: string): string {
  return readFileSync(join(FOLDER, file), 'utf8');
}

/** The bytes of a picture among it. */
export function referenceBytes(file: string): Uint8Array {
  return readFileSync(join(FOLDER, file));
}

/** The cells of a CSV file, without comments: the header first. */
export function referenceRows(file: string): string[][] {
  return referenceText(file)
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.split(','));
}

/** The numbers of a CSV file, without header. */
export function referenceNumbers(file: string): number[][] {
  return referenceRows(file)
    .slice(1)
    .map((row) => row.map(Number));
}
