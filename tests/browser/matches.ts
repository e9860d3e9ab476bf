/**
 * Generated matches: books of many kinds, and what a maker does on the Match page, typed as the page takes it.
 */
import fc from 'fast-check';
import { compileBook } from '../../src/book/compile-book.ts';
import { adviceFor } from '../../src/browser/match/ask.ts';
import { typedAmount } from '../../src/browser/match/dose-text.ts';
import type { TypedHow } from '../../src/browser/match/how-seen.ts';
import { volumeOf } from '../../src/browser/match/limits.ts';
import { dosedIn, logShelf } from '../../src/browser/match/page-shelf.ts';
import { isRoundFault, roundOf, type TypedRound } from '../../src/browser/match/typed-round.ts';
import { isLoggedTwice, withWholeRound } from '../../src/browser/match/whole-round.ts';
import { begunAnew, type Work, type WorkStep, withSteps } from '../../src/browser/match/work.ts';
import { newWork, stepsOf, withBookTarget } from '../../src/browser/match/work-begun.ts';
import { cupNow, withLookChecked, withStepsBeforeLook } from '../../src/browser/match/work-log.ts';
import { isEmpty, total } from '../../src/cup/ledger.ts';
import type { Source } from '../../src/recipe/source.ts';
import type { TaughtMatchData } from '../../src/render/pages/match.ts';
import { required } from '../../src/values/required.ts';
import { FILES } from './match-book.ts';
import { taughtBook } from './taught-book.ts';

/** A book, and what its Match page knows. */
export interface MatchBook {
  readonly files: readonly Source[];
  readonly data: TaughtMatchData;
}

/** What a maker does to a cup. */
export type Doing =
  | { readonly do: 'add'; readonly material: string; readonly amount: string }
  | { readonly do: 'plastic'; readonly amount: string }
  | { readonly do: 'round'; readonly typed: TypedRound }
  | { readonly do: 'whole'; readonly typed: readonly [TypedRound, TypedRound] }
  | { readonly do: 'take'; readonly weighing: boolean }
  | { readonly do: 'nothing' }
  | { readonly do: 'look again' }
  | { readonly do: 'new-cup'; readonly amount?: string };

const volume = fc.constantFrom('ml', 'fl oz');

const bookText: fc.Arbitrary<string> = fc
  .record({
    volume,
    temperature: fc.constantFrom('°C', '°F'),
    drops: fc.boolean(),
    spoons: fc.constantFrom('', ', spoons: []', ', spoons: [1 tsp, 1/4 tsp, 1/16 tsp]'),
    scale: fc.constantFrom('', ', scale: 0.01 g', ', scale: 0.1 g'),
    tolerance: fc.constantFrom('1', '2', '4'),
    cup: fc.constantFrom('150 ml', '250 ml', '350 ml', '12 fl oz', '900 ml'),
    fill: fc.constantFrom('50%', '70%'),
  })
  .filter(({ drops, spoons, scale }) => drops || spoons !== ', spoons: []' || scale !== '')
  .map(
    (book) =>
      `---\ntitle: Bench\nunits: { volume: ${book.volume}, temperature: ${book.temperature} }\ntools: { drops: ${book.drops}${book.spoons}${book.scale} }\ntolerance: ${book.tolerance}\ncup: ${book.cup}\nfill: ${book.fill}\n---\n`,
  );

const CUT: Source = {
  path: 'shelf/colorants/soot-cut.md',
  text: '---\ntitle: Soot cut\ncut: { of: soot, with: supple, one-in: 8 }\n---\n',
};

/** A book with targets of one part and of two; in some a colorant is cut. */
export const matchBook: fc.Arbitrary<MatchBook> = fc.tuple(bookText, fc.boolean()).map(([text, isCut]) => {
  const whole = FILES.map((file) => (file.path === 'book.md' ? { ...file, text } : file));
  const files = isCut ? [...whole, CUT] : whole;
  return { files, data: taughtBook(compileBook(files).book!) };
});

const near = (L: number, a: number, b: number): fc.Arbitrary<string> =>
  fc
    .tuple(...[12, 6, 10].map((most) => fc.integer({ min: -10 * most, max: 10 * most })))
    .map(([l, m, n]) => `${(L + l! / 10).toFixed(1)} ${(a + m! / 10).toFixed(1)} ${(b + n! / 10).toFixed(1)}`);
const overWhite = fc.oneof(near(56, 9, 25), fc.constantFrom('#a4805a', '#b8926a', '#74583a'));
const overBlack = fc.oneof(near(40, 6, 16), fc.constantFrom('#6e5a44', '#5a4a3a'));

const howLooked: fc.Arbitrary<TypedHow> = fc.record(
  {
    chip: fc.constantFrom('3', '0.125', '8', '1.5'),
    after: fc.constantFrom('', 'hot', '10 min', 'next day'),
    wet: fc.boolean(),
  },
  { requiredKeys: ['after', 'wet'] },
);

const typedRound: fc.Arbitrary<TypedRound> = fc
  .record({
    pour: fc.constantFrom('0', '0.5', '1.25', '0.125', '14', '22.5'),
    overWhite: fc.option(overWhite, { nil: undefined, freq: 4 }),
    overBlack: fc.option(overBlack, { nil: undefined, freq: 2 }),
    note: fc.constantFrom('', '', 'too light: "weak tea"'),
    heat: fc.constantFrom('', '171', '168.5', '340', '187'),
    again: fc.constantFrom('0', '0', '1', '2'),
    held: fc.constantFrom('', '', '6', '0.5', '14'),
    how: fc.option(howLooked, { nil: undefined }),
  })
  .map(({ pour, note, heat, again, held, how, ...views }) => ({
    pour,
    note,
    heat,
    again,
    held,
    ...(how && { how }),
    ...(views.overWhite === undefined ? {} : { overWhite: views.overWhite }),
    ...(views.overBlack === undefined ? {} : { overBlack: views.overBlack }),
  }));

const doing: fc.Arbitrary<Doing> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({
      do: fc.constant('add' as const),
      material: fc.constantFrom('peat', 'soot', 'ivory', 'soot-cut'),
      amount: fc.constantFrom(
        '1 drop',
        '6 drops',
        '1/8 tsp',
        '3/8 tsp',
        '1 pinch',
        '0.07 g',
        '0.3 g',
        '0.5 %',
        '0.2 ml',
      ),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constant('plastic' as const), amount: fc.constantFrom('0.5', '2', '25') }),
  },
  { weight: 5, arbitrary: fc.record({ do: fc.constant('round' as const), typed: typedRound }) },
  { weight: 3, arbitrary: fc.record({ do: fc.constant('whole' as const), typed: fc.tuple(typedRound, typedRound) }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('take' as const), weighing: fc.boolean() }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constantFrom('nothing' as const, 'look again' as const) }) },
  {
    weight: 1,
    arbitrary: fc.record(
      { do: fc.constant('new-cup' as const), amount: fc.constantFrom('2 drops', '0.4 g') },
      { requiredKeys: ['do'] },
    ),
  },
);

/** A match in a book, doing by doing: the whole match after each, the plain cup first. */
export interface Match {
  readonly target: string;
  readonly plastic: string;
  readonly doings: readonly (readonly [cup: number, done: Doing])[];
}

/** A match of any target, of a cup as small as a shot or fuller than the book allows. */
export const match: fc.Arbitrary<Match> = fc.record({
  target: fc.constantFrom('leaf', 'leaf', 'elver', 'halves'),
  plastic: fc.constantFrom('2', '4', '4.5', '10', '60', '120', '174', '300'),
  doings: fc.array(fc.tuple(fc.nat({ max: 1 }), doing), { minLength: 1, maxLength: 8 }),
});

/** The match as it is after each thing that was done; what cannot be done is not. */
export function worksOf({ target, plastic, doings }: Match, { data }: MatchBook): readonly Work[] {
  const plasticMl = volumeOf(plastic, 'plasticMl', data.settings);
  let work = { ...withBookTarget(newWork(data), target, data), title: 'Match', plasticMl: plasticMl as number };
  const works: Work[] = [work];
  for (const [cup, done] of doings) {
    work = afterDoing(work, cup % work.cups.length, done, data) as typeof work;
    works.push(work);
  }
  return works;
}

function afterDoing(work: Work, index: number, done: Doing, data: TaughtMatchData): Work {
  const shelf = logShelf(data);
  const { cup, volumeMl } = cupNow(work, index, shelf);
  const plasticMl = total(cup.plastics);
  switch (done.do) {
    case 'add': {
      // As the page: nothing goes into an empty cup but plastic.
      const material = dosedIn(data).get(done.material);
      if (isEmpty(cup) || !material) return work;
      const amount = typedAmount(done.amount, material, {
        ml: plasticMl,
        grams: plasticMl * shelf.density(work.plastic),
      });
      return 'fault' in amount ? work : withSteps(work, index, { do: 'add', amounts: [amount] });
    }
    case 'plastic': {
      const ml = volumeOf(done.amount, 'addedMl', data.settings);
      return typeof ml === 'number' ? withSteps(work, index, { do: 'plastic', ml }) : work;
    }
    case 'round': {
      // A number that fits the other scale alone is not taken: then nobody noted it.
      const typed = [done.typed, { ...done.typed, heat: '' }];
      const steps = typed.map((each) => roundOf(each, volumeMl, data.settings)).find((each) => !isRoundFault(each));
      return steps === undefined || isRoundFault(steps) ? work : withSteps(work, index, ...steps);
    }
    case 'whole': {
      if (work.arrangement !== 'together') return work;
      const sides = work.cups.map((_, at) => {
        const { how: { chip: _chip, ...how } = { after: '', wet: false }, ...typed } = done.typed[at]!;
        const steps = roundOf(
          { ...typed, how, heat: '', pour: '0.5' },
          cupNow(work, at, shelf).volumeMl,
          data.settings,
        );
        return isRoundFault(steps) ? [] : steps;
      });
      if (sides.some((steps) => !steps.some((step) => step.do === 'pour'))) return work;
      const logged = withWholeRound(work, sides, shelf, []);
      // As the page, of a shot that nothing was logged before: somebody says that nothing went in.
      const nothing: WorkStep = { do: 'add', amounts: [] };
      return isLoggedTwice(work, logged, shelf)
        ? withWholeRound(
            work,
            sides.map((steps) => [nothing, ...steps]),
            shelf,
            [],
          )
        : logged;
    }
    case 'take': {
      const [proposal] = adviceFor(work, index, data).next.proposals;
      return proposal ? withSteps(work, index, ...stepsOf(proposal, data, done.weighing)) : work;
    }
    case 'look again':
      return withLookChecked(work, index, shelf);
    case 'new-cup': {
      if (done.amount === undefined) return begunAnew(work, index, []);
      const amount = typedAmount(done.amount, required(data.materials, 'peat'), { ml: 0, grams: 0 });
      return 'fault' in amount ? work : begunAnew(work, index, [{ do: 'add', recipe: true, amounts: [amount] }]);
    }
    case 'nothing':
      return withStepsBeforeLook(work, index, [{ do: 'add', amounts: [] }], shelf);
  }
}
