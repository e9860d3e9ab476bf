import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import type { Book } from '../../src/book/model.ts';
import { publishedBook } from '../../src/book/publish/published-book.ts';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts';
import { EXAMPLE_BOOK } from '../../src/diagnostics/examples.ts';

const file = (front: string): string => `---\n${front}\n---\n`;
const smoke = (...steps: readonly string[]): string =>
  file(
    `title: Smoke\nmold: minnow\ncups:\n  body:\n    plastic: 120 ml supple\n    log:\n${steps.map((step) => `      - ${step}`).join('\n')}`,
  );

/** As what is in the cup looks, and as it looks with nothing more in it. */
const FIRST = '{ add: { peat: 6 drops }, pour: 14 ml, seen: { over-white: "#8a6b47", over-black: "#4a4032" } }';
const SAME = 'over-white: "#896a46", over-black: "#494032"';
const RUST = file('title: Rust\nlook: { kind: pigment, colour: "#b5451f", dose: 12 drops per 100 ml }');

function compiled(files: Readonly<Record<string, string>>): { book: Book; told: readonly Diagnostic[] } {
  const all = { ...EXAMPLE_BOOK, 'shelf/colorants/rust.md': RUST, ...files };
  const { book, diagnostics } = compileBook(Object.entries(all).map(([path, text]) => ({ path, text })));
  return { book: book!, told: diagnostics };
}

const wrong = (files: Readonly<Record<string, string>>): readonly Diagnostic[] =>
  compiled(files).told.filter(({ code }) => code === 'log/does-not-fit');

const placed = ([first]: readonly Diagnostic[], text: string): string => {
  const { line, column } = first!.start;
  return text.split('\n')[line - 1]!.slice(column - 1);
};

describe('a look that does not fit the log', () => {
  test('is told where the addition stands that did not go in', () => {
    const text = smoke(FIRST, `{ add: { rust: 12 drops }, pour: 14 ml, seen: { ${SAME} } }`);
    const told = wrong({ 'colours/smoke.md': text });
    expect(told).toHaveLength(1);
    expect(placed(told, text)).toMatch(/^rust: 12 drops/);
    expect(told[0]!.found).toMatch(/^look of round 2 that is ΔE \d+\.\d from what the log makes$/);
    expect(told[0]!.fix).toMatch(/^Did the 12 drops of Rust go in\?.*`checked: true`/);
  });

  test('is told where it went in, though nobody looked then', () => {
    const text = smoke(FIRST, '{ add: { rust: 12 drops } }', `{ pour: 14 ml }`, `{ pour: 14 ml, seen: { ${SAME} } }`);
    expect(placed(wrong({ 'colours/smoke.md': text }), text)).toMatch(/^rust: 12 drops/);
  });

  test('asks of a dilution by its name', () => {
    const text = smoke(FIRST, `{ add: { thin-rust: 60 drops }, pour: 14 ml, seen: { ${SAME} } }`);
    const cut = file('title: Thin Rust\ncut: { of: rust, with: supple, one-in: 5 }');
    const told = wrong({ 'shelf/colorants/thin-rust.md': cut, 'colours/smoke.md': text });
    expect(placed(told, text)).toMatch(/^thin-rust: 60 drops/);
    expect(told[0]!.fix).toMatch(/^Did the 60 drops of .*Rust/);
  });

  test('is asked only once where nothing is logged at all', () => {
    const { told } = compiled({
      'colours/smoke.md': smoke(FIRST, '{ pour: 14 ml, seen: { over-white: "#a03a1c", over-black: "#8a3218" } }'),
    });
    expect(told.map(({ code }) => code)).toEqual(['seen/unlogged']);
  });

  test('is told of a chip, and of a finished bait', () => {
    const pour = (drops: number, seen: string): string =>
      file(`title: Rust\nplastic: 100 ml supple\nadd: { rust: ${drops} drops }\nseen: { ${seen} }`);
    const others = {
      'chips/rust-12.md': pour(12, 'over-white: "#b5451f", over-black: "#93391c"'),
      'chips/rust-10.md': pour(10, 'over-white: "#b74822", over-black: "#8d381c"'),
    };
    const chip = file(
      'title: Rust, alone\nplastic: 100 ml supple\nadd: { rust: 12 drops }\nseen: { over-white: "#e6e4de", over-black: "#1f1f1e" }',
    );
    expect(placed(wrong({ ...others, 'chips/rust.md': chip }), chip)).toMatch(/^(rust: 12 drops|seen:)/);
    const bait = smoke(FIRST).replace('cups:', 'seen: { over-white: "#3050b0", over-black: "#2a449a" }\ncups:');
    const [told] = wrong({ 'colours/smoke.md': bait });
    expect(told!.found).toMatch(/^look at the finished bait/);
    expect(placed([told!], bait)).toMatch(/^\{ over-white|^seen/);
  });

  test('is answered where it was checked, and by a book that learns nothing', () => {
    const doubtful = (look: string): string =>
      smoke(FIRST, `{ add: { rust: 12 drops }, pour: 14 ml, seen: { ${look}${SAME} } }`);
    expect(wrong({ 'colours/smoke.md': doubtful('checked: true, ') })).toEqual([]);
    expect(wrong({ 'book.md': file('title: Two Cups\nlearn: false'), 'colours/smoke.md': doubtful('') })).toEqual([]);
  });

  test('is in the book with its weight, and not in what readers get', () => {
    const { book } = compiled({
      'colours/smoke.md': smoke(FIRST, `{ add: { rust: 12 drops }, pour: 14 ml, seen: { ${SAME} } }`),
    });
    const [doubted] = book.doubted!;
    expect(doubted).toMatchObject({ of: 'recipe', id: 'smoke', at: { cup: 'body', round: 2 } });
    expect(doubted!.weight).toBeLessThan(0.2);
    expect(doubted!.wrong!.slips[0]).toMatchObject({ kind: 'left-out', title: 'Rust', dose: '12 drops' });
    expect(JSON.parse(JSON.stringify(book))).toEqual(book);
    expect(publishedBook(book)).not.toHaveProperty('doubted');
  });
});
