import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { adviceFor, firstAnswers } from '../../src/browser/match/ask.ts';
import { readDrafts, withoutRound } from '../../src/browser/match/drafts.ts';
import { roundBar, roundForms, sidesView } from '../../src/browser/match/fields-view.ts';
import { volumeOf } from '../../src/browser/match/limits.ts';
import { logView } from '../../src/browser/match/log-view.ts';
import { baitOf } from '../../src/browser/match/page-shelf.ts';
import { firstView, nextView } from '../../src/browser/match/proposal-view.ts';
import { readWork } from '../../src/browser/match/read-work.ts';
import { settledWork } from '../../src/browser/match/settle-work.ts';
import type { MatchShown } from '../../src/browser/match/shown.ts';
import { thicknessInField, thicknessOf } from '../../src/browser/match/thickness-field.ts';
import { roundOf } from '../../src/browser/match/typed-round.ts';
import { sideOf, type Work, withSteps } from '../../src/browser/match/work.ts';
import { newWork, withBookTarget, withRecipe } from '../../src/browser/match/work-begun.ts';
import { recipeFile } from '../../src/browser/match/work-recipe.ts';
import { targetFile } from '../../src/browser/match/work-target.ts';
import { UNITS } from '../../src/units/unit.ts';
import { volumeInField } from '../../src/units/volume-field.ts';
import { FILES, matched } from './match-book.ts';
import { taughtBook } from './taught-book.ts';

const FL_OZ = UNITS['fl oz'].size;

/** The same book, of a maker who measures in fluid ounces. */
const BOOK = FILES.map((file) =>
  file.path === 'book.md' ? { ...file, text: '---\ntitle: Bench\nunits: { volume: fl oz, currency: $ }\n---\n' } : file,
);
const DATA = taughtBook(compileBook(BOOK).book!);
const { settings } = DATA;
const SHOWN: MatchShown = { data: DATA, materials: new Map(DATA.materials.map((material) => [material.id, material])) };

const leaf = (): Work => withBookTarget(newWork(DATA), 'leaf', DATA);

/** A cup begun with a recipe and looked at. */
function looked(): Work {
  const work = withRecipe(leaf(), 0, firstAnswers(leaf(), DATA)[0]!.recipe.proposals[0]!, DATA);
  return withSteps(work, 0, { do: 'pour', ml: 0.5 * FL_OZ }, { do: 'see', overWhite: '#b8926a', overBlack: '#5a4a3a' });
}

const text = (html: { toString(): string }): string =>
  html
    .toString()
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');

describe('a match in a book of fluid ounces', () => {
  test('newWork(data) begins with four of them, and is kept in ml', () => {
    expect(volumeInField(newWork(DATA).plasticMl, settings)).toBe('4');
    expect(newWork(DATA).plasticMl).toBeCloseTo(118.294, 3);
  });

  test.each([
    ['', 'How many fluid ounces were poured? Write 0 if nothing left the cup.'],
    ['NaN', 'How much was poured? Give fluid ounces, 0 or more.'],
    ['-1', 'How much was poured? Give fluid ounces, 0 or more.'],
    ['0.00001', 'How much was poured? Give fluid ounces: 0, or at least 0.00034.'],
    ['4.1', 'The cup holds 4.05 fl oz: you can’t pour more.'],
  ])('roundOf(%j) says: %s', (pour, fault) => {
    expect(roundOf({ pour, note: '' }, 120, settings)).toEqual({ fault, field: 'pour' });
  });

  test('roundOf(0.5) pours 14.8 ml, and what the page says is in the cup can be poured', () => {
    expect(roundOf({ pour: '0.5', note: '' }, 120, settings)).toEqual([{ do: 'pour', ml: 0.5 * FL_OZ }]);
    expect(roundOf({ pour: '4.05', note: '' }, 120, settings)).toEqual([{ do: 'pour', ml: 4.05 * FL_OZ }]);
    expect(roundOf({ pour: '4', note: '' }, 4 * FL_OZ - 1e-9, settings)).toEqual([
      { do: 'pour', ml: 4 * FL_OZ - 1e-9 },
    ]);
  });

  test('roundOf(a round that was taken back) pours what it poured, whatever its field can show of it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 120, noNaN: true }), (ml) => {
        const pour = volumeInField(ml, settings);
        expect(roundOf({ pour, note: '' }, Math.max(ml, 100), settings, ml)).toEqual([{ do: 'pour', ml }]);
      }),
    );
    expect(roundOf({ pour: '0.48', note: '' }, 120, settings, 14)).toEqual([{ do: 'pour', ml: 0.48 * FL_OZ }]);
  });

  test('volumeOf(text) is ml, within limits that are told in fluid ounces', () => {
    expect(volumeOf('4', 'plasticMl', settings, 120)).toBe(4 * FL_OZ);
    expect(volumeOf('4.06', 'plasticMl', settings, 120)).toBe(120);
    for (const typed of ['', 'some', '0.03', '3382', '1e300']) {
      expect(volumeOf(typed, 'plasticMl', settings, 120)).toBe(
        'The size of the cup is a number from 0.034 to 3,381, in fluid ounces.',
      );
    }
    expect(volumeOf('0', 'addedMl', settings)).toBe(
      'The plastic that went in is a number from 0.0034 to 3,381, in fluid ounces.',
    );
    for (const told of ['0.034', '3381']) expect(volumeOf(told, 'plasticMl', settings)).toBeTypeOf('number');
  });

  test('readDrafts(what was kept) has the pour that was taken back, until the round is noted', () => {
    const draft = { pour: '0.473', pouredMl: 14, addedMl: '1.5' };
    expect(readDrafts(JSON.stringify({ cups: [draft], found: false })).cups).toEqual([draft]);
    // As much is poured the next time.
    expect(withoutRound(draft)).toEqual({ addedMl: '1.5', pour: '0.473' });
    expect(readDrafts('{"cups":[{"pour":"0.473","pouredMl":"14"}],"found":false}').cups).toEqual([{ pour: '0.473' }]);
  });

  test('a match of a book in ml is the same here', () => {
    const work = matched();
    const read = readWork(JSON.stringify(work)) as Work;
    expect(settledWork(read, DATA)).toEqual({ work, says: '' });
    expect(recipeFile(work, { made: '2026-03-14', taken: new Set(), unit: settings }).text).toBe(
      recipeFile(work, { made: '2026-03-14', taken: new Set() }).text,
    );
  });

  test('settledWork(…) says with how much a cup is taken to have begun as the field shows it', () => {
    const poured = { ...withSteps(leaf(), 0, { do: 'pour', ml: 3 * FL_OZ }), plasticMl: 50 };
    const settled = settledWork(poured, DATA);
    if ('fault' in settled) throw new Error(settled.fault);
    expect(settled.says).toBe('More was poured from a cup than it started with, so it now starts with 3 fl oz.');
    expect(volumeInField(settled.work.plasticMl, settings)).toBe('3');
  });

  test('recipeFile(…) has what was typed in fluid ounces as it was typed, and the book takes it', () => {
    const work = withSteps(looked(), 0, { do: 'plastic', ml: 14 });
    const { name, text: file } = recipeFile(work, { made: '2026-03-14', taken: new Set(), unit: settings });
    expect(file).toContain('    plastic: 4 fl oz supple\n');
    expect(file).toContain('pour: 0.5 fl oz\n');
    expect(file).toContain('- plastic: 14 ml supple\n');
    const { book, diagnostics } = compileBook([...BOOK, { path: `colours/${name}`, text: file }]);
    expect(diagnostics).toEqual([]);
    expect(book!.recipes[0]!.cups[0]!.leftMl).toBeCloseTo(adviceFor(work, 0, DATA).now.volumeMl, 6);
  });

  test('thicknessOf(text) is mm, within limits that are told in inches; untouched, it is what it was', () => {
    expect(thicknessOf('0.375', settings, 8)).toBeCloseTo(9.525, 12);
    expect(thicknessInField(9.525, settings)).toBe('0.375');
    for (const typed of ['', 'some', '0.003', '40', '-1', '1e300']) {
      expect(thicknessOf(typed, settings, 8)).toBe('The thickness is a number from 0.004 to 39, in inches.');
    }
    for (const told of ['0.004', '39']) expect(thicknessOf(told, settings)).toBeTypeOf('number');
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 1000, noNaN: true }), (mm) => {
        expect(thicknessOf(thicknessInField(mm, settings), settings, mm)).toBe(mm);
      }),
    );
  });

  test('targetFile(…) has a thickness that was typed in inches as it was typed, and the book takes it', () => {
    const { target: _, ...described } = leaf();
    const [side] = described.sides;
    for (const [thicknessMm, written] of [
      [thicknessOf('0.375', settings) as number, '0.375 in'],
      [8, '8 mm'],
    ] as const) {
      const work = { ...described, sides: [{ ...side!, thicknessMm }] };
      const { name, text: file } = targetFile(work, new Set(), settings)!;
      expect(file).toContain(`thickness: ${written}\n`);
      const { book, diagnostics } = compileBook([...BOOK, { path: `targets/${name}`, text: file }]);
      expect(diagnostics).toEqual([]);
      const found = book!.targets.find(({ id }) => name === `${id}.md`)!;
      expect(found.parts[0]!.thicknessMm).toBeCloseTo(thicknessMm, 12);
    }
  });

  test('its forms, its log and its proposals speak of fluid ounces alone', () => {
    const work = looked();
    const advice = adviceFor(work, 0, DATA);
    const side = sideOf(work, 0);
    expect(`${sidesView(work, DATA)}`).toContain('Thickness, in</label>');
    const views = [
      sidesView(work, DATA),
      `${roundForms(0, {}, { side, work, advice }, SHOWN)} ${roundBar(0, {}, { work }, SHOWN)}`,
      logView(work.cups[0]!.steps, advice.now, SHOWN),
      firstView(firstAnswers(work, DATA), work.sides, SHOWN, baitOf(work, DATA)),
      nextView(advice, side, SHOWN, baitOf(work, DATA)),
    ].map(text);
    for (const view of views) expect(view).not.toMatch(/\b(?:ml|mm)\b|millilit/i);
    expect(views[1]).toMatch(/Plastic, fl oz .*Poured, fl oz .*One shot of Minnow ?: 0\.41 fl oz/);
    expect(views[2]).toMatch(/poured 0\.5 fl oz; saw .* g = [\d.]+ drops in 4 fl oz/);
    expect(views[3]).toMatch(/no price on the shelf for Ivory, Peat and Supple/);
    expect(views[4]).toMatch(/fl oz in the cup · no price on the shelf for (Peat|Soot|Ivory)/);
  });
});

test('a cup with room for whole quarters of an ounce is proposed no more, and no less, than they are', () => {
  const files = FILES.map((file) =>
    file.path === 'book.md'
      ? { ...file, text: '---\ntitle: Bench\nunits: { volume: fl oz }\ntools: { drops: false }\ncup: 12 fl oz\n---\n' }
      : file,
  );
  const recipe =
    '---\ntitle: Match\nmold: minnow\nfor: leaf\ncups: { body: { plastic: 4.5 fl oz supple, log: [{ pour: 1.25 fl oz }, { add: { soot: 1 drop } }] } }\n---\n';
  const { book, diagnostics } = compileBook([...files, { path: 'colours/match.md', text: recipe }]);
  expect(diagnostics).toEqual([]);
  const added = book!.recipes[0]!.match!.cups[0]!.next!.proposals.flatMap(({ thin }) => thin?.ml ?? []);
  expect(Math.max(...added)).toBeCloseTo(2.75 * FL_OZ, 3);
});
