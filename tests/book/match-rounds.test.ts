import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { nextAdditionFor } from '../../src/book/match/ask-matching.ts';
import type { Recipe } from '../../src/book/model/recipe.ts';
import type { Book } from '../../src/book/model.ts';
import { publishedBook } from '../../src/book/publish/published-book.ts';
import type { Source } from '../../src/recipe/source.ts';
import { expectClose } from '../optics/close.ts';

const BOOK: readonly Source[] = [
  { path: 'book.md', text: '---\ntitle: Rounds\ntolerance: 2\n---\n' },
  { path: 'shelf/plastics/supple.md', text: '---\ntitle: Supple\n---\n' },
  {
    path: 'shelf/colorants/peat.md',
    text: '---\ntitle: Peat\nlook: { kind: dye, colour: "#7a4a24", dose: 20 drops per 120 ml }\n---\n',
  },
  {
    path: 'shelf/powders/ivory.md',
    text: '---\ntitle: Ivory\nlook: { kind: pearl, colour: "#ece6d6", dose: 1 % }\n---\n',
  },
  { path: 'molds/minnow.md', text: '---\ntitle: Minnow\ncavity: 12 ml\nbody: 8 mm\n---\n' },
];
const recipe = (text: string): Source => ({
  path: 'colours/trial.md',
  text: `---\ntitle: Trial\nfor: leaf\n${text}\n---\n`,
});
const target = (text: string): Source => ({
  path: 'targets/leaf.md',
  text: `---\ntitle: Leaf\nmold: minnow\n${text}\n---\n`,
});
const LEAF = 'over-white: "#b98a5a"\nover-black: "#7d6448"';

function compiled(...sources: readonly Source[]): Book {
  const { book, diagnostics } = compileBook([...BOOK, ...sources]);
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  return book!;
}
const trial = (...sources: readonly Source[]): Recipe => compiled(...sources).recipes.find(({ id }) => id === 'trial')!;

const LOGGED = `cups:
  body:
    plastic: 120 ml supple
    log:
      - add: { peat: 6 drops }
        pour: 14 ml
        seen: { over-white: "#d9b48a", over-black: "#2a2420" }
      - add: { ivory: 1/8 tsp }
        pour: 14 ml
        note: forgot to look`;

describe('rounds beside the target', () => {
  test('compileBook(…) judges a round by what was seen, and one that was not looked at by the model', () => {
    const { match } = trial(recipe(LOGGED), target(LEAF));
    const [cup] = match!.cups;
    expect(match).toMatchObject({ target: 'leaf', tolerance: 2 });
    expect(cup!.rounds.map(({ basis }) => basis)).toEqual(['seen', 'predicted']);
    expect(cup!.rounds[0]!.overWhite!.hex).toBe('#d9b48a');
    expect(cup!.rounds[0]!.verdict.opacity).toMatchObject({ towards: 'clear' });
  });

  test('compileBook(…) judges a round that was not looked at by the same corrected model as the next addition', () => {
    const book = compiled(recipe(LOGGED), target(LEAF));
    const [logged] = book.recipes;
    const { now } = nextAdditionFor(book, logged!, logged!.cups[0]!, book.targets[0]!);
    expectClose(logged!.match!.cups[0]!.rounds[1]!.verdict.deltaE, now!.deltaE, 0.001);
  });

  test('compileBook(…) says what to add to what is left of a cup that is not there yet', () => {
    const aim = trial(
      recipe('cups:\n  body: { plastic: 120 ml supple, add: { peat: 14 drops, ivory: 1/4 tsp } }'),
      target(LEAF),
    ).body;
    const reachable = target(`over-white: "${aim.overWhite.hex}"\nover-black: "${aim.overBlack.hex}"`);
    const unseen = LOGGED.replace(/\n *seen: .*/, '');
    const { next } = trial(recipe(unseen), reachable).match!.cups[0]!;
    expect(next!.advice.kind).toBe('add');
    expect(next!.advice.kind).toBe('add');
    expect(next!.proposals[0]!.additions.some(({ title }) => /Peat|Ivory/.test(title))).toBe(true);
    for (const { left } of next!.proposals) expect(Number.isFinite(left.deltaE)).toBe(true);
  });

  test('compileBook(…) has nothing more to say where the last round is right, or the cup is empty', () => {
    const right = trial(
      recipe(LOGGED.replace('note: forgot to look', 'seen: { over-white: "#b98a5a", over-black: "#7d6448" }')),
      target(LEAF),
    );
    expect(right.match!.cups[0]!.rounds[1]!.verdict.within).toBe(true);
    expect(right.match!.cups[0]!.next).toBeUndefined();
    const empty = trial(recipe(`${LOGGED}\n      - pour: 92 ml`), target(LEAF));
    expect(empty.cups[0]!.leftMl).toBeLessThan(1);
  });

  test('compileBook(…) moves what was seen to the thickness of the target', () => {
    const [thin] = trial(recipe(LOGGED), target(`${LEAF}\nthickness: 4 mm`)).match!.cups[0]!.rounds;
    const [same] = trial(recipe(LOGGED), target(LEAF)).match!.cups[0]!.rounds;
    expect(thin!.moved).toBe('thickness');
    expect(same!.moved).toBeUndefined();
    expect(thin!.overWhite!.lab.L).toBeGreaterThan(same!.overWhite!.lab.L);
  });

  test('compileBook(…) matches the cups of a laminate with the parts of their names', () => {
    const cups =
      'pattern: laminate\ncups:\n  back: { plastic: 100 ml supple, add: { peat: 20 drops } }\n  belly: { plastic: 100 ml supple, add: { ivory: 1/4 tsp } }';
    const parts =
      'parts:\n  belly: { over-white: "#d0c8b8", over-black: "#a09888" }\n  back: { over-white: "#6a4a30" }';
    const { match } = trial(recipe(cups), target(parts));
    expect(match!.cups.map(({ cup, part }) => [cup, part])).toEqual([
      ['back', 'back'],
      ['belly', 'belly'],
    ]);
    expect(match!.cups[0]!.rounds[0]!.verdict.opacity).toBeUndefined();
  });

  describe('of a laminate', () => {
    const cups = (belly: string): string =>
      `pattern: laminate\ncups:\n  back: { share: 40%, plastic: 100 ml supple, add: { peat: 20 drops } }\n  belly:\n    plastic: 150 ml supple\n${belly}`;
    const bait = trial(recipe(cups('    add: { ivory: 1/4 tsp, peat: 2 drops }')), target(LEAF));
    const inLab = ({ lab: { L, a, b } }: Recipe['body']['overWhite']): string => `{ lab: [${L}, ${a}, ${b}] }`;
    const side = ({ overWhite, overBlack }: Recipe['body']): string =>
      `{ over-white: ${inLab(overWhite)}, over-black: ${inLab(overBlack)} }`;
    const whole = `parts:\n  back: ${side(bait.body)}\n  belly: ${side(bait.other!)}`;
    const alone = bait.cups[1]!.body;
    // These sides are as the book shows them, which believes a label no further than it goes; matching begins with the labels as they stand.
    const LABELS = 3.5;

    test('compileBook(…) takes two parts for the sides of a finished bait, each seen with the other behind it', () => {
      const { match } = trial(recipe(cups('    add: { ivory: 1/4 tsp, peat: 2 drops }')), target(whole));
      for (const { rounds } of match!.cups) expect(rounds[0]!.verdict.deltaE).toBeLessThan(LABELS);
    });

    test('compileBook(…) takes the parts of a target that says `apart` for the cups by themselves', () => {
      const { match } = trial(
        recipe(cups('    add: { ivory: 1/4 tsp, peat: 2 drops }')),
        target(`${whole}\napart: true`),
      );
      for (const { rounds } of match!.cups) expect(rounds[0]!.verdict.deltaE).toBeGreaterThan(3);
      const apart = target(`parts:\n  belly: ${side(alone)}\n  back: ${side(bait.cups[0]!.body)}\napart: true`);
      const again = trial(recipe(cups('    add: { ivory: 1/4 tsp, peat: 2 drops }')), apart).match!;
      for (const { rounds } of again.cups) expect(rounds[0]!.verdict.deltaE).toBeLessThan(LABELS);
    });

    test('compileBook(…) shows a test pour of one cup as the finished bait would show it', () => {
      const log = `    log:\n      - add: { ivory: 1/4 tsp, peat: 2 drops }\n        pour: 14 ml\n        seen: ${side(alone)}`;
      const [, belly] = trial(recipe(cups(log)), target(whole)).match!.cups;
      expect(belly!.rounds[0]).toMatchObject({ basis: 'seen', moved: 'laminate' });
      expect(belly!.rounds[0]!.verdict.deltaE).toBeLessThan(LABELS);
      expect(belly!.next).toBeUndefined();
    });

    test('compileBook(…) says what one cup lacks with the other behind it', () => {
      const log = '    log:\n      - add: { ivory: 1/16 tsp, peat: 2 drops }\n        pour: 14 ml';
      const [, belly] = trial(recipe(cups(log)), target(whole)).match!.cups;
      expect(belly!.rounds[0]!.verdict.lightness).toMatchObject({ towards: 'dark' });
      const [best] = belly!.next!.proposals;
      expect(best!.additions.map(({ material }) => material)).toContain('ivory');
      // Of a powder that is known by its label alone a little less is expected to come nearer than all that is missing.
      expect(best!.left.deltaE).toBeLessThan(belly!.rounds[0]!.verdict.deltaE / 4);
      // 3/16 tsp are missing in what 14 ml were poured from.
      expectClose(best!.additions.find(({ material }) => material === 'ivory')!.grams, 0.25, 0.1);
    });
  });

  test('compileBook(…) of a recipe none of whose cups a part is for has no match', () => {
    expect(
      trial(
        recipe('cups:\n  body: { plastic: 100 ml supple, add: { peat: 9 drops } }'),
        target('parts:\n  back: { over-white: "#6a4a30" }\n  belly: { over-white: "#6a4a30" }'),
      ).match,
    ).toBeUndefined();
  });
});

test('publishedBook(…) leaves nothing of a target that is not published, its match neither', () => {
  const book = publishedBook(compiled(recipe(LOGGED), target(`${LEAF}\npublish: no`)));
  const [published] = book.recipes;
  expect(published!.target).toBeUndefined();
  expect(published!.match).toBeUndefined();
  expect(JSON.stringify(book)).not.toContain('leaf');
});

test('compileBook(…) keeps a match as a plain value', () => {
  const book = compiled(recipe(LOGGED), target(LEAF));
  expect(JSON.parse(JSON.stringify(book.recipes[0]!.match))).toEqual(book.recipes[0]!.match);
});

test('compileBook(a target whose parts no cup can have the name of, or that has none) says so at its place', () => {
  const told = (parts: string): readonly string[] =>
    compileBook([...BOOK, target(parts)]).diagnostics.map(({ code, start, found }) => `${start.line} ${code} ${found}`);
  expect(told('parts:\n  Back side: { over-white: "#6a4a30" }')).toEqual([
    expect.stringMatching(/^5 file\/name part named `Back side`$/),
  ]);
  expect(told('parts: {}')).toEqual([expect.stringMatching(/target\/no-colour/)]);
});
