import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { lettingDownFor, nextAdditionFor } from '../../src/book/match/ask-matching.ts';
import { adviceFor, firstAnswers } from '../../src/browser/match/ask.ts';
import { logShelf } from '../../src/browser/match/page-shelf.ts';
import { isNoWork, readWork } from '../../src/browser/match/read-work.ts';
import { type Work, withoutLastDone, withSteps } from '../../src/browser/match/work.ts';
import { stepsOf, withRecipe } from '../../src/browser/match/work-begun.ts';
import { withStepsBeforeLook } from '../../src/browser/match/work-log.ts';
import { recipeFile } from '../../src/browser/match/work-recipe.ts';
import { nextAdditionText } from '../../src/words/next-addition.ts';
import { DATA, FILES, leaf } from './match-book.ts';

/** A match whose second look is on its target, though nothing is logged since the first. */
function forgotten(): Work {
  const begun = leaf();
  const work = withRecipe(begun, 0, firstAnswers(begun, DATA)[0]!.recipe.proposals[0]!, DATA);
  const first = withSteps(work, 0, { do: 'pour', ml: 14 }, { do: 'see', overWhite: '#c8a47c', overBlack: '#6a5a46' });
  return withSteps(first, 0, { do: 'pour', ml: 14 }, { do: 'see', overWhite: '#a4805a', overBlack: '#6e5a44' });
}

/** The match as a recipe of the book. */
function inBook(work: Work): ReturnType<typeof compileBook> {
  const { text } = recipeFile(work, { made: '2026-03-14', taken: new Set() });
  return compileBook([...FILES, { path: 'colours/leaf-brown.md', text }]);
}

describe('a round that moved with nothing logged', () => {
  test('asks what went in before it says “leave it”, with what had been proposed', () => {
    const work = forgotten();
    const { next, unlogged } = adviceFor(work, 0, DATA);
    expect(next.advice.kind).toBe('ask-what-went-in');
    expect(next.now!.within).toBe(true);
    expect(next.proposals).toEqual([]);
    const [proposed] = adviceFor(withoutLastDone(work, 0), 0, DATA).next.proposals;
    expect(unlogged!.proposed).toEqual(proposed);
    expect(nextAdditionText(next, DATA.settings)).toMatch(
      /^Nothing is logged since round 1, but the colour has changed: [a-z ]+ \(ΔE \d+(\.\d)?\), more than two pours of one cup differ\. Did you add what was proposed: .* of .*\?$/,
    );
  });

  test('asks no more once the proposed is in the log, before that round', () => {
    const work = forgotten();
    const { unlogged } = adviceFor(work, 0, DATA);
    const mended = withStepsBeforeLook(work, 0, stepsOf(unlogged!.proposed!, DATA, false), logShelf(DATA));
    expect(mended.cups[0]!.steps.slice(-2)).toEqual(work.cups[0]!.steps.slice(-2));
    const { next, now } = adviceFor(mended, 0, DATA);
    expect(next.advice.kind).toBe('leave-it');
    const { material, grams } = unlogged!.proposed!.additions[0]!;
    expect(now.cup.materials[material]!).toBeGreaterThan(adviceFor(work, 0, DATA).now.cup.materials[material] ?? 0);
    expect(grams).toBeGreaterThan(0);
    expect(inBook(mended).diagnostics).toEqual([]);
  });

  test('asks no more where nothing went in; that is kept, exported and in the recipe’s file', () => {
    const told = withStepsBeforeLook(forgotten(), 0, [{ do: 'add', amounts: [] }], logShelf(DATA));
    expect(adviceFor(told, 0, DATA).next.advice.kind).toBe('leave-it');
    const read = readWork(JSON.stringify(told));
    expect(isNoWork(read)).toBe(false);
    expect(read).toEqual(told);
    expect(recipeFile(told, { made: '2026-03-14', taken: new Set() }).text).toContain('- add: {}\n');
    const { book, diagnostics } = inBook(told);
    // Of nothing but the look itself, which no such cup has.
    expect(diagnostics.map(({ code }) => code)).toEqual(['log/does-not-fit']);
    const [recipe] = book!.recipes;
    expect(recipe!.cups[0]!.rounds[1]).toMatchObject({ added: [] });
    expect(recipe!.cups[0]!.rounds[1]).not.toHaveProperty('unlogged');
    const target = book!.targets.find(({ id }) => id === 'leaf')!;
    expect(nextAdditionFor(book!, recipe!, recipe!.cups[0]!, target).advice.kind).toBe('leave-it');
  });

  test('is a warning of the book at its look, and the same question in next and let-down', () => {
    const { book, diagnostics } = inBook(forgotten());
    expect(diagnostics).toMatchObject([
      {
        code: 'seen/unlogged',
        severity: 'warning',
        file: 'colours/leaf-brown.md',
        fix: expect.stringContaining('add: {}'),
      },
    ]);
    const [recipe] = book!.recipes;
    const target = book!.targets.find(({ id }) => id === 'leaf')!;
    const told = nextAdditionFor(book!, recipe!, recipe!.cups[0]!, target);
    expect(told).toMatchObject({ advice: { kind: 'ask-what-went-in' }, proposals: [] });
    const asked = nextAdditionText(adviceFor(forgotten(), 0, DATA).next, DATA.settings);
    expect(nextAdditionText(told, book!.settings)).toBe(asked);
    expect(lettingDownFor(book!, recipe!, recipe!.cups[0]!, target).advice).toEqual(told.advice);
    // The page of the recipe tells its readers nothing of it.
    expect(recipe!.match!.cups[0]!.next).toBeUndefined();
  });

  test('does not ask of two looks that differ as two test pours do, nor of the first one', () => {
    const first = withoutLastDone(forgotten(), 0);
    expect(adviceFor(first, 0, DATA).next.advice.kind).not.toBe('ask-what-went-in');
    const again = withSteps(first, 0, { do: 'see', overWhite: '#c6a27a', overBlack: '#6b5b47' });
    expect(adviceFor(again, 0, DATA).next.advice.kind).not.toBe('ask-what-went-in');
  });

  test('withStepsBeforeLook(work) goes past what was poured or only noted since, and before both views of one look', () => {
    const nothing = { do: 'add' as const, amounts: [] };
    const nothingAt = (work: Work): number =>
      withStepsBeforeLook(work, 0, [nothing], logShelf(DATA)).cups[0]!.steps.findLastIndex(
        (step) => step.do === 'add' && step.amounts.length === 0,
      );
    const work = forgotten();
    const at = withoutLastDone(work, 0).cups[0]!.steps.length;
    const later = withSteps(withSteps(work, 0, { do: 'pour', ml: 5 }), 0, { do: 'see', note: 'dull' });
    expect(nothingAt(later)).toBe(at);
    const white = withSteps(withoutLastDone(work, 0), 0, { do: 'pour', ml: 14 }, { do: 'see', overWhite: '#a4805a' });
    expect(nothingAt(withSteps(white, 0, { do: 'see', overBlack: '#6e5a44' }))).toBe(at);
  });
});
