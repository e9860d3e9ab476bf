import { expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts';
import { applyFix } from './apply-fix.ts';
import { allSlips, type Files, SOUND_BOOK } from './slips.ts';

const found = (files: Files): readonly Diagnostic[] =>
  compileBook(Object.entries(files).map(([path, text]) => ({ path, text }))).diagnostics;

test('the book that the slips are made of has none', () => {
  expect(found(SOUND_BOOK)).toEqual([]);
});

// All of them take minutes: each round of `npm run laws` tries other ones.
const EVERY = 20;
const FIRST = Number(process.env.LAWS_SEED ?? 0) % EVERY;

test('the one edit that is offered for a slip leaves no error at its place', () => {
  const wrong: string[] = [];
  let applied = 0;
  for (const { name, files } of allSlips().filter((_, index) => index % EVERY === FIRST)) {
    const before = found(files);
    for (const diagnostic of before) {
      const mended = applyFix(files, diagnostic);
      if (!mended) continue;
      applied++;
      const { file, start, fix } = diagnostic;
      const left = found(mended).filter(
        (next) =>
          next.severity === 'error' &&
          next.file === file &&
          next.start.line === start.line &&
          // What was told there before is another slip.
          (next.found === diagnostic.found || before.every((other) => other.found !== next.found)),
      );
      wrong.push(...left.map((next) => `${name}: ${diagnostic.found} → ${fix}, then ${next.found} → ${next.fix}`));
    }
  }
  expect(wrong).toEqual([]);
  expect(applied).toBeGreaterThan(30);
});
