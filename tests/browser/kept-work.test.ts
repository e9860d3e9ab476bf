import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { cupName } from '../../src/browser/match/cup-name.ts';
import { typedAmount } from '../../src/browser/match/dose-text.ts';
import { exportedText, fittedWork } from '../../src/browser/match/fit-work.ts';
import { keptWork } from '../../src/browser/match/kept-work.ts';
import { leastPlasticMl } from '../../src/browser/match/least-plastic.ts';
import { MOST, numberOf } from '../../src/browser/match/limits.ts';
import { logShelf } from '../../src/browser/match/page-shelf.ts';
import { isNoWork, type NoWork, readWork } from '../../src/browser/match/read-work.ts';
import { type SettledWork, settledWork } from '../../src/browser/match/settle-work.ts';
import { isRoundFault, roundOf } from '../../src/browser/match/typed-round.ts';
import {
  begunAnew,
  cupLogs,
  unsaidSide,
  type Work,
  withoutLastDone,
  withSides,
  withSteps,
} from '../../src/browser/match/work.ts';
import { newWork, withBookTarget } from '../../src/browser/match/work-begun.ts';
import { cupNow } from '../../src/browser/match/work-log.ts';
import { recipeFile } from '../../src/browser/match/work-recipe.ts';
import { targetFile } from '../../src/browser/match/work-target.ts';
import { DATA, FILES, leaf, matched } from './match-book.ts';

/** What the book says against the files of a match. */
function refusals(work: Work): readonly string[] {
  const target = targetFile(work, new Set(DATA.targets.map(({ id }) => id)), DATA.settings);
  const id = target?.name.replace(/\.md$/, '') ?? work.target;
  const recipe = recipeFile(work, { made: '2026-03-14', taken: new Set(), target: id });
  const { book, diagnostics } = compileBook([
    ...FILES,
    { path: `colours/${recipe.name}`, text: recipe.text },
    ...(target ? [{ path: `targets/${target.name}`, text: target.text }] : []),
  ]);
  const cups = book?.recipes[0]?.cups.map(({ name }) => name).join();
  return [
    ...diagnostics.flatMap(({ severity, code, found }) => (severity === 'error' ? [`${code} ${found}`] : [])),
    ...(book && cups !== work.cups.map(({ name }) => name).join() ? [`other cups: ${cups}`] : []),
  ].map((refused) => `${refused}\n${recipe.text}`);
}

describe('whatever is done at the bench', () => {
  /** Something that is typed, or pressed; what is refused with a sentence leaves the match as it is. */
  type Action = (work: Work) => Work;
  const onShelf = logShelf(DATA);
  const at = fc.nat({ max: 1 });
  const cupOf = (work: Work, index: number): number => Math.min(index, work.cups.length - 1);
  const number = fc.oneof(
    fc.integer({ min: -1, max: 130 }).map(String),
    fc.double({ min: 0, max: 130, noNaN: true }).map(String),
    fc.constantFrom('', '0', '-0', '1e-7', '0.0000001', '0.01', '120', '1e9', 'some', '100000'),
  );
  const colour = fc.option(fc.constantFrom('', 'A08060', '#a08060', '#zz'), { nil: undefined });
  const pour = fc
    .record({ index: at, pour: number, overWhite: colour, overBlack: colour, note: fc.string({ maxLength: 300 }) })
    .map(
      ({ index, overWhite, overBlack, ...typed }): Action =>
        (work) => {
          const cup = cupOf(work, index);
          const views = {
            ...(overWhite === undefined ? {} : { overWhite }),
            ...(overBlack === undefined ? {} : { overBlack }),
          };
          const steps = roundOf({ ...typed, ...views }, cupNow(work, cup, onShelf).volumeMl);
          return isRoundFault(steps) ? work : withSteps(work, cup, ...steps);
        },
    );
  const unit = fc.constantFrom('g', 'drops', 'tsp', 'ml', '%', 'phr', 'pinch', 'cup', 'kg');
  const add = fc.record({ index: at, amount: number, unit, material: fc.constantFrom('peat', 'soot', 'ivory') }).map(
    ({ index, amount, unit: counted, material }): Action =>
      (work) => {
        const cup = cupOf(work, index);
        const [, ml] = Object.entries(cupNow(work, cup, onShelf).cup.plastics)[0]!;
        const shelf = DATA.materials.find(({ id }) => id === material)!;
        const typed = typedAmount(`${amount}  ${counted}`, shelf, { ml, grams: ml * onShelf.density('supple') });
        return 'fault' in typed ? work : withSteps(work, cup, { do: 'add', amounts: [typed] });
      },
  );
  const plastic = fc.tuple(at, number).map(
    ([index, text]): Action =>
      (work) => {
        const ml = numberOf(text, 'addedMl');
        return typeof ml === 'string' ? work : withSteps(work, cupOf(work, index), { do: 'plastic', ml });
      },
  );
  const fields = fc.tuple(number, number, number).map(
    ([tolerance, ml, mm]): Action =>
      (work) => {
        const read = [
          numberOf(tolerance, 'tolerance'),
          numberOf(ml, 'plasticMl'),
          numberOf(mm, 'thicknessMm'),
        ] as const;
        let next = work;
        if (typeof read[0] === 'number') next = { ...next, tolerance: read[0] };
        if (typeof read[1] === 'number' && read[1] >= leastPlasticMl(work, onShelf) - 1e-6)
          next = { ...next, plasticMl: read[1] };
        const [, , thicknessMm] = read;
        if (typeof thicknessMm === 'string') return next;
        const { target: _, ...described } = next;
        return withSides(
          described,
          work.sides.map((side) => ({ ...side, thicknessMm })),
        );
      },
  );
  const anew = at.map(
    (index): Action =>
      (work) =>
        begunAnew(work, cupOf(work, index), []),
  );
  const undo = at.map(
    (index): Action =>
      (work) =>
        withoutLastDone(work, cupOf(work, index)),
  );
  const title = fc.string({ maxLength: MOST.title }).map(
    (typed): Action =>
      (work) => ({ ...work, title: typed }),
  );
  const named = fc.oneof(fc.string({ maxLength: 40 }), fc.constantFrom('1', ' 2', 'belly', 'true')).map(
    (typed): Action =>
      (work) => {
        const [first, ...others] = work.sides;
        if (others.length === 0) return work;
        const { target: _, ...described } = work;
        return withSides(described, [
          { ...first!, name: cupName(typed, new Set(others.map(({ name }) => name))) },
          ...others,
        ]);
      },
  );
  const action = fc.oneof(pour, pour, add, add, plastic, fields, anew, undo, title, named);
  const fresh = newWork(DATA);
  const described = withSides(fresh, [{ ...fresh.sides[0]!, overWhite: '#8a6a44', overBlack: '#5d4c36' }]);
  const begun = fc.constantFrom(described, leaf(), matched(), withBookTarget(newWork(DATA), 'elver', DATA));

  test('readWork(…) takes a match whose target nobody has described yet, and invents no colour for it', () => {
    const fresh = newWork(DATA);
    expect(readWork(JSON.stringify(fresh))).toEqual(fresh);
    expect(fresh.sides.map(({ overWhite, overBlack }) => [overWhite, overBlack])).toEqual([[undefined, undefined]]);
    expect(unsaidSide(fresh)).toBe(0);
    expect(unsaidSide(leaf())).toBeUndefined();
  });

  test('readWork(what is kept) and readWork(what is exported) are the match, and the book takes its files', () => {
    fc.assert(
      fc.property(begun, fc.array(action, { maxLength: 14 }), (work, actions) => {
        const done = actions.reduce((all, each) => fittedWork(each(all)) ?? all, work);
        expect(readWork(JSON.stringify(done))).toEqual(done);
        expect(readWork(exportedText(done))).toEqual(done);
        expect(settledWork(done, DATA)).toEqual({ work: done, says: '' });
        expect(refusals(done)).toEqual([]);
      }),
      { numRuns: 120 },
    );
  });

  test('a title as long as may be, with signs that nobody sees pasted into it, makes files that the book takes', () => {
    const work = { ...leaf(), title: `Le\u200baf\u202e ${'a'.repeat(MOST.title - 7)}` };
    expect(refusals(work)).toEqual([]);
    expect(recipeFile(work, { made: '2026-03-14', taken: new Set() }).text).toContain(
      `title: Leaf ${'a'.repeat(MOST.title - 7)}\n`,
    );
  });

  test('of a book with limits of its own, readWork(a new match) is that match', () => {
    const data = {
      ...DATA,
      settings: { ...DATA.settings, tolerance: 0.001 },
      molds: DATA.molds.map((mold) => ({ ...mold, bodyMm: 4000 })),
    };
    expect(readWork(JSON.stringify(newWork(data)))).toEqual(newWork(data));
  });

  test('roundOf(a pour of next to nothing) is a sentence', () => {
    expect(roundOf({ pour: '0.0000001', note: '' }, 120)).toEqual({
      fault: 'How much was poured? Give millilitres: 0, or at least 0.01.',
      field: 'pour',
    });
  });

  test('fittedWork(…) gives up the oldest of the cups that were given up: the 51st, and what makes a match too long', () => {
    const see = (work: Work, note: string): Work => withSteps(work, 0, { do: 'see', overWhite: '#112233', note });
    let work = leaf();
    for (let cup = 1; cup <= 51; cup++) work = fittedWork(begunAnew(see(work, `cup ${cup}`), 0, []))!;
    const givenUp = (): ReturnType<typeof cupLogs> => cupLogs(work.cups[0]!.steps).slice(0, -1);
    expect(givenUp().map(([step]) => step!.do === 'see' && step!.note)).toEqual(
      Array.from({ length: 50 }, (_, index) => `cup ${index + 2}`),
    );
    expect(readWork(JSON.stringify(work))).toEqual(work);
    for (let cup = 0; cup < 30; cup++) {
      for (let look = 0; look < 60; look++) work = see(work, 'ä'.repeat(2000));
      work = fittedWork(begunAnew(work, 0, []))!;
    }
    expect(givenUp().length).toBeLessThan(30);
    expect(readWork(exportedText(work))).toEqual(work);
  });

  test('fittedWork(a log with one step too many) is none', () => {
    const steps = Array.from({ length: MOST.steps }, () => ({ do: 'plastic' as const, ml: 1 }));
    const full = withSteps(leaf(), 0, ...steps);
    expect(fittedWork(full)).toEqual(full);
    expect(readWork(JSON.stringify(full))).toEqual(full);
    expect(fittedWork(withSteps(full, 0, { do: 'plastic', ml: 1 }))).toBeUndefined();
  });
});

describe('a match that is read', () => {
  test('readWork(exported work) is the work', () => {
    const work = matched();
    expect(readWork(JSON.stringify(work))).toEqual(work);
    expect(readWork(JSON.stringify(newWork(DATA)))).toEqual(newWork(DATA));
  });

  test('readWork(anything else) is a sentence', () => {
    const work = matched();
    for (const text of [
      '',
      'null',
      '[]',
      '{"format":2}',
      '<svg onload=alert(1)>',
      JSON.stringify({ ...work, plastic: '../../etc' }),
      JSON.stringify({ ...work, sides: [] }),
      JSON.stringify({ ...work, tolerance: null }),
      JSON.stringify({ ...work, cups: [{ name: 'body', steps: [{ do: 'see', overWhite: 'url(x)' }] }] }),
      JSON.stringify({ ...work, cups: [{ name: 'body', steps: [{ do: 'pour', ml: -3 }] }] }),
      'x'.repeat(3_000_000),
    ]) {
      expect(isNoWork(readWork(text)), text.slice(0, 80)).toBe(true);
    }
    fc.assert(fc.property(fc.json(), (text) => isNoWork(readWork(text))));
  });

  test('readWork(a match of a newer version) says so, and of a file that only has such a number does not', () => {
    const fault = (text: unknown): string => (readWork(JSON.stringify(text)) as NoWork).fault;
    expect(fault({ ...matched(), format: 2, more: true })).toMatch(
      /^This match was made with a newer version of Cupbook/,
    );
    expect(fault({ format: 2, cups: [] })).toMatch(/newer version/);
    for (const other of [
      { format: 2, recipes: [] },
      { format: 1.5, cups: [] },
      { format: '2', cups: [] },
      { format: 0, cups: [] },
    ])
      expect(fault(other)).toMatch(/^This file holds no match/);
    const kept = keptWork({ work: JSON.stringify({ ...matched(), format: 2 }) }, DATA);
    expect(kept).toMatchObject({ fault: expect.stringContaining('newer version') });
  });

  test('readWork(a match of an earlier version) is that match, without the aims that it had', () => {
    const { cups, ...work } = matched();
    const [cup] = cups;
    const steps = cup!.steps.map(({ also: _, ...step }) => step);
    const kept = { ...work, cups: [{ ...cup!, steps, aim: work.sides[0]! }] };
    expect(readWork(JSON.stringify(kept))).toEqual(matched());
  });

  test('of an earlier version has the cups that were given up in the log of the one that they were given up for', () => {
    const [cup] = matched().cups;
    const kept = { ...matched(), cups: [{ ...cup!, steps: [], earlier: [cup!.steps] }] };
    expect(readWork(JSON.stringify(kept))).toEqual(begunAnew(matched(), 0, []));
  });

  test('of an earlier version with a pour of next to nothing is there again', () => {
    const work = withSteps(leaf(), 0, { do: 'pour', ml: 1e-7 });
    expect(readWork(JSON.stringify(work))).toEqual(withSteps(leaf(), 0, { do: 'pour', ml: 0.01 }));
  });

  test.each(['1 g }\npublish: no\nx: {', '1 g, soot: 2 g', 'some', '', '1 tsp # a note'])(
    'with the dose %j is none: the book could not read it either',
    (dose) => {
      const work = withSteps(leaf(), 0, { do: 'add', amounts: [{ material: 'peat', dose, grams: 1 }] });
      expect(isNoWork(readWork(JSON.stringify(work)))).toBe(true);
    },
  );

  test('with the cups of other sides, or two of one name, is none', () => {
    const work = withBookTarget(newWork(DATA), 'elver', DATA);
    const [back, belly] = work.cups;
    expect(isNoWork(readWork(JSON.stringify({ ...work, cups: [belly, back] })))).toBe(true);
    const twice = { ...work, sides: [work.sides[0], work.sides[0]], cups: [back, back] };
    expect(isNoWork(readWork(JSON.stringify(twice)))).toBe(true);
  });
});

describe('settledWork(a match, of another book or an earlier one)', () => {
  const settled = (work: Work): SettledWork => {
    const found = settledWork(work, DATA);
    if ('fault' in found) throw new Error(found.fault);
    expect(refusals(found.work)).toEqual([]);
    return found;
  };

  test('makes a target that is gone a described one, whose file is taken away with the recipe', () => {
    const gone = { ...matched(), target: 'gone' };
    const { work, says } = settled(gone);
    expect(says).toBe('This book has no target gone, so the match keeps its description.');
    expect(work).toEqual({ ...gone, target: undefined });
    expect(targetFile(work, new Set(), DATA.settings)!.text).toContain('over-white: "#a4805a"');
    expect(settled(matched())).toEqual({ work: matched(), says: '' });
  });

  test('lets a cup have begun with what was poured of it', () => {
    const poured = { ...withSteps(leaf(), 0, { do: 'pour', ml: 80 }), plasticMl: 50 };
    expect(refusals(poured)).not.toEqual([]);
    const { work, says } = settled(poured);
    expect(work.plasticMl).toBe(80);
    expect(says).toBe('More was poured from a cup than it started with, so it now starts with 80 ml.');
    expect(settledWork(withSteps(leaf(), 0, { do: 'pour', ml: 100_000 }, { do: 'pour', ml: 1 }), DATA)).toEqual({
      fault: 'More was poured in this match than any cup holds.',
    });
  });

  test('counts doses as this book does, and writes by weight what it cannot count', () => {
    const added = (material: string, dose: string, grams: number): Work =>
      withSteps(leaf(), 0, { do: 'add', amounts: [{ material, dose, grams }] });
    const amountOf = (work: Work): unknown => {
      const [step] = settled(work).work.cups[0]!.steps;
      return step!.do === 'add' && step!.amounts[0];
    };
    expect(amountOf(added('peat', '1 g', 500))).toEqual({ material: 'peat', dose: '1 g', grams: 1 });
    expect(amountOf(added('ivory', '3 drops', 0.15))).toEqual({ material: 'ivory', dose: '0.15 g', grams: 0.15 });
    expect(amountOf(added('ivory', '1 %', 1.2))).toEqual({ material: 'ivory', dose: '1.2 g', grams: 1.2 });
    // Less than the book reads as an amount.
    expect(amountOf(added('ivory', '2 %', 1e-7))).toEqual({ material: 'ivory', dose: '0.0001 g', grams: 0.0001 });
    expect(amountOf(added('peat', '3 drops per cup', 0.08))).toEqual({ material: 'peat', dose: '0.08 g', grams: 0.08 });
  });

  test('says what the book lacks', () => {
    const fault = (work: Work): unknown => settledWork(work, DATA);
    expect(fault({ ...leaf(), plastic: 'firm' })).toEqual({
      fault: 'This match uses firm, which isn’t on this book’s shelf.',
    });
    expect(fault({ ...leaf(), plastic: 'peat' })).toEqual({
      fault: 'This match uses peat as its plastic, which isn’t a plastic in this book.',
    });
    const supple = { material: 'supple', dose: '1 g', grams: 1 };
    expect(fault(withSteps(leaf(), 0, { do: 'add', amounts: [supple] }))).toEqual({
      fault: 'This match uses supple as a colour, and in this book that is a plastic.',
    });
    expect(fault({ ...leaf(), mold: 'pike' })).toEqual({
      fault: 'This match is for the mold pike, which isn’t in this book.',
    });
  });
});
