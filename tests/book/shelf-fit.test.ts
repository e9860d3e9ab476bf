import { describe, expect, test } from 'vitest';
import type { Material } from '../../src/book/model/shelf.ts';
import type { Book } from '../../src/book/model.ts';
import { bodyViews, cupBody, viewsDifference } from '../../src/optics/cup-body.ts';
import type { OpticalConstants } from '../../src/optics/mixture.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import type { ConstantsDoubt } from '../../src/tables/constants-doubt.ts';
import { body, clear, FILMS, type Film, MEASURED, PLASTIC_DENSITY, table } from './measured-shelf.ts';
import { compileWith, file } from './sample.ts';

function measuredBook(films: readonly Film[]): Book {
  const { book, diagnostics } = compileWith({ ...MEASURED, 'shelf/measurements.csv': table(films) });
  expect(diagnostics).toEqual([]);
  return book!;
}

const material = (book: Book, id: string): Material => book.materials.find((each) => each.id === id)!;

/** How surely the films tell K and S of a material, as learning takes it. */
function doubtOf({ learned }: Book, id: string): ConstantsDoubt {
  const { prior } = learned.data.materials.find((each) => each.id === id)!;
  if (prior.kind !== 'known') throw new Error(`${id} is not known from films`);
  return prior.doubt;
}

/** ΔE00 between a mix by the shelf's constants and by the true ones, at 6 mm. */
function missOf(book: Book, parts: Film['parts']): number {
  const contents = Object.entries(parts).map(([id, percent]) => ({
    material: id,
    gramsPerMl: (percent / 100) * PLASTIC_DENSITY,
  }));
  const shelf = (id: string): { constants: OpticalConstants } => ({
    constants: id === 'clear' ? clear : material(book, id).constants!,
  });
  const predicted = cupBody({ plastics: [{ material: 'clear', fraction: 1 }], contents }, shelf, USUAL_OPTICS);
  return viewsDifference(bodyViews(predicted, 6, USUAL_OPTICS), bodyViews(body(parts), 6, USUAL_OPTICS));
}

describe('fitShelf', () => {
  test('finds what the materials of films do, so that mixes and doses that nobody poured come out within ΔE00 0.5', () => {
    const book = measuredBook(FILMS);
    for (const parts of [{ reed: 0.5, clay: 0.1 }, { reed: 0.1, clay: 0.6 }, { reed: 0.5 }, { clay: 0.05 }]) {
      expect(missOf(book, parts), JSON.stringify(parts)).toBeLessThan(0.5);
    }
  });

  test('tells what a material rests on and how well its films are met', () => {
    const { tier, fit, typical } = material(measuredBook(FILMS), 'reed');
    expect(tier).toBe('measured');
    expect(fit).toMatchObject({ films: 3, doses: 2, thicknesses: 2, mixtures: 1 });
    expect(fit!.residual).toBeLessThan(0.5);
    expect(typical).toBeCloseTo(0.003 * PLASTIC_DENSITY, 9);
  });

  test('knows a material from mixtures alone, less surely', () => {
    const book = measuredBook([
      ...FILMS.slice(0, 2),
      { name: 'm1', parts: { reed: 0.2, clay: 0.2 }, mm: 2 },
      { name: 'm2', parts: { reed: 0.1, clay: 0.8 }, mm: 2 },
    ]);
    expect(missOf(book, { clay: 0.4 })).toBeLessThan(2);
    const surest = doubtOf(measuredBook(FILMS), 'clay').scattering[0]!;
    expect(doubtOf(book, 'clay').scattering[0]!).toBeGreaterThan(surest);
  });

  test('is surer of a material of more films', () => {
    const [one, all] = [FILMS.slice(0, 3), FILMS].map((films) => doubtOf(measuredBook(films), 'clay'));
    for (const quantity of ['absorption', 'scattering'] as const) {
      expect(all![quantity][0]!).toBeLessThan(one![quantity][0]!);
    }
  });

  test('does not depend on the order of the films', () => {
    const [one, other] = [FILMS, FILMS.toReversed()].map((films) =>
      missOf(measuredBook(films), { reed: 0.4, clay: 0.4 }),
    );
    expect(Math.abs(one! - other!)).toBeLessThan(0.02);
  });
});

describe('mistakes in shelf/measurements.csv', () => {
  const told = (text: string): string[] =>
    compileWith({ ...MEASURED, 'shelf/measurements.csv': text }).diagnostics.map(
      ({ severity, code, start, found, fix }) => `${start.line}:${start.column} ${severity} ${code} ${found} → ${fix}`,
    );
  const good = table(FILMS);

  test('a name that is not on the shelf, with the nearest one', () => {
    expect(told(good.replaceAll('reed=0.2', 'rede=0.2'))).toEqual([
      '3:4 error shelf/measurements material `rede` in lines 3 to 6 → write `reed` in all 4 lines that have it',
    ]);
  });

  test('a misspelt name in some rows of a film, once, and not that its rows disagree', () => {
    const lines = good.split('\n');
    const some = lines.map((line, index) => (index === 3 || index === 4 ? line.replace('reed=0.2', 'rede=0.2') : line));
    expect(told(some.join('\n'))).toEqual([
      '4:4 error shelf/measurements material `rede` in lines 4 and 5 → write `reed` in both lines that have it',
    ]);
  });

  test('a material without a file is to be created, and one whose file has a fault is no second mistake', () => {
    const { 'shelf/colorants/clay.md': clay, ...others } = MEASURED;
    const compiled = (files: Record<string, string>): readonly (string | undefined)[] =>
      compileWith({ ...files, 'shelf/measurements.csv': good }).diagnostics.map(({ code, fix }) => `${code} → ${fix}`);
    expect(compiled(others)).toEqual([
      'shelf/measurements → create shelf/colorants/clay.md, or a file of its own kind, with `look: { kind: measured }`',
    ]);
    expect(compiled({ ...others, 'shelf/colorants/clay.md': clay!.replace('measured', 'measure') })).toEqual([
      'field/value → write `measured`',
    ]);
  });

  test('semicolons, an empty cell, a thickness with its unit, a surface that is none of the four', () => {
    expect(told(good.replaceAll(',', ';'))).toEqual([
      '2:1 error shelf/measurements semicolons between the columns → save the table as CSV with commas between the columns, and with points in the numbers',
    ]);
    expect(told(good.replace(/0\.\d{5}/, ''))[0]).toMatch(/^3:1 error shelf\/measurements empty cell in column `\d+`/);
    expect(told(good.replace('r2,reed=1 %,3,', 'r2,reed=1 %,3 mm,'))[0]).toMatch(/thickness `3 mm` → write `3`$/);
    expect(told(good.replace('film_on_white', 'film_on_card'))[0]).toMatch(
      /`film_on_card` of r1 without its `bare_card` → write `film_on_white` or `film_on_black`/,
    );
  });

  test('a dose that depends on the cup, where it stands', () => {
    expect(told(good.replace('r1,reed=0.2 %', 'r1,reed=12 drops'))[0]).toMatch(
      /^3:4 error shelf\/measurements `reed=12 drops` in the composition/,
    );
  });

  test('a material that was described otherwise', () => {
    const { diagnostics } = compileWith({
      'shelf/colorants/reed.md': MEASURED['shelf/colorants/reed.md'],
      'shelf/colorants/clay.md': file('title: Clay\nlook: { colour: "#a0522d", kind: pigment, dose: 1 % }'),
      'shelf/measurements.csv': good,
    });
    expect(diagnostics.map(({ code, found, fix }) => [code, found, fix])).toEqual([
      [
        'shelf/measurements',
        'material `clay` in lines 11 to 22',
        'write `look: { kind: measured }` in shelf/colorants/clay.md',
      ],
    ]);
  });

  test('a film whose rows were exchanged is named, and the book is built from the others', () => {
    const lines = good.split('\n');
    const [white, black] = ['r2,reed=1 %,3,film_on_white', 'r2,reed=1 %,3,film_on_black'].map((start) =>
      lines.findIndex((line) => line.startsWith(start)),
    );
    const swapped = lines
      .with(white!, lines[black!]!.replace('on_black', 'on_white'))
      .with(black!, lines[white!]!.replace('on_white', 'on_black'));
    expect(told(swapped.join('\n'))).toEqual([
      expect.stringMatching(
        /^7:1 warning shelf\/film film `r2`, darker as film_on_white than as film_on_black → exchange the rows/,
      ),
    ]);
  });

  test('a number that is none, a header without samples, nothing at all: one sentence each, and no exception', () => {
    expect(told(good.replace(/0\.\d{5}/, 'n/a'))[0]).toMatch(/^3:\d+ error shelf\/measurements `n\/a`/);
    expect(told('when,what\n1,2')[0]).toMatch(/error shelf\/measurements header without `sample`/);
    expect(told('')[0]).toMatch(/error shelf\/measurements empty file/);
  });
});
