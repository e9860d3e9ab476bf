import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { FirstRecipe } from '../../src/matching/first-recipe.ts';
import type { FirstRecipeQuestion } from '../../src/matching/first-recipe-question.ts';
import { baseOfCup } from '../../src/matching/mix/cup-model.ts';
import { freshRecipe } from '../../src/matching/proposals/fresh-cup.ts';
import type { RecipeProposal } from '../../src/matching/proposals/recipe-proposal.ts';
import type { MatchMaterial } from '../../src/matching/shelf/match-material.ts';
import type { TargetPart } from '../../src/matching/target/target-part.ts';
import { bodyViews } from '../../src/optics/cup-body.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { plainBelief } from './plain-belief.ts';
import { firstRecipe } from './plain-questions.ts';
import { BENCH, CLEAR, EXACT_BENCH, SHELF } from './sample-shelf.ts';

/** The same paint as ochre, in another bottle. */
const TWIN: MatchMaterial = { ...SHELF.find(({ id }) => id === 'ochre')!, id: 'twin', title: 'Twin' };
const ALL = [...SHELF, CLEAR];
const WITH_TWIN = [...ALL, TWIN];
const TOLERANCE = 2;

const partOf = (doses: Readonly<Record<string, number>>): TargetPart => {
  const shelf = new Map(ALL.map((material) => [material.id, material]));
  const { mix } = baseOfCup({ plastics: { clear: 1 }, materials: doses }, (id) => shelf.get(id)!, USUAL_OPTICS);
  return { name: 'body', ...bodyViews(mix, 6, USUAL_OPTICS), thicknessMm: 6 };
};
const OCHRE_AND_PEARL = partOf({ ochre: 0.004, 'white-pearl': 0.006 });

/** Asked where everything is off by so much that nothing is likely right, and some materials were never looked at. */
const ask = (
  untried: readonly string[],
  { shelf = WITH_TWIN, ...question }: Partial<FirstRecipeQuestion> & Pick<FirstRecipeQuestion, 'parts'>,
): FirstRecipe =>
  firstRecipe({
    plastic: 'clear',
    plasticMl: 120,
    shelf,
    optics: USUAL_OPTICS,
    bench: EXACT_BENCH,
    tolerance: TOLERANCE,
    belief: { ...plainBelief(shelf, { all: 1.5 }), isTried: (material) => !untried.includes(material) },
    ...question,
  });
const bottlesOf = ({ cups }: RecipeProposal): readonly string[] =>
  cups.flatMap(({ amounts }) => amounts.map(({ material }) => material));

test.each([
  ['twin', 'ochre', 'Twin'],
  ['ochre', 'twin', 'ochre'],
])(
  'firstRecipe(…) takes %s that nobody has looked at, rather than %s that is the same, and says so',
  (untried, known, title) => {
    const [first, ...others] = ask([untried], { parts: [OCHRE_AND_PEARL], proposals: 40 }).proposals;
    expect(bottlesOf(first!)).toContain(untried);
    expect(bottlesOf(first!)).not.toContain(known);
    expect(first!.tries).toBe(title);
    const without = others.find(({ tries }) => tries === undefined);
    expect(bottlesOf(without!)).not.toContain(untried);
    expect(first!.expected).toBeLessThan(without!.expected + 0.5 + 1.5);
  },
);

test.each([
  ['a match that is under way is to be finished', ['twin'], { finishes: true }],
  ['the plastic itself was never looked at', ['twin', 'clear'], {}],
  ['everything was looked at', [], {}],
  ['nothing was', WITH_TWIN.map(({ id }) => id), {}],
] as const)('firstRecipe(…) tries no bottle where %s', (_, untried, question) => {
  const asked = { parts: [OCHRE_AND_PEARL], proposals: 8, ...question };
  const { proposals } = ask(untried, asked);
  for (const proposal of proposals) expect(proposal).not.toHaveProperty('tries');
  expect(proposals).toEqual(ask([], asked).proposals);
  expect(bottlesOf(proposals[0]!)).not.toContain('twin');
});

test('firstRecipe(…) marks the one recipe that tries no bottle, where all others do, and no other', () => {
  const marked = (untried: readonly string[], proposals: number): readonly number[] =>
    ask(untried, { parts: [OCHRE_AND_PEARL], proposals }).proposals.flatMap(({ triesNone }, place) =>
      triesNone ? [place] : [],
    );
  const untried = ['twin', 'olive', 'gold-pearl', 'white-pearl'];
  const { proposals } = ask(untried, { parts: [OCHRE_AND_PEARL], proposals: 3 });
  const tryNone = proposals.filter((each) => bottlesOf(each).every((id) => !untried.includes(id)));
  expect(tryNone).toHaveLength(1);
  expect(marked(untried, 3)).toEqual([proposals.indexOf(tryNone[0]!)]);
  expect(marked(untried, 1)).toEqual([]);
  expect(marked([], 3)).toEqual([]);
});

test('freshRecipe(a cup that is to be mended) tries no bottle', () => {
  const { proposals } = freshRecipe({
    cup: { plastics: { clear: 120 }, materials: { 'brown-dye': 1 } },
    target: OCHRE_AND_PEARL,
    shelf: WITH_TWIN,
    optics: USUAL_OPTICS,
    bench: EXACT_BENCH,
    tolerance: TOLERANCE,
    belief: { ...plainBelief(WITH_TWIN, { all: 1.5 }), isTried: (material) => material !== 'twin' },
  });
  expect(proposals).toHaveLength(1);
  expect(bottlesOf(proposals[0]!)).not.toContain('twin');
  expect(proposals[0]).not.toHaveProperty('tries');
});

test('firstRecipe(…) says what a recipe tries where one of its bottles was never looked at, and gives no more up for it than it is worth', () => {
  const doses = fc.dictionary(
    fc.constantFrom(...SHELF.map(({ id }) => id)),
    fc.double({ min: 0.0005, max: 0.008, noNaN: true }),
    { minKeys: 2, maxKeys: 3 },
  );
  const some = fc.subarray(
    SHELF.map(({ id }) => id),
    { minLength: 1, maxLength: 4 },
  );
  let tried = 0;
  fc.assert(
    fc.property(doses, some, (contents, untried) => {
      const { proposals } = ask(untried, { parts: [partOf(contents)], shelf: ALL, proposals: 12 });
      for (const proposal of proposals) {
        const unknown = bottlesOf(proposal).filter((id) => untried.includes(id));
        expect(proposal.tries).toBe(unknown.length === 1 ? unknown[0] : undefined);
      }
      const [first] = proposals;
      if (!first?.tries) return;
      tried++;
      // Amounts are exact: they scatter nothing, what drops would is what counts, and knowing a bottle is worth 1.5.
      expect(first.expected).toBeLessThan(Math.min(...proposals.map(({ expected }) => expected)) + 0.5 + 1.5);
    }),
    { numRuns: 25 },
  );
  expect(tried).toBeGreaterThan(5);
});

test('firstRecipe(…) by drops and spoons tries a bottle for no more than they scatter and it is worth', () => {
  const { proposals } = ask(['twin', 'olive', 'gold-pearl'], { parts: [OCHRE_AND_PEARL], bench: BENCH, proposals: 8 });
  const shelf = new Map(WITH_TWIN.map((material) => [material.id, material]));
  const viewsOf = ({ cups }: RecipeProposal, more = -1): ReturnType<typeof bodyViews> => {
    const grams = cups[0]!.amounts.map((each, i) => [each.material, each.grams * (i === more ? 1.1 : 1)] as const);
    const cup = { plastics: { clear: 120 }, materials: Object.fromEntries(grams) };
    return bodyViews(baseOfCup(cup, (id) => shelf.get(id)!, USUAL_OPTICS).mix, 6, USUAL_OPTICS);
  };
  const nearest = proposals.reduce((best, next) => (next.expected < best.expected ? next : best));
  const plain = viewsOf(nearest);
  const scatterIn = (view: keyof typeof plain): number =>
    Math.hypot(...nearest.cups[0]!.amounts.map((_, i) => deltaE00(plain[view], viewsOf(nearest, i)[view])));
  const scatter = Math.max(scatterIn('overWhite'), scatterIn('overBlack'));
  expect(scatter).toBeGreaterThan(0.5);
  expect(proposals[0]!.tries).toBeDefined();
  expect(proposals[0]!.expected).toBeLessThan(nearest.expected + 1.1 * scatter + 1.5);
});
