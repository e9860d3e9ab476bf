import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { CATALOGUE, type DiagnosticCode } from '../../src/diagnostics/catalogue.ts';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts';
import { EXAMPLE_BOOK, EXAMPLES, type ExampleFiles } from '../../src/diagnostics/examples.ts';

/** What opening a photo of an example finds. */
const EXAMPLE_PHOTO_FAULTS: Readonly<Record<string, Pick<Diagnostic, 'found' | 'expected'>>> = {
  'photos/smoke.heic': { found: 'a HEIC picture', expected: 'a JPEG, PNG or WebP picture' },
};

/** Photos that are in the folder of `EXAMPLE_BOOK`. */
const EXAMPLE_PHOTOS: Readonly<
  Partial<Record<DiagnosticCode, { readonly bad: readonly string[]; readonly good: readonly string[] }>>
> = {
  'photo/missing': { bad: [], good: ['photos/smoke.jpg'] },
  'photo/unreadable': { bad: ['photos/smoke.heic'], good: ['photos/smoke.jpg'] },
  'photo/unused': { bad: ['photos/smoke.jpg'], good: ['photos/smoke.jpg'] },
};

/** The day on which the examples are compiled. */
const EXAMPLE_DAY = '2026-11-30';

function compiled(changes: ExampleFiles, photos: readonly string[] = []): ReturnType<typeof compileBook> {
  const files = { ...EXAMPLE_BOOK, ...changes };
  const sources = Object.entries(files).flatMap(([path, text]) => (text === undefined ? [] : [{ path, text }]));
  return compileBook(sources, {
    today: EXAMPLE_DAY,
    photos,
    photoFaults: new Map(Object.entries(EXAMPLE_PHOTO_FAULTS)),
  });
}

const CODES = Object.keys(CATALOGUE) as DiagnosticCode[];

test('the example book has no fault', () => {
  expect(compiled({}).diagnostics).toEqual([]);
});

describe.each(CODES)('%s', (code) => {
  const { bad, good } = EXAMPLES[code];
  const photos = EXAMPLE_PHOTOS[code];

  test('compileBook(bad example) reports it at a place, with what was found and expected, and nothing else', () => {
    const { diagnostics, complete } = compiled(bad, photos?.bad);
    // A file waits for a field that is told of itself.
    const cause = code === 'field/waits-for' ? ['field/to-fill-in'] : [];
    expect(diagnostics.map((diagnostic) => diagnostic.code)).toEqual([code, ...cause]);
    const [diagnostic] = diagnostics;
    expect(diagnostic!.severity).toBe(CATALOGUE[code].severity);
    expect(diagnostic!.found).not.toBe('');
    expect(diagnostic!.expected).not.toBe('');
    expect(diagnostic!.start.line).toBeGreaterThan(0);
    expect(complete).toBe(diagnostic!.severity !== 'error');
  });

  test('compileBook(good example) does not', () => {
    const { diagnostics, complete } = compiled(good, photos?.good);
    expect(diagnostics).toEqual([]);
    expect(complete).toBe(true);
  });
});
