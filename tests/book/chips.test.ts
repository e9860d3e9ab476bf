import { describe, expect, test } from 'vitest';
import { publishedBook } from '../../src/book/publish/published-book.ts';
import { readThing } from '../../src/recipe/read-thing.ts';
import { writeThing } from '../../src/recipe/write-thing.ts';
import { bookWith, compileWith, file } from './sample.ts';

const DROP = file(
  'title: Peat, a drop\nmade: 2026-03-14\nplastic: 100 ml supple\nadd: { peat: 1 drop }\nseen: { over-white: "#c8b48e", over-black: "#3a3228" }',
  'By the window.',
);

// What a chip teaches changes all colours; here it is to teach nothing.
const UNTAUGHT = { 'book.md': file('title: Two Cups\nlearn: false') };

const plain = bookWith(UNTAUGHT);

describe('a chip', () => {
  const book = bookWith({ 'chips/peat-a-drop.md': DROP });
  const [chip] = book.chips;

  test('is what was in its cup, and how that was seen, 6 mm thick where nothing is said', () => {
    expect(chip).toMatchObject({ id: 'peat-a-drop', title: 'Peat, a drop', made: '2026-03-14', publish: 'no' });
    const { gramsPerDrop } = book.materials.find(({ id }) => id === 'peat')!;
    expect(chip!.rounds).toHaveLength(1);
    const { contents, plastics, seen } = chip!.rounds[0]!;
    expect(contents).toEqual([{ material: 'peat', gramsPerMl: gramsPerDrop! / 100 }]);
    expect(plastics).toEqual([{ material: 'supple', fraction: 1 }]);
    expect(seen[0]).toMatchObject({ overWhite: { hex: '#c8b48e' }, overBlack: { hex: '#3a3228' }, thicknessMm: 6 });
  });

  test('is no recipe: all else of the book is as without it', () => {
    const { chips, ...rest } = bookWith({ ...UNTAUGHT, 'chips/peat-a-drop.md': DROP });
    expect(chips).toHaveLength(1);
    expect({ ...rest, chips: [] }).toEqual(plain);
  });

  test('may have the name of a recipe', () => {
    const twin = bookWith({ ...UNTAUGHT, 'chips/smoke.md': DROP });
    expect(twin.chips[0]!.rounds[0]!.contents.map(({ material }) => material)).toEqual(['peat']);
    expect(twin.recipes).toEqual(plain.recipes);
  });

  test('is written as it is read', () => {
    const read = readThing('chip', 'peat', { path: 'chips/peat.md', text: DROP });
    if (!('kind' in read)) throw new Error('a chip that is not read');
    const text = writeThing('chip', read.fields, read.notes);
    expect(readThing('chip', 'peat', { path: 'chips/peat.md', text })).toMatchObject({
      fields: read.fields,
      notes: read.notes,
    });
  });
});

test('a ladder of chips out of one cup: each step with what was in the cup by then', () => {
  const steps =
    'log:\n  - { add: { peat: 2 drops }, pour: 50 ml, seen: { over-white: "#c8b48e" } }\n  - { add: { peat: 2 drops }, seen: { over-white: "#8a7048", thickness: 3 mm } }';
  const [chip] = bookWith({ 'chips/peat.md': file(`title: Peat\nplastic: 100 ml supple\n${steps}`) }).chips;
  const doses = chip!.rounds.map(({ contents }) => contents[0]!.gramsPerMl);
  // The pour takes its part of the cup's volume, which the drops have made a little larger than its plastic.
  expect(doses[1]! / doses[0]!).toBeCloseTo(3, 1);
  expect(chip!.rounds.map(({ seen }) => seen[0]!.thicknessMm)).toEqual([6, 3]);
});

test('a step chip is one cup with a look at each thickness', () => {
  const [chip] = bookWith({
    'chips/peat.md': file(
      'title: Peat\nplastic: 100 ml\nadd: { peat: 2 drops }\nseen: [{ over-white: "#c8b48e", thickness: 3 mm }, { over-white: "#a8946e" }]',
    ),
  }).chips;
  expect(chip!.rounds).toHaveLength(1);
  expect(chip!.rounds[0]!.seen.map(({ thicknessMm }) => thicknessMm)).toEqual([3, 6]);
});

test('a chip that nobody looked at is told, and so is one whose look is of no step of its log', () => {
  const codes = (front: string): readonly string[] =>
    compileWith({ 'chips/peat.md': file(`title: Peat\nplastic: 100 ml\n${front}`) }).diagnostics.map(
      ({ code, file: at, start }) => `${code} ${at}:${start.line}`,
    );
  expect(codes('add: { peat: 2 drops }')).toEqual(['chip/unseen chips/peat.md:2']);
  expect(codes('log:\n  - { add: { peat: 2 drops } }\nseen: { over-white: "#c8b48e" }')).toEqual([
    'chip/seen-and-log chips/peat.md:6',
  ]);
  expect(codes('add: { peet: 2 drops }\nseen: { over-white: "#c8b48e" }')).toEqual([
    'recipe/unknown-material chips/peat.md:4',
  ]);
  expect(codes('seen: { over-white: "#28241e", over-black: "#c8b48e" }')).toEqual(['seen/reversed chips/peat.md:4']);
});

test('a chip that is still to be filled in is left out, and the book is complete without', () => {
  const { complete, book, leftOut, diagnostics } = compileWith({
    'chips/peat.md': DROP.replace('"#c8b48e"', ''),
  });
  expect({ complete, chips: book!.chips }).toEqual({ complete: true, chips: [] });
  expect(leftOut.map(({ path, why }) => [path, why])).toEqual([['chips/peat.md', 'to-fill-in']]);
  expect(diagnostics.map(({ code }) => code)).toEqual(['field/to-fill-in']);
});

test('a chip is left out with its bottle', () => {
  const { book, leftOut } = compileWith({
    'chips/peat.md': DROP,
    'chips/frost.md': file('title: Frost\nplastic: 90 ml\nadd: { frost: 1 g }\nseen: { over-white: "#e0e0e0" }'),
    'shelf/colorants/peat.md': file('title: Peat\nlook: { kind: paste }'),
  });
  expect(book!.chips.map(({ id }) => id)).toEqual(['frost']);
  expect(leftOut.map(({ path }) => path)).toContain('chips/peat.md');
});

describe('what readers have of chips', () => {
  const rust = file('title: Rust\nlook: { kind: pigment, colour: "#8a3a1a", dose: 10 drops per 100 ml }');
  const chip = (publish: string): string =>
    file(
      `title: Rustling\nplastic: 100 ml\nadd: { rust: 1 drop }\nseen: { over-white: "#c87a5e", camera: Box }${publish}`,
      'Quaggle.',
    );

  test('nothing, nor of a bottle that only a chip is of', () => {
    const shared = publishedBook(bookWith({ 'shelf/colorants/rust.md': rust, 'chips/rust.md': chip('') }));
    expect(JSON.stringify(shared)).not.toMatch(/rust|quaggle/i);
  });

  test('a chip that is published, with its bottles, and without what took its photo', () => {
    const shared = publishedBook(
      bookWith({ 'shelf/colorants/rust.md': rust, 'chips/rust.md': chip('\npublish: full') }),
    );
    expect(shared.chips.map(({ title }) => title)).toEqual(['Rustling']);
    expect(shared.materials.map(({ id }) => id)).toContain('rust');
    expect(JSON.stringify(shared)).not.toContain('Box');
  });
});
