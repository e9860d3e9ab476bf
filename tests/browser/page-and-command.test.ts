import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { judgedFirst } from '../../src/book/looks/judged-first.ts';
import { nextAdditionFor } from '../../src/book/match/ask-matching.ts';
import type { Recipe } from '../../src/book/model/recipe.ts';
import type { Book } from '../../src/book/model.ts';
import { adviceFor } from '../../src/browser/match/ask.ts';
import { roundsSeen } from '../../src/browser/match/cup-looks.ts';
import { logShelf } from '../../src/browser/match/page-shelf.ts';
import { readWork } from '../../src/browser/match/read-work.ts';
import { withWholeRound } from '../../src/browser/match/whole-round.ts';
import { type Work, type WorkStep, withSteps } from '../../src/browser/match/work.ts';
import { newWork, withBookTarget } from '../../src/browser/match/work-begun.ts';
import { cupNow, withLookChecked } from '../../src/browser/match/work-log.ts';
import { recipeFile } from '../../src/browser/match/work-recipe.ts';
import { targetFile } from '../../src/browser/match/work-target.ts';
import { printedAddition } from '../../src/cli/matching-text.ts';
import type { AnyLook } from '../../src/cup/any-look.ts';
import { heatWarnings } from '../../src/cup/heat-warnings.ts';
import { isEmpty } from '../../src/cup/ledger.ts';
import type { NextAddition } from '../../src/matching/next-addition.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import type { Source } from '../../src/recipe/source.ts';
import { volumeText } from '../../src/units/volume-text.ts';
import { required } from '../../src/values/required.ts';
import { toAddText } from '../../src/words/amount.ts';
import { nextAdditionText } from '../../src/words/next-addition.ts';
import { proposalText } from '../../src/words/proposal.ts';
import { verdictText } from '../../src/words/verdict.ts';
import { DATA, FILES, leaf } from './match-book.ts';
import { type MatchBook, match, matchBook, worksOf } from './matches.ts';
import { taughtBook } from './taught-book.ts';

/** How many times as many matches as in `npm test`; `npm run laws` says. */
const TIMES = Number(process.env.LAWS_TIMES ?? 1);

/** A match as a recipe of its book, and the target with it where that was described. */
function inBook(
  work: Work,
  { files, data }: MatchBook,
): { readonly book: Book; readonly recipe: Recipe; readonly text: string; readonly told: ReadonlySet<string> } {
  const taken = new Set<string>();
  const target = targetFile(work, taken, data.settings);
  const id = target?.name.replace(/\.md$/, '') ?? work.target;
  const { name, text } = recipeFile(work, { made: '2026-03-14', taken, target: id, unit: data.settings });
  const { book, diagnostics } = compileBook([
    ...files,
    ...(target ? [{ path: `targets/${target.name}`, text: target.text }] : []),
    { path: `colours/${name}`, text },
  ]);
  expect(
    diagnostics.filter(({ severity }) => severity === 'error'),
    text,
  ).toEqual([]);
  return { book: book!, recipe: book!.recipes[0]!, text, told: new Set(diagnostics.map(({ code }) => code)) };
}

/** All that `next` prints of an answer. */
function printed(cup: string, next: NextAddition, book: Book): string {
  return printedAddition(cup, nextAdditionText(next, book.settings), next, book);
}

/** How something was seen: over which cards, and how each look was made. */
const seenAs = (looks: readonly AnyLook[]): readonly unknown[] =>
  looks.map(({ overWhite, overBlack, thicknessMm, after, wet }) => [
    overWhite !== undefined,
    overBlack !== undefined,
    thicknessMm?.toFixed(6),
    after,
    wet,
  ]);

/** Rounds and what is left, as they are told, of every cup of a match and of its recipe. */
function expectSameRounds(work: Work, book: MatchBook, { recipe, text }: ReturnType<typeof inBook>): void {
  const { settings, molds } = book.data;
  const bodyMm = required(molds, work.mold).bodyMm;
  for (const [index, { rounds, leftMl, startMl, heats: counted }] of recipe.cups.entries()) {
    const now = cupNow(work, index, logShelf(book.data));
    expect(now.heats, text).toEqual(counted);
    expect(
      now.rounds.map(({ number, pouredMl, seen, unlogged, heats, newHeats, heatedTo, heldMinutes }) => [
        number,
        [heats, newHeats, heatedTo, heldMinutes],
        volumeText(pouredMl, settings),
        seenAs(judgedFirst(seen, bodyMm)),
        unlogged,
      ]),
      text,
    ).toEqual(
      rounds.map(({ number, pouredMl, seen, unlogged, heats, newHeats, heatedTo, heldMinutes }) => [
        number,
        [heats, newHeats, heatedTo, heldMinutes],
        volumeText(pouredMl, settings),
        seenAs(seen),
        unlogged,
      ]),
    );
    expect(volumeText(now.volumeMl, settings)).toBe(volumeText(leftMl ?? startMl, settings));
  }
}

const WARNINGS = {
  burnt: 'recipe/burnt',
  'too-hot': 'recipe/too-hot',
  worn: 'recipe/worn',
  held: 'recipe/held-long',
} as const;
const WARNED: ReadonlySet<string> = new Set(Object.values(WARNINGS));

/** What was too much of heat: of a match whose cups are still their first, and not poured empty. */
function expectSameWarnings(work: Work, { data }: MatchBook, { told, text }: ReturnType<typeof inBook>): void {
  const nows = work.cups.map((_, index) => cupNow(work, index, logShelf(data)));
  if (work.cups.some(({ steps }) => steps.some((step) => step.do === 'new-cup'))) return;
  if (nows.some(({ cup }) => isEmpty(cup))) return;
  const warned = nows.flatMap((now) => heatWarnings(now, (id) => required(data.materials, id)));
  expect(new Set(warned.map(({ kind }) => WARNINGS[kind])), text).toEqual(
    new Set([...told].filter((code) => WARNED.has(code))),
  );
}

/** What a cup is judged to be, and what is to be done. */
function expectSameAdvice(work: Work, { data }: MatchBook, { book, recipe, text }: ReturnType<typeof inBook>): void {
  const target = required(book.targets, recipe.target!);
  for (const [index, cup] of recipe.cups.entries()) {
    const page = adviceFor(work, index, data);
    const command = nextAdditionFor(book, recipe, cup, target);
    expect(printed(cup.name, page.next, book), text).toBe(printed(cup.name, command, book));
    expect(page.next.advice.kind).toBe(command.advice.kind);
    // The sentence before the list names the first of the list.
    const [best] = command.proposals;
    if (best) expect(nextAdditionText(command, data.settings)).toContain(`dd ${toAddText(best, data.settings)}`);
    const told = (rounds: ReturnType<typeof roundsSeen>): readonly unknown[] =>
      rounds.map(({ number, verdict, overWhite, overBlack }) => [
        number,
        verdict.deltaE.toFixed(1),
        verdictText(verdict),
        overWhite?.hex,
        overBlack?.hex,
      ]);
    const { rounds, next } = recipe.match!.cups[index]!;
    expect(told(roundsSeen(page, work, data)), text).toEqual(told(rounds.filter(({ basis }) => basis === 'seen')));
    if (next) {
      const done = ({ advice, proposals }: typeof next): readonly unknown[] => [
        advice.kind,
        proposals.map((each) => proposalText(each, data.settings)),
      ];
      expect(done(next), text).toEqual(done(page.next));
    }
  }
}

const PEAT = { material: 'peat', dose: '6 drops', grams: 0.3 };
const BOOK: MatchBook = { files: FILES, data: DATA };

describe('a match on its page and in its recipe', () => {
  test('has rounds of the same numbers, whether or not somebody looked', () => {
    const added = withSteps(leaf(), 0, { do: 'add', amounts: [PEAT] });
    const poured = withSteps(added, 0, { do: 'pour', ml: 14 });
    const again = withSteps(poured, 0, { do: 'add', amounts: [PEAT] });
    const work = withSteps(again, 0, { do: 'pour', ml: 14 }, { do: 'see', overWhite: '#b8926a' });
    expect(cupNow(work, 0, logShelf(DATA)).rounds.map(({ number, seen }) => [number, seen.length > 0])).toEqual([
      [1, false],
      [2, true],
    ]);
    expectSameRounds(work, BOOK, inBook(work, BOOK));
  });

  test('says the same of shots of the finished bait, each side judged with the other as it was then', () => {
    let work: Work = withBookTarget(newWork(DATA), 'elver', DATA);
    const shot = (white: string, black: string, other: string): void => {
      const pour: WorkStep = { do: 'pour', ml: 7 };
      const sides = [
        [pour, { do: 'see' as const, overWhite: white, overBlack: black }],
        [pour, { do: 'see' as const, overWhite: other, overBlack: black, after: '10 min' as const }],
      ];
      work = withWholeRound(work, sides, logShelf(DATA), []);
    };
    work = withSteps(work, 0, { do: 'add', amounts: [PEAT] });
    shot('#a88a63', '#7c6a4f', '#c3ad8a');
    const first = adviceFor(work, 0, DATA);
    // Nothing is reckoned of a look at what the target shows.
    const { overWhite } = first.aim.asTarget(first.now.seen!, first.now.last, undefined, first.other!.rounds[0]!.cup);
    expect(deltaE00(overWhite!, first.now.seen!.overWhite!)).toBeLessThan(1e-6);
    expect(first.aim.asTarget(first.now.seen!, first.now.last).overWhite).not.toEqual(first.now.seen!.overWhite);
    expectSameRounds(work, BOOK, inBook(work, BOOK));
    expectSameAdvice(work, BOOK, inBook(work, BOOK));
    work = withSteps(work, 1, { do: 'add', amounts: [{ ...PEAT, material: 'soot', dose: '1 drop', grams: 0.05 }] });
    shot('#9c7f5a', '#6f5d45', '#b39a76');
    const made = inBook(work, BOOK);
    expect(made.recipe.seen!.map(({ side, rounds }) => [side, rounds])).toEqual(
      [
        ['back', 1, 1],
        ['back', 1, 2],
        ['belly', 1, 1],
        ['belly', 1, 2],
      ].map(([side, back, belly]) => [
        side,
        side === 'back'
          ? [
              { cup: 'back', number: back },
              { cup: 'belly', number: belly },
            ]
          : [
              { cup: 'belly', number: belly },
              { cup: 'back', number: back },
            ],
      ]),
    );
    expectSameRounds(work, BOOK, made);
    expectSameAdvice(work, BOOK, made);
    expect(readWork(JSON.stringify(work))).toEqual(work);
  });

  test('warns of foam in a cup that is too full, and proposes no new one that would be', () => {
    const full = withSteps({ ...leaf(), plasticMl: 300 }, 0, { do: 'add', amounts: [PEAT] });
    const work = withSteps(full, 0, { do: 'pour', ml: 14 }, { do: 'see', overWhite: '#b8926a', overBlack: '#5a4a3a' });
    expect(adviceFor(work, 0, DATA).next.crowded?.kind).toBe('over-full');
    expectSameAdvice(work, BOOK, inBook(work, BOOK));
  });

  test('counts the same heats, and is warned of the same, whatever was noted', () => {
    const round = (again: number, celsius: number, heldMinutes: number): readonly WorkStep[] => [
      { do: 'heat', again, celsius, heldMinutes },
      { do: 'pour', ml: 5, also: true },
      { do: 'see', overWhite: '#b8926a', also: true },
    ];
    let work = withSteps(leaf(), 0, { do: 'add', amounts: [PEAT] });
    for (const steps of [round(0, 171, 6), round(1, 203, 7), round(2, 172, 9)]) {
      work = withSteps(work, 0, ...steps);
      work = withSteps(work, 0, { do: 'add', amounts: [{ ...PEAT, material: 'soot' }] });
    }
    work = withSteps(work, 0, ...round(2, 170, 1));
    const { heats, rounds } = cupNow(work, 0, logShelf(DATA));
    // Soot went in after the first look: with the second heat.
    expect(heats.borne).toMatchObject({ peat: 6, soot: 5 });
    expect(rounds.map((each) => each.newHeats)).toEqual([1, 1, 2, 2]);
    const made = inBook(work, BOOK);
    expectSameRounds(work, BOOK, made);
    expectSameWarnings(work, BOOK, made);
    expect([...made.told].filter((code) => WARNED.has(code)).sort()).toEqual([
      'recipe/burnt',
      'recipe/held-long',
      'recipe/worn',
    ]);
  });

  test('is warned of the limit of its plastic on the page as by check', () => {
    const files = FILES.map(({ path, text }) => ({
      path,
      text: path === 'shelf/plastics/supple.md' ? text.replace('---\n', '---\nhighest: 185 °C\n') : text,
    }));
    const book = { files, data: taughtBook(compileBook(files).book!) };
    for (const [celsius, codes] of [
      [185, []],
      [187, ['recipe/too-hot']],
    ] as const) {
      const work = withSteps(leaf(), 0, { do: 'heat', celsius }, { do: 'pour', ml: 5 }, { do: 'see', note: 'dull' });
      const made = inBook(work, book);
      expect([...made.told].filter((code) => WARNED.has(code))).toEqual(codes);
      expectSameWarnings(work, book, made);
    }
  });

  test('takes what photos measured with their doubt and their camera, of which the book has looks or none', () => {
    const chip: Source = {
      path: 'chips/peat.md',
      text: '---\ntitle: Peat chip\nplastic: 100 ml supple\nadd: { peat: 4 drops }\nseen: { over-white: "#c9a782", over-black: "#3a322b", doubt: 6, camera: phone, thickness: 6 mm }\n---\n',
    };
    const measured = { doubt: 6.4, contrastDoubt: 0.058, camera: 'phone', photos: 3 };
    const described = withoutTarget(leaf());
    const target = { ...described, sides: described.sides.map((side) => ({ ...side, measured })) };
    const work = withSteps(
      withSteps(target, 0, { do: 'add', amounts: [PEAT] }),
      0,
      { do: 'pour', ml: 14 },
      { do: 'see', overWhite: '#b8926a', overBlack: '#5a4a3a', measured: { ...measured, photos: 1 } },
    );
    for (const files of [FILES, [...FILES, chip]]) {
      const book = { files, data: taughtBook(compileBook(files).book!) };
      const made = inBook(work, book);
      expect(required(made.book.targets, made.recipe.target!).parts[0]).toMatchObject({
        camera: 'phone',
        contrastDoubt: expect.closeTo(0.058),
        cameraNumber: '1',
      });
      expectSameRounds(work, book, made);
      expectSameAdvice(work, book, made);
      expect(readWork(JSON.stringify(work))).toEqual(work);
    }
  });

  test('law: has the same rounds and the same left in the cup after everything that is done', () => {
    fc.assert(
      fc.property(matchBook, match, fc.boolean(), (book, made, described) => {
        const works = worksOf(made, book).map((work) => (described ? withoutTarget(work) : work));
        for (const work of works) {
          const made = inBook(work, book);
          expectSameRounds(work, book, made);
          expectSameWarnings(work, book, made);
        }
      }),
      { numRuns: 6 * TIMES },
    );
  });

  test('law: is judged and advised on the page as `next` does it from the file, to the printed figure', () => {
    fc.assert(
      fc.property(matchBook, match, fc.boolean(), (book, made, described) => {
        const last = worksOf(made, book).at(-1)!;
        const work = described ? withoutTarget(last) : last;
        expectSameAdvice(work, book, inBook(work, book));
      }),
      { numRuns: 12 * TIMES },
    );
  });

  test('doubts a look that the shelf cannot make until somebody has looked again', () => {
    const added = withSteps(leaf(), 0, { do: 'add', amounts: [PEAT] });
    const see = { do: 'see', overWhite: '#2040ff', overBlack: '#102080' } as const;
    const doubted = withSteps(added, 0, { do: 'pour', ml: 14 }, see);
    const checked = withLookChecked(doubted, 0, logShelf(DATA));
    for (const [work, doubt] of [
      [doubted, 'misfit'],
      [checked, undefined],
    ] as const) {
      expect(adviceFor(work, 0, DATA).next.doubt?.kind).toBe(doubt);
      expectSameAdvice(work, BOOK, inBook(work, BOOK));
      expect(readWork(JSON.stringify(work))).toEqual(work);
    }
    expect(inBook(checked, BOOK).text).toContain('checked: true');
    // And asks what may have happened, by the names of the shelf.
    const { next } = adviceFor(doubted, 0, DATA);
    expect(next.doubt?.wrong?.slips).toHaveLength(3);
    expect(nextAdditionText(next, DATA.settings)).toMatch(/doesn’t fit what the log says.*\? Correct the log/);
  });
});

/** The match with a target that was described on the page, and is in no book yet. */
function withoutTarget({ target: _, ...work }: Work): Work {
  return work;
}
