import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { nextAdditionFor } from '../../src/book/match/ask-matching.ts';
import { freeName } from '../../src/book/read/free-name.ts';
import { adviceFor, firstAnswers } from '../../src/browser/match/ask.ts';
import { roundsSeen } from '../../src/browser/match/cup-looks.ts';
import { fileDose, typedAmount } from '../../src/browser/match/dose-text.ts';
import { roundBar, roundForms, sidesView } from '../../src/browser/match/fields-view.ts';
import { logView } from '../../src/browser/match/log-view.ts';
import { isToBeMixed } from '../../src/browser/match/mix-view.ts';
import { logShelf } from '../../src/browser/match/page-shelf.ts';
import { readWork } from '../../src/browser/match/read-work.ts';
import { unlikeSidesOf } from '../../src/browser/match/sides-question.ts';
import type { Solver } from '../../src/browser/match/solver.ts';
import { MatchState } from '../../src/browser/match/state.ts';
import { roundOf } from '../../src/browser/match/typed-round.ts';
import { sideOf, type Work, withoutLastDone, withSides, withSteps } from '../../src/browser/match/work.ts';
import { newWork, withBookTarget, withRecipe } from '../../src/browser/match/work-begun.ts';
import { cupNow } from '../../src/browser/match/work-log.ts';
import { recipeFile } from '../../src/browser/match/work-recipe.ts';
import { targetFile } from '../../src/browser/match/work-target.ts';
import { lookDoubt } from '../../src/optics/look-doubt.ts';
import type { TaughtMatchData } from '../../src/render/pages/match.ts';
import { parseQuantity } from '../../src/units/parse-quantity.ts';
import { isFault } from '../../src/units/quantity.ts';
import { verdictText } from '../../src/words/verdict.ts';
import { expectClose } from '../optics/close.ts';
import { byRole, documentOf, nameOf, wordsIn } from '../page-dom.ts';
import { compiled, DATA, FILES, leaf, matched } from './match-book.ts';
import { taughtBook } from './taught-book.ts';

test('firstAnswers(…) goes by what was measured of a target, while the match has its colours', () => {
  const step = Array.from({ length: 31 }, (_, band) => (band < 18 ? 12 : 45));
  const text = `---\ntitle: Cast\nmold: minnow\nover-white: { reflectance: [${step.join(', ')}] }\n---\n`;
  const data = taughtBook(compiled({ path: 'targets/cast.md', text }));
  const underA = (work: Work): number => firstAnswers(work, data)[0]!.recipe.proposals[0]!.deltaEUnderA;
  const cast = withBookTarget(newWork(data), 'cast', data);
  const { target: _, ...described } = cast;
  expect(Math.abs(underA(cast) - underA(described))).toBeGreaterThan(0.1);
  const redder = [{ ...cast.sides[0]!, overWhite: '#a0522d' }];
  expect(underA(withSides(cast, redder))).toBe(underA(withSides(described, redder)));
});

test('withRecipe(…, weighing) and amountsOf(…, weighing) keep what was weighed, as the scale showed it', () => {
  const data: TaughtMatchData = { ...DATA, settings: { ...DATA.settings, scaleGrams: 0.01 } };
  const [answer] = firstAnswers(leaf(), data);
  const [best] = answer!.recipe.proposals;
  const [step] = withRecipe(leaf(), 0, best!, data, true).cups[0]!.steps;
  const weights = best!.cups[0]!.amounts.map(({ weighed, grams }) => weighed ?? { grams });
  expect(step!.do === 'add' && step!.amounts.map(({ dose, grams }) => ({ dose, grams }))).toEqual(
    weights.map(({ grams }) => ({ dose: expect.stringMatching(/ g$/), grams })),
  );
  const [byHand] = withRecipe(leaf(), 0, best!, data).cups[0]!.steps;
  expect(byHand!.do === 'add' && byHand!.amounts[0]!.grams).toBe(best!.cups[0]!.amounts[0]!.grams);
});

const STEADY = { path: 'shelf/plastics/steady.md', text: '---\ntitle: Steady\n---\n' };
const BLACK = {
  path: 'shelf/flakes/black.md',
  text: '---\ntitle: Black\nsize: 0.040 in\nlook: { colour: "#1d1c1b" }\n---\n',
};

describe('the recipe to take away', () => {
  test('recipeFile(a match) is a file that the book takes without a word, with the same cup in it', () => {
    const work = { ...matched(), title: 'Leaf: "brown"' };
    const { name, text } = recipeFile(work, { made: '2026-03-14', taken: new Set() });
    expect(name).toBe('leaf-brown.md');
    const { book, diagnostics } = compileBook([...FILES, { path: `colours/${name}`, text }]);
    expect(diagnostics).toEqual([]);
    const recipe = book!.recipes[0]!;
    expect(recipe).toMatchObject({ title: 'Leaf: "brown"', target: 'leaf', mold: 'minnow', pattern: 'solid' });
    const { now } = adviceFor(work, 0, DATA);
    expectClose(recipe.cups[0]!.leftMl!, now.volumeMl, 0.01);
    for (const { material, gramsPerMl } of recipe.cups[0]!.contents) {
      const inWork = now.cup.materials[material]! / now.cup.plastics.supple!;
      expectClose(gramsPerMl, inWork, 2e-3 * inWork, material);
    }
    expect(recipe.cups[0]!.rounds.map(({ seen }) => seen[0]?.overWhite?.hex)).toEqual(['#b8926a', '#a6825c']);
    expect(recipe.match!.cups[0]!.rounds.at(-1)!.verdict.within).toBe(true);
  });

  test('recipeFile(a laminate) has both cups', () => {
    let work: Work = withBookTarget(newWork(DATA), 'elver', DATA);
    const [answer] = firstAnswers(work, DATA);
    work = withRecipe(work, 0, answer!.recipe.proposals[0]!, DATA);
    const { text } = recipeFile({ ...work, title: 'Elver' }, { made: '2026-03-14', taken: new Set() });
    const [recipe] = compiled({ path: 'colours/elver.md', text }).recipes;
    expect(recipe!.pattern).toBe('laminate');
    expect(recipe!.cups.map(({ name }) => name)).toEqual(['back', 'belly']);
  });

  test('a side of a finished bait is judged as the book judges the recipe that is taken away', () => {
    let work: Work = withBookTarget(newWork(DATA), 'elver', DATA);
    work = withRecipe(work, 0, firstAnswers(work, DATA)[0]!.recipe.proposals[0]!, DATA);
    const seen = (at: number, overWhite: string, overBlack: string): Work =>
      withSteps(work, at, { do: 'pour', ml: 14 }, { do: 'see', overWhite, overBlack });
    work = seen(0, '#6a5038', '#40362a');
    work = seen(1, '#c0b090', '#807868');
    const { text } = recipeFile({ ...work, title: 'Elver' }, { made: '2026-03-14', taken: new Set() });
    const book = compiled({ path: 'colours/elver.md', text });
    const [recipe] = book.recipes;
    for (const [index, cup] of recipe!.cups.entries()) {
      const next = nextAdditionFor(book, recipe!, cup, book.targets.find(({ id }) => id === 'elver')!);
      const here = adviceFor(work, index, DATA);
      expect(verdictText(here.next.now!)).toBe(verdictText(next.now!));
      expect(here.next.now!.within).toBe(false);
      expectClose(here.next.now!.deltaE, next.now!.deltaE, 0.02);
      const [round] = roundsSeen(here, work, DATA);
      expectClose(round!.verdict.deltaE, recipe!.match!.cups[index]!.rounds[0]!.verdict.deltaE, 0.02);
    }
  });

  test.each([
    ['solid', 1],
    ['together', 2],
    ['apart', 2],
  ] as const)('targetFile(a described target, %s) is the target that the recipe is for', (arrangement, count) => {
    const side = { name: 'body', overWhite: '#a4805a', overBlack: '#6e5a44', thicknessMm: 6.5 };
    const two = [
      { ...side, name: 'back' },
      { ...side, name: 'belly', overWhite: '#bcab8c', thicknessMm: 7 },
    ];
    let work = withSides({ ...newWork(DATA), arrangement, tolerance: 1.5 }, count === 1 ? [side] : two);
    for (const [index, { recipe }] of firstAnswers(work, DATA).entries())
      work = withRecipe(work, index, recipe.proposals[0]!, DATA);
    const target = targetFile({ ...work, title: 'Leaf: "dry"' }, new Set(), DATA.settings)!;
    expect(target.name).toBe('leaf-dry-target.md');
    const options = { made: '2026-03-14', taken: new Set<string>(), target: 'leaf-dry-target' };
    const { text } = recipeFile({ ...work, title: 'Leaf: "dry"' }, options);
    const book = compiled({ path: `targets/${target.name}`, text: target.text }, { path: 'colours/leaf-dry.md', text });
    const read = book.targets.find(({ id }) => id === 'leaf-dry-target')!;
    expect(withBookTarget(newWork(DATA), 'it', { ...DATA, targets: [{ ...read, id: 'it' }] })).toMatchObject({
      arrangement,
      tolerance: 1.5,
      sides: work.sides,
    });
    expect(book.recipes[0]!.match!.cups).toHaveLength(count);
    expect(targetFile({ ...work, target: 'leaf' }, new Set(), DATA.settings)).toBeUndefined();
  });

  test('recipeFile(any steps) is a file that the book takes', () => {
    const amount = fc.constantFrom(
      { material: 'peat', dose: '3 drops', grams: 0.15 },
      { material: 'ivory', dose: '5/16 tsp', grams: 0.6 },
      { material: 'soot', dose: '0.25 g', grams: 0.25 },
    );
    const step = fc.oneof(
      fc.record({ do: fc.constant('add' as const), amounts: fc.array(amount, { minLength: 1, maxLength: 3 }) }),
      fc.record({ do: fc.constant('plastic' as const), ml: fc.integer({ min: 1, max: 60 }) }),
      fc.record({ do: fc.constant('pour' as const), ml: fc.integer({ min: 1, max: 8 }) }),
      fc.record({ do: fc.constant('see' as const), overWhite: fc.constant('#a08060'), note: fc.string() }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 10 }), fc.string(), (steps, title) => {
        const work = { ...withSteps(leaf(), 0, ...steps), title };
        const { name, text } = recipeFile(work, { made: '2026-03-14', taken: new Set() });
        const { diagnostics } = compileBook([...FILES, { path: `colours/${name}`, text }]);
        const errors = diagnostics.filter(({ severity, code }) => severity === 'error' && code !== 'recipe/overloaded');
        expect(errors, text).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });

  test('freeName(title) is a plain name that is not taken', () => {
    expect(freeName('Åkra: Älv & Öl!', new Set())).toBe('akra-alv-ol');
    expect(freeName(`${'x'.repeat(59)} yz`, new Set())).toBe('x'.repeat(59));
    expect(freeName('水', new Set())).toBe('matched');
    expect(freeName('Leaf', new Set(['leaf', 'leaf-2']))).toBe('leaf-3');
  });
});

describe('amounts', () => {
  const ivory = DATA.materials.find(({ id }) => id === 'ivory')!;
  const peat = DATA.materials.find(({ id }) => id === 'peat')!;

  test.each([
    ['1/4 tsp + 1 pinch', 5 / 16, '5/16 tsp'],
    ['1 tsp + 1/2 tsp', 1.5, '1 1/2 tsp'],
    ['2 × 1 tsp', 2, '2 tsp'],
  ])('fileDose(%s) is one number and one unit', (text, spoons, expected) => {
    const grams = spoons * 4.92892159375 * ivory.gramsPerMl;
    const dose = fileDose({ grams, text }, ivory);
    expect(dose).toBe(expected);
    const read = parseQuantity(dose, ['volume']);
    expect(isFault(read)).toBe(false);
  });

  test('fileDose(a sum of odd spoons) is in millilitres, from which the spoons can be named again', () => {
    expect(fileDose({ grams: 1.234, text: '1 scoop + 1 pinch' }, ivory)).toBe('3.085 ml');
  });

  test('typedAmount(text) is an amount, or says why not', () => {
    const plastic = { ml: 100, grams: 105 };
    expect(typedAmount('3 drops', peat, plastic)).toMatchObject({ dose: '3 drops' });
    expect(typedAmount('1 %', peat, plastic)).toMatchObject({ grams: 1.05 });
    expect(typedAmount('3 drops', ivory, plastic)).toEqual({
      fault: 'Ivory has no drops: write for example 1/8 tsp or 0.25 g.',
    });
    expect(typedAmount('some', peat, plastic)).toMatchObject({ fault: expect.stringContaining('“some” is no amount') });
    expect(typedAmount('', peat, plastic)).toMatchObject({ fault: expect.stringContaining('Nothing is no amount') });
  });

  test.each([
    [
      '2,5 drops',
      'peat',
      '“2,5 drops” is no amount: a number is digits without gaps, with a point before its decimals. Write “2.5 drops”.',
    ],
    [
      '3',
      'peat',
      '“3” is no amount: a number alone does not say what it counts. Write “3 drops” if drops are meant, or the unit that was counted, as in 3 drops, 1/8 tsp or 0.25 g.',
    ],
    [
      '3',
      'ivory',
      '“3” is no amount: a number alone does not say what it counts. Write the unit that was counted, as in 1/8 tsp or 0.25 g.',
    ],
    [
      '2,5',
      'ivory',
      '“2,5” is no amount: a number is digits without gaps, with a point before its decimals. Write for example 1/8 tsp or 0.25 g.',
    ],
    [
      '3 dabs',
      'peat',
      '“3 dabs” is no amount: “dabs” is not a unit that fits here. Write for example 3 drops, 1/8 tsp or 0.25 g.',
    ],
    ['2,5 drops', 'ivory', 'Ivory has no drops: write for example 1/8 tsp or 0.25 g.'],
    ['some', 'ivory', '“some” is no amount: write for example 1/8 tsp or 0.25 g.'],
  ])('typedAmount(%s) of %s says what to write instead', (text, id, fault) => {
    const material = DATA.materials.find((each) => each.id === id)!;
    expect(typedAmount(text, material, { ml: 100, grams: 105 })).toEqual({ fault });
  });

  test.each([121.94, 121.96, 0.37, 19.999, 120 + 1e-9])('what is shown of %s ml in a cup can be poured', (volumeMl) => {
    const shown = { data: DATA, materials: new Map(DATA.materials.map((material) => [material.id, material])) };
    const { cup, rounds, heats } = cupNow(leaf(), 0, { density: () => 1, cut: () => undefined });
    for (const volume of ['ml', 'fl oz'] as const) {
      const data = { ...DATA, settings: { ...DATA.settings, volume } };
      const drawn = logView([], { cup, volumeMl, rounds, heats }, { ...shown, data }).toString();
      const pour = /Really in the cup<\/h3><p>([\d.]+) /.exec(drawn)![1]!;
      expect(roundOf({ pour, note: '' }, volumeMl, { volume })).toMatchObject([{ do: 'pour' }]);
    }
  });
});

describe('a match as it goes on', () => {
  test('every field has an id, by which it stays in the hand when the page is drawn anew', () => {
    const work = matched();
    const shown = { data: DATA, materials: new Map(DATA.materials.map((material) => [material.id, material])) };
    const drawn = `${sidesView(work, DATA)}${roundForms(0, {}, { side: sideOf(work, 0), work, advice: adviceFor(work, 0, DATA) }, shown)}${roundBar(0, {}, { work }, shown)}`;
    const fields = drawn.match(/<(?:input|select)\b[^>]*>/g)!;
    expect(fields.filter((field) => !/ id="/.test(field))).toEqual([]);
    const ids = fields.map((field) => / id="([^"]*)"/.exec(field)?.[1]);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('withoutLastDone(…) takes back what was done in one go; what was seen counts until something is added', () => {
    const work = matched();
    expect(adviceFor(work, 0, DATA).now.seen).toBeDefined();
    const added = withSteps(work, 0, { do: 'plastic', ml: 10 }, { do: 'add', amounts: [] });
    expect(adviceFor(added, 0, DATA).now.seen).toBeUndefined();
    expect(withoutLastDone(added, 0)).toEqual(work);
    const { steps } = work.cups[0]!;
    expect(withoutLastDone(work, 0).cups[0]!.steps).toEqual(steps.slice(0, -2));
    // As they were kept before steps were marked.
    const unmarked = { ...work, cups: [{ ...work.cups[0]!, steps: steps.map(({ also: _, ...step }) => step) }] };
    expect(readWork(JSON.stringify(unmarked))).toEqual(work);
  });

  test('a new cup goes on in the same log, is to be mixed, and is taken back to the old one', () => {
    const old = matched();
    const shown = { data: DATA, materials: new Map(DATA.materials.map((material) => [material.id, material])) };
    const recipe = firstAnswers(old, DATA)[0]!.recipe.proposals[0]!;
    const work = withRecipe(old, 0, recipe, DATA);
    const [cup] = work.cups;
    const { now, taught } = adviceFor(work, 0, DATA);
    expect(isToBeMixed(cup!)).toBe(true);
    expect(now.cup.plastics).toEqual({ supple: work.plasticMl });
    expect(now.seen).toBeUndefined();
    // What the old one taught is kept.
    expect(taught.learned.constants).toEqual(adviceFor(old, 0, DATA).taught.learned.constants);
    const log = documentOf(logView(cup!.steps, now, shown));
    expect(wordsIn(log)).toContain('Began a new cup; to be mixed: ');
    expect(nameOf(byRole(log, 'button'))).toBe('Undo the recipe');
    expect(withoutLastDone(work, 0)).toEqual(old);
    const { text } = recipeFile(work, { made: '2026-03-14', taken: new Set() });
    expect(text).toContain(`new-cup: ${work.plasticMl} ml supple`);
    // One that nobody looked at is begun again in its place.
    expect(withRecipe(work, 0, recipe, DATA)).toEqual(work);
  });

  test('MatchState works out what to do with a cup once for a match as it is', () => {
    const state = new MatchState(DATA, matched(), { cups: [], found: false, begun: true }, undefined);
    expect(() => state.advice(0)).toThrow(/before what the book has learned/);
    state.taught = DATA;
    state.solver = { adviceFor } as Solver;
    const advice = state.advice(0);
    expect(advice.next).toEqual(adviceFor(matched(), 0, DATA).next);
    expect(state.advice(0)).toBe(advice);
    state.takeOver(withSteps(state.work, 0, { do: 'pour', ml: 5 }), { cups: [], found: false, begun: true });
    expect(state.advice(0).now.volumeMl).toBeCloseTo(advice.now.volumeMl - 5, 9);
  });

  test('adviceFor(a cup poured empty) says so', () => {
    const work = withSteps(leaf(), 0, { do: 'pour', ml: 120 });
    expect(adviceFor(work, 0, DATA).next.advice).toEqual({ kind: 'fault', fault: { kind: 'empty-cup' } });
  });

  test('withSides(other sides) keeps the logs', () => {
    const work = matched();
    const changed = withSides(work, [{ ...work.sides[0]!, overWhite: '#ffffff' }]);
    expect(changed.cups[0]!.steps).toEqual(work.cups[0]!.steps);
  });

  test('withBookTarget(…) takes a target of two parts as the sides of a finished bait, or by themselves where it says so', () => {
    const together = withBookTarget(newWork(DATA), 'elver', DATA);
    expect(together.arrangement).toBe('together');
    expect(together.cups.map(({ name }) => name)).toEqual(['back', 'belly']);
    expect(firstAnswers(together, DATA).map(({ part }) => part)).toEqual(['back and belly']);
    const apart = withBookTarget(newWork(DATA), 'halves', DATA);
    expect(apart.arrangement).toBe('apart');
    expect(firstAnswers(apart, DATA).map(({ part }) => part)).toEqual(['back', 'belly']);
  });

  test('unlikeSidesOf(…) asks of two sides of a finished bait until that is answered, and the answer is kept and written', () => {
    const glass: Work = {
      ...withSides({ ...newWork(DATA), arrangement: 'together' }, [
        { name: 'back', overWhite: '#5b4a2f', overBlack: '#483a26', thicknessMm: 8 },
        { name: 'belly', overWhite: '#cdb98c', overBlack: '#97865f', thicknessMm: 8 },
      ]),
    };
    const fileOf = (work: Work): string => targetFile(work, new Set(), DATA.settings)!.text;
    expect(unlikeSidesOf(glass, DATA)).toEqual({ more: 'belly', less: 'back', times: 9 });
    expect(fileOf(glass)).not.toContain('apart');
    const kept = readWork(JSON.stringify({ ...glass, whole: true })) as Work;
    expect(unlikeSidesOf(kept, DATA)).toBeUndefined();
    expect(fileOf(kept)).toContain('apart: false');
    expect(unlikeSidesOf({ ...glass, arrangement: 'apart' }, DATA)).toBeUndefined();
    const read = compiled({ path: 'targets/glass.md', text: fileOf(kept) }).targets.find(({ id }) => id === 'glass')!;
    expect(withBookTarget(newWork(DATA), 'glass', { ...DATA, targets: [read] }).whole).toBe(true);
    // A stated doubt of the book's target counts as long as the side has its colours.
    const vague = { ...read, parts: read.parts.map((part) => ({ ...part, doubt: lookDoubt('screen', 14) })) };
    const { apart: _, ...unsaid } = vague;
    const data = { ...DATA, targets: [unsaid] };
    const begun = withBookTarget(newWork(data), 'glass', data);
    expect(unlikeSidesOf(begun, data)).toBeUndefined();
    const { target: __, ...described } = begun;
    expect(unlikeSidesOf(described, data)).toBeDefined();
  });

  test('each side has flake and a plastic of its own, in what is asked, in the cup, and in the files that are taken away', () => {
    const files = [...FILES, STEADY, BLACK];
    const data = taughtBook(compileBook(files).book!);
    const work: Work = {
      ...withSides({ ...newWork(data), arrangement: 'apart', plasticMl: 100 }, [
        {
          name: 'back',
          overWhite: '#74583a',
          overBlack: '#50422f',
          thicknessMm: 8,
          flakes: [{ hex: '#1d1c1b', sizeMm: 1.016, coverage: 0.1 }],
        },
        { name: 'belly', overWhite: '#bcab8c', overBlack: '#8c8270', thicknessMm: 8, flakes: [], plastic: 'steady' },
      ]),
      plastic: 'supple',
      title: 'Halves again',
    };
    expect(readWork(JSON.stringify(work))).toEqual(work);
    const answers = firstAnswers(work, data);
    expect(answers.map(({ recipe }) => recipe.flakes.map(({ material }) => material))).toEqual([['black'], []]);
    const begun = answers.reduce((all, { recipe }, index) => withRecipe(all, index, recipe.proposals[0]!, data), work);
    expect([0, 1].map((index) => Object.keys(cupNow(begun, index, logShelf(data)).start.plastics))).toEqual([
      ['supple'],
      ['steady'],
    ]);
    const target = targetFile(begun, new Set(), data.settings)!;
    const { name, text } = recipeFile(begun, { made: '2026-03-14', taken: new Set(), target: 'halves-again-target' });
    const { book, diagnostics } = compileBook([
      ...files,
      { path: `targets/${target.name}`, text: target.text },
      { path: `colours/${name}`, text },
    ]);
    expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
    const read = book!.targets.find(({ id }) => id === 'halves-again-target')!;
    expect(read.parts.map(({ flakes, plastic }) => ({ flakes, plastic }))).toEqual([
      { flakes: [{ hex: '#1d1c1b', sizeMm: 1.016, coverage: 0.1 }], plastic: undefined },
      { flakes: [], plastic: 'steady' },
    ]);
    const [recipe] = book!.recipes;
    expect(recipe!.cups.map(({ plastics }) => plastics[0]!.material)).toEqual(['supple', 'steady']);
    const has = recipe!.cups.map(({ contents }) => contents.some(({ material }) => material === 'black'));
    expect(has).toEqual([true, false]);
    expect(withBookTarget(newWork(data), read.id, taughtBook(book!)).sides).toEqual(work.sides);
  });

  test('a match that was kept before sides had flake has that of the book’s target', () => {
    const leafy = FILES.map((file) =>
      file.path === 'targets/leaf.md'
        ? { ...file, text: file.text.replace('mold:', 'flake: [{ colour: "#1d1c1b", size: 1 mm }]\nmold:') }
        : file,
    );
    const data = taughtBook(compileBook([...leafy, BLACK]).book!);
    const now = withBookTarget(newWork(data), 'leaf', data);
    const kept = { ...now, sides: now.sides.map(({ flakes: _, ...side }) => side) };
    for (const work of [now, kept]) {
      const [answer] = firstAnswers(readWork(JSON.stringify(work)) as Work, data);
      expect(answer!.recipe.flakes.map(({ material }) => material)).toEqual(['black']);
    }
  });
});
