import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Lab } from '../../src/book/model/colours.ts';
import type { BaitLook } from '../../src/book/model/looks.ts';
import type { Recipe } from '../../src/book/model/recipe.ts';
import { publishedBook } from '../../src/book/publish/published-book.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
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

/** A look as a file has it, at a bait or at a cup. */
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
          const usual = typeof white === 'string' || camera !== undefined ? 5 : 1;
          const vaguer = Math.hypot(after === 'hot' ? 4 : 0, wet ? 3 : 0);
          if (white === undefined) expect(made.doubt).toBeUndefined();
          else expect(made.doubt!.bound).toBeCloseTo(Math.hypot(doubt ?? usual, vaguer), 12);
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
      { fix: 'swap the two, or look again' },
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

/** Smoke in a log: a target of the colour that the model gives it, and looks at what is in the cup. */
const logged = (seen: string, more = ''): Readonly<Record<string, string>> => ({
  'targets/lure.md': file('title: Old lure\nmold: minnow\nover-white: "#a4814f"\nover-black: "#4e3d27"'),
  'colours/smoke.md': file(
    `title: Smoke\nmold: minnow\nfor: lure\ncups:\n  body:\n    plastic: 120 ml supple\n    log:\n      - { add: { peat: 6 drops }, pour: 14 ml, seen: ${seen} }${more}`,
  ),
});

const roundsOf = (files: Readonly<Record<string, string>>): Recipe['cups'][number]['rounds'] =>
  recipeOf(bookWith(files), 'smoke').cups[0]!.rounds;

describe('a look at a cup', () => {
  const atCup = look.map(({ side: _, rounds: __, ...fields }) => fields);

  test('is the same by itself and as the only one of a list, and so is all that follows from it', () => {
    fc.assert(
      fc.property(atCup, (each) => {
        const [one, listed] = [each, [each]].map((seen) => {
          const { source: _, ...recipe } = recipeOf(bookWith(logged(JSON.stringify(seen))), 'smoke');
          return recipe;
        });
        expect(listed).toEqual(one);
      }),
      { numRuns: 15 },
    );
  });

  test('may be one of a list, which is one round in a book that survives JSON', () => {
    fc.assert(
      fc.property(fc.array(atCup, { minLength: 1, maxLength: 3 }), (all) => {
        const book = bookWith(logged(JSON.stringify(all)));
        expect(JSON.parse(JSON.stringify(book))).toEqual(book);
        const rounds = roundsOf(logged(JSON.stringify(all)));
        expect(rounds).toHaveLength(1);
        expect(rounds[0]!.seen).toHaveLength(all.length);
      }),
      { numRuns: 15 },
    );
  });

  test.each([
    [
      'what has settled before what is hot',
      '[{ over-white: "#a4814f", after: hot }, { over-white: "#a08050", after: 10 min }]',
      '#a08050',
    ],
    [
      'the next day before what is not said',
      '[{ over-white: "#a4814f", after: next day }, { over-white: "#a08050" }]',
      '#a4814f',
    ],
    ['what is dry before what is wet', '[{ over-white: "#a4814f" }, { over-white: "#a08050", wet: true }]', '#a4814f'],
    [
      'what is nearest to the body of 9 mm',
      '[{ over-white: "#a4814f", thickness: 9 mm }, { over-white: "#a08050", thickness: 2 mm }]',
      '#a4814f',
    ],
    ['the later of two alike', '[{ over-white: "#a4814f" }, { over-white: "#a08050" }]', '#a08050'],
    ['one with a colour', '[{ over-white: "#a4814f", after: hot }, { note: dull }]', '#a4814f'],
  ])('of several, the cup is judged by %s', (_, seen, judged) => {
    const recipe = recipeOf(bookWith(logged(seen)), 'smoke');
    expect(recipe.cups[0]!.rounds[0]!.seen[0]!.overWhite!.hex).toBe(judged);
    expect(recipe.match!.cups[0]!.rounds[0]!.overWhite!.hex).toBe(judged);
  });

  test('of a chip is judged as thick as the chip is: one as the model makes it says of the cup what the bait would', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 4 }), fc.integer({ min: 4, max: 30 }), (mm, drops) => {
        const cup = (body: number): Recipe['cups'][number] =>
          recipeOf(
            bookWith({
              'molds/minnow.md': file(`title: Minnow\ncavity: 3.1 ml\nbody: ${body} mm\nthin: 1 mm`),
              'colours/smoke.md': file(
                `title: Smoke\nmold: minnow\ncups:\n  body: { plastic: 120 ml supple, add: { peat: ${drops} drops, frost: 1 pinch } }`,
              ),
            }),
            'smoke',
          ).cups[0]!;
        const lab = ({ L, a, b }: Lab): string => `{ lab: [${L}, ${a}, ${b}] }`;
        const [chip, bait] = [cup(mm).body, cup(9).body];
        const { overWhite, overBlack } = bait;
        const judged = (thickness: string): Recipe => {
          const seen = `{ over-white: ${lab(chip.overWhite.lab)}, over-black: ${lab(chip.overBlack.lab)}${thickness} }`;
          return recipeOf(
            bookWith({
              'targets/lure.md': file(
                `title: Old lure\nmold: minnow\nover-white: ${lab(overWhite.lab)}\nover-black: ${lab(overBlack.lab)}`,
              ),
              'colours/smoke.md': file(
                `title: Smoke\nmold: minnow\nfor: lure\ncups:\n  body:\n    plastic: 120 ml supple\n    log:\n      - { add: { peat: ${drops} drops, frost: 1 pinch }, pour: 14 ml, seen: ${seen} }`,
              ),
            }),
            'smoke',
          );
        };
        const asChip = judged(`, thickness: ${mm} mm`);
        expect(asChip.match!.cups[0]!.rounds[0]).toMatchObject({ basis: 'seen', moved: 'thickness' });
        expect(asChip.match!.cups[0]!.rounds[0]!.verdict.deltaE).toBeLessThan(0.1);
        const [seen] = asChip.cups[0]!.rounds[0]!.seen;
        // A look that is as was expected teaches nothing new.
        for (const view of ['overWhite', 'overBlack'] as const)
          expect(deltaE00(seen!.predicted![view].lab, chip[view].lab)).toBeLessThan(0.1);
        expect(Math.max(seen!.missedBy!.overWhite!, seen!.missedBy!.overBlack!)).toBeLessThan(0.1);
        // As if it were the bait, the same chip is another colour.
        expect(judged('').match!.cups[0]!.rounds[0]!.verdict.deltaE).toBeGreaterThan(1);
      }),
      { numRuns: 8 },
    );
  });

  const MOVED = '\n      - { pour: 14 ml, seen: { over-white: "#8a6a44"';
  test.each([
    ['says of the cup that something went in unlogged', ' } }', ['seen/unlogged']],
    ['says nothing of it where somebody looked again', ', checked: true } }', []],
    ['says nothing of it at another thickness', ', thickness: 3 mm } }', []],
    ['says nothing of it while the cup is hot', ', after: hot } }', []],
  ])('that differs from the one before %s', (_, rest, codes) => {
    const { diagnostics } = compileWith(logged('{ over-white: "#b09468" }', `${MOVED}${rest}`));
    // Whether the look fits the log at all is another question.
    expect(diagnostics.map(({ code }) => code).filter((code) => code !== 'log/does-not-fit')).toEqual(codes);
  });

  test('that the shelf cannot make is doubted, unless somebody looked again', () => {
    const doubt = (checked: string): string | undefined => {
      const seen = `{ over-white: "#2040ff", over-black: "#102080"${checked} }`;
      return recipeOf(bookWith(logged(seen)), 'smoke').match!.cups[0]!.next!.doubt?.kind;
    };
    expect(doubt('')).toBe('misfit');
    expect(doubt(', checked: true')).toBeUndefined();
  });
});
