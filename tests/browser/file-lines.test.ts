import { expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { baitLines, chipLines } from '../../src/browser/photo/file-lines.ts';
import { hasErrors } from '../../src/diagnostics/diagnostic.ts';
import type { PhotoMeasured } from '../../src/photo/photo-measured.ts';
import type { Source } from '../../src/recipe/source.ts';
import { askedChips } from '../../src/render/asked-chips.ts';
import { knownText } from '../../src/words/how-known.ts';
import { FILES } from './match-book.ts';

const BAIT: PhotoMeasured = {
  kind: 'measured',
  card: 'small',
  overWhite: { L: 68.2, a: 12.5, b: 39.4 },
  overBlack: { L: 35.7, a: 6.7, b: 19.2 },
  contrast: { ratio: 0.22, bound: 0.058 },
  doubt: {
    bound: 7.64,
    largest: 'tone',
    terms: { tone: 2, paper: 1, camera: 2, field: 0.5, mixed: 0, own: 0.5, clip: 0 },
  },
  flakes: [{ sizeMm: 0.912, coverage: 0.061, coverageSd: 0.01, count: 48, lab: { L: 80, a: 0, b: 3 } }],
  baitPixels: [],
  zonePixels: [],
  warnings: [],
};

const compiled = (files: readonly Source[]): NonNullable<ReturnType<typeof compileBook>['book']> => {
  const { book, diagnostics } = compileBook(files);
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  expect(hasErrors(diagnostics)).toBe(false);
  return book!;
};

test('the lines of a bait are a target of the book, with its doubt, its contrast’s doubt and its flake', () => {
  const lines = baitLines(BAIT, 'kitchen phone').map(({ text }) => text);
  const text = `---\ntitle: By photo\nmold: minnow\n${lines.join('\n')}\n---\n`;
  const { targets } = compiled([...FILES, { path: 'targets/photo.md', text }]);
  const [part] = targets.find(({ id }) => id === 'photo')!.parts;
  expect(part!.doubt).toMatchObject({ means: 'screen', bound: 7.6 });
  expect(part).toMatchObject({ camera: 'kitchen phone', contrastDoubt: expect.closeTo(0.058) });
  expect(part!.flakes).toEqual([{ hex: '#c9c6c1', sizeMm: 0.91, coverage: 0.061 }]);
});

test('a chip of a product makes its material known as photographed', () => {
  const [lines] = chipLines(
    { kind: 'label-chip', dose: '2 drops per 100 ml', thickness: '6 mm' },
    BAIT,
    'kitchen phone',
    '2026-03-14',
  );
  const text = `---\ntitle: Rust\n${lines!.text}\n---\n`;
  const { materials } = compiled([...FILES, { path: 'shelf/colorants/rust.md', text }]);
  expect(knownText(materials.find(({ id }) => id === 'rust')!.known)).toBe('photographed');
});

test('a chip that the book asks for comes as its whole file, which the book takes', () => {
  const [asked] = askedChips(compiled(FILES));
  const [lines] = chipLines({ kind: 'own-chip', chip: asked!.start }, BAIT, 'kitchen phone', '2026-03-14');
  const { chips } = compiled([...FILES, { path: asked!.start.path, text: `${lines!.text}\n` }]);
  expect(chips.map(({ title }) => title)).toEqual([asked!.start.title]);
  expect(chips[0]!.rounds[0]!.seen[0]).toMatchObject({
    camera: 'kitchen phone',
    contrastDoubt: expect.closeTo(0.058),
    thicknessMm: 6,
  });
});
