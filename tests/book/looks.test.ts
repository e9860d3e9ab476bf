import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BaitLook } from '../../src/book/model.ts';
import { publishedBook } from '../../src/book/publish/published-book.ts';
import { bookWith, compileWith, file, recipeOf } from './sample.ts';

/** A recipe of two cups with logs of two rounds and of one. */
const CUPS = `cups:
  back:
    plastic: 60 ml supple
    log:
      - { add: { peat: 6 drops }, pour: 6 ml }
      - { add: { peat: 3 drops }, pour: 6 ml }
  belly:
    plastic: 60 ml supple
    log: [{ add: { frost: 1 pinch }, pour: 6 ml }]`;

const recipe = (seen: string): Readonly<Record<string, string>> => ({
  'colours/smoke.md': file(`title: Smoke\nmold: minnow\n${CUPS}\nseen: ${seen}`),
});

const looksAt = (seen: unknown): readonly BaitLook[] => {
  const text = typeof seen === 'string' ? seen : JSON.stringify(seen);
  return recipeOf(bookWith(recipe(text)), 'smoke').seen!;
};

const light = fc.integer({ min: 0x80, max: 0xff });
const hex = (...channels: readonly number[]): string =>
  `#${channels.map((channel) => channel.toString(16).padStart(2, '0')).join('')}`;
/** Over white and over black, the second darker. */
const colours = fc.oneof(
  fc.tuple(light, light, light).map(([r, g, b]) => [hex(r, g, b), hex(r >> 2, g >> 2, b >> 2)]),
  fc
    .tuple(fc.integer({ min: 20, max: 90 }), fc.integer({ min: -30, max: 30 }), fc.integer({ min: 0, max: 20 }))
    .map(([L, a, less]) => [{ lab: [L, a, 12.5] }, { lab: [L - less, a, 8], light: 'D50' }]),
);
const one = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(value, { nil: undefined });

/** A look as a file has it. */
const look = fc
  .record({
    colours: one(colours),
    doubt: one(fc.double({ min: 0.1, max: 20, noNaN: true })),
    'contrast-doubt': one(fc.integer({ min: 1, max: 30 }).map((percent) => `${percent}%`)),
    thickness: one(fc.integer({ min: 1, max: 12 }).map((mm) => `${mm} mm`)),
    after: one(fc.constantFrom('hot', '10 min', 'next day')),
    wet: one(fc.constant(true)),
    checked: one(fc.constant(true)),
    note: one(fc.constantFrom('dull', 'as the eel is')),
    camera: one(fc.constantFrom('the old phone', 'K-4')),
    side: one(fc.constantFrom('back', 'belly')),
    rounds: one(fc.constantFrom({ back: 1 }, { back: 2, belly: 1 })),
  })
  .map(({ colours: [white, black] = [], ...fields }) => ({ 'over-white': white, 'over-black': black, ...fields }));

describe('a look at a finished bait', () => {
  test('is the same by itself and as the only one of a list', () => {
    fc.assert(
      fc.property(look, (each) => {
        expect(looksAt([each])).toEqual(looksAt(each));
      }),
      { numRuns: 25 },
    );
  });

  test('keeps what its file says of it, in a book that survives JSON', () => {
    fc.assert(
      fc.property(fc.array(look, { minLength: 1, maxLength: 3 }), (all) => {
        const book = bookWith(recipe(JSON.stringify(all)));
        expect(JSON.parse(JSON.stringify(book))).toEqual(book);
        const seen = recipeOf(book, 'smoke').seen!;
        expect(seen).toHaveLength(all.length);
        for (const [index, made] of seen.entries()) {
          const { doubt, thickness, rounds, after, wet, checked, note, camera, side, ...fields } = all[index]!;
          expect({ after, wet, checked, note, camera, side }).toEqual({
            after: made.after,
            wet: made.wet,
            checked: made.checked,
            note: made.note,
            camera: made.camera,
            side: made.side,
          });
          expect(made.thicknessMm).toBe(thickness === undefined ? undefined : Number.parseInt(thickness, 10));
          expect(made.rounds).toEqual(rounds && Object.entries(rounds).map(([cup, number]) => ({ cup, number })));
          const white = fields['over-white'];
          const usual = typeof white === 'string' ? 5 : 1;
          expect(made.doubt?.bound).toBe(white === undefined ? undefined : (doubt ?? usual));
          expect(made.doubt?.usual).toBe(white === undefined || doubt !== undefined ? undefined : true);
        }
      }),
      { numRuns: 25 },
    );
  });

  test('that was measured band by band keeps its bands', () => {
    const reflectance = Array.from({ length: 31 }, (_, band) => 20 + band);
    const [seen] = looksAt({ 'over-white': { reflectance } });
    expect(seen!.doubt!.bound).toBe(1);
    expect(seen!.reflectance!.overWhite).toHaveLength(36);
  });

  test.each([
    [
      '{ over-white: "#b09468", thicknes: 3 mm }',
      'field/unknown',
      { line: 13, column: 32 },
      { nearest: 'thickness', fix: 'write `thickness`' },
    ],
    [
      '[{ over-white: "#b09468" }, { thicknes: 3 mm }]',
      'field/unknown',
      { line: 13, column: 37 },
      { nearest: 'thickness', fix: 'write `thickness`' },
    ],
    ['{ after: tomorrow }', 'field/value', { line: 13, column: 16 }, { expected: 'one of hot, 10 min, next day' }],
    ['{ side: bak }', 'seen/unknown-cup', { line: 13, column: 15 }, { nearest: 'back', fix: 'write `back`' }],
    [
      '[{ side: back }, { rounds: { bely: 1 } }]',
      'seen/unknown-cup',
      { line: 13, column: 36 },
      { nearest: 'belly', fix: 'write `belly`' },
    ],
    [
      '{ rounds: { back: 3 } }',
      'seen/unknown-round',
      { line: 13, column: 25 },
      { expected: 'a round from 1 to 2', fix: 'write `2`, or add what is missing to the log' },
    ],
    [
      '{ over-white: "#4a3a2c", over-black: "#8a7a5c" }',
      'seen/reversed',
      { line: 13, column: 44 },
      { fix: 'change the two over, or look again' },
    ],
  ])('as %s is told of with its place and the edit', (seen, code, start, rest) => {
    expect(compileWith(recipe(seen)).diagnostics).toMatchObject([{ code, start, ...rest }]);
  });

  test('is shared without its camera, in the book as in the file', () => {
    const seen = '{ over-white: "#b09468", camera: the old phone, after: hot }';
    const { recipes } = publishedBook(bookWith(recipe(seen)));
    expect(JSON.stringify(recipes)).not.toMatch(/camera|old phone/);
    expect(recipes[0]!.seen).toMatchObject([{ after: 'hot', overWhite: { hex: '#b09468' } }]);
  });
});
