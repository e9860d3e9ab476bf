import { expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { loadBook } from '../../src/shell/load-book.ts';

const PATH = 'colours/rowan-week.md';
const { sources, photos } = loadBook('recipes');

test('the demo book finds what its story tells of: Rust was written, and Rowan was in the cup', () => {
  const asked = (written: string): readonly string[] => {
    const files = sources.map((each) =>
      each.path === PATH ? { ...each, text: each.text.replace('rowan: 18 drops, heat-guard', written) } : each,
    );
    const { diagnostics } = compileBook(files, { photos });
    return diagnostics.flatMap(({ code, file, start, fix = '' }) =>
      code === 'log/does-not-fit' ? `${file}:${start.line}:${start.column} ${fix}` : [],
    );
  };
  expect(asked('rowan: 18 drops, heat-guard')).toEqual([]);
  const [found, ...others] = asked('rust: 18 drops, heat-guard');
  expect(others).toEqual([]);
  expect(found).toMatch(/^colours\/rowan-week\.md:14:16 Was it Rowan, not Rust\?/);
});
