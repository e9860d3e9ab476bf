import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nextAdditionFor } from '../../src/book/match/ask-matching.ts';
import { partFor } from '../../src/book/match/asked-cup.ts';
import type { Target } from '../../src/book/model/target.ts';
import type { Book } from '../../src/book/model.ts';
import { publishedBook } from '../../src/book/publish/published-book.ts';
import type { NextAddition } from '../../src/matching/next-addition.ts';
import { required } from '../../src/values/required.ts';
import { bookWith, file, recipeOf } from './sample.ts';

type L = number;

/** Colours over both cards as a camera notes them that shows all so much too light. */
const noted = (white: readonly [L, number, number], black: readonly [L, number, number], lighter = 0): string => {
  const lab = ([L, a, b]: readonly [L, number, number]): string => `{ lab: [${L + lighter}, ${a}, ${b}] }`;
  return `over-white: ${lab(white)}, over-black: ${lab(black)}, doubt: 2.9`;
};

/** Two recipes in one log each, looked at with one camera, and a target. */
const files = (camera: string, target: string, lighter = 0, publish = 'full'): Readonly<Record<string, string>> => ({
  'targets/claw.md': file(
    `title: Claw\nmold: minnow\npublish: full\n${noted([52, 16, 42], [30, 6, 12], lighter).replaceAll(', over', '\nover').replace(', doubt', '\ndoubt')}${target}`,
  ),
  'colours/smoke.md': file(
    `title: Smoke\nmold: minnow\nfor: claw\npublish: ${publish}\ncups:\n  body:\n    plastic: 100 ml supple\n    log:\n      - { add: { peat: 4 drops }, pour: 12 ml, seen: { ${noted([63, 12, 40], [26, 3, 7], lighter)}${camera} } }\n      - { add: { frost: 0.2 g }, pour: 12 ml, seen: { ${noted([62, 14, 40], [36, 4, 8], lighter)}${camera} } }`,
  ),
});
const PHONE = ', camera: phone';
const OF_TARGET = '\ncamera: phone';

function nextOf(book: Book): NextAddition {
  const recipe = recipeOf(book, 'smoke');
  return nextAdditionFor(book, recipe, recipe.cups[0]!, required(book.targets, 'claw'));
}

const partOf = (book: Pick<Book, 'targets'>): Target['parts'][number] => required(book.targets, 'claw').parts[0]!;
const amountsOf = ({ proposals }: NextAddition): readonly (readonly string[])[] =>
  proposals.map(({ additions }) => additions.map(({ material, text }) => `${text} ${material}`));

describe('a target that was photographed with the camera of the looks', () => {
  const book = bookWith(files(PHONE, OF_TARGET));
  const next = nextOf(book);

  test('is known by the number that the looks’ camera has, and the more surely by what that does to all', () => {
    expect(partOf(book)).toMatchObject({ camera: 'phone', cameraNumber: '1' });
    const { axisSd, camera } = partFor(required(book.targets, 'claw'), 'body', 1)!;
    expect(camera).toBe('1');
    expect(axisSd).toBeCloseTo(Math.sqrt((2.9 / 1.44) ** 2 / 3 - 0.6 ** 2), 10);
  });

  test('has the same proposed whatever the camera does to all colours', () => {
    expect(next.proposals.length).toBeGreaterThan(0);
    fc.assert(
      fc.property(fc.double({ min: -1, max: 1, noNaN: true }), (lighter) => {
        const other = nextOf(bookWith(files(PHONE, OF_TARGET, lighter)));
        expect(amountsOf(other)[0]).toEqual(amountsOf(next)[0]);
        expect(Math.abs(other.proposals[0]!.expected - next.proposals[0]!.expected)).toBeLessThan(0.15);
      }),
      { numRuns: 8 },
    );
  });

  test('by any other camera is one more thing that is off by itself', () => {
    const [another, third] = ['\ncamera: pocket', '\ncamera: tablet'].map((of) => bookWith(files(PHONE, of)));
    expect(partOf(another!)).not.toHaveProperty('cameraNumber');
    expect(nextOf(another!)).toEqual(nextOf(third!));
    expect(next.proposals[0]!.expected).not.toBe(nextOf(another!).proposals[0]!.expected);
  });

  test('is taken as it is where no camera made the looks', () => {
    expect(nextOf(bookWith(files('', OF_TARGET)))).toEqual(nextOf(bookWith(files('', '\ncamera: pocket'))));
  });

  test('says `camera` beside its parts for all that do not say their own', () => {
    const parts = `title: Claw\nmold: minnow\ncamera: phone\nparts:\n  body: { over-white: "#b09468" }\n  back: { over-white: "#a09468", camera: pocket }`;
    const { targets } = bookWith({ 'targets/claw.md': file(parts) });
    expect(required(targets, 'claw').parts.map(({ camera }) => camera)).toEqual(['phone', 'pocket']);
  });
});

describe('readers', () => {
  test('are told the number of a target’s camera, and not its name', () => {
    const shared = publishedBook(bookWith(files(PHONE, OF_TARGET)));
    expect(JSON.stringify(shared)).not.toContain('phone');
    expect(partOf(shared).cameraNumber).toBe('1');
  });

  test('are told nothing of a camera whose looks they have none of', () => {
    const shared = publishedBook(bookWith(files(PHONE, OF_TARGET, 0, 'no')));
    expect(JSON.stringify(shared)).not.toContain('phone');
    expect(partOf(shared)).not.toHaveProperty('cameraNumber');
  });
});
