import { expect, test } from 'vitest';
import { findingText } from '../../src/book/films/films-finding.ts';
import { predictFilms } from '../../src/book/films/predict-films.ts';
import { BLACK, knownFilm, partsOf, WHITE } from '../optics/fit/synthetic-films.ts';
import { bareRows, MEASUREMENTS, MIX, measuredRows, row, SHELF, table } from './film-tables.ts';

const cells = (csv: string | undefined): string[][] =>
  (csv ?? '')
    .trimEnd()
    .split('\n')
    .map((line) => line.split(','));

const messages = (result: ReturnType<typeof predictFilms>): string[] => result.findings.map(findingText);

test('predictFilms(measurements, requests) predicts each request, with colour, expected error and spectrum', () => {
  const result = predictFilms(MEASUREMENTS, table(...bareRows('wanted', MIX)));
  expect(messages(result)).toEqual([]);
  const [header, ...rows] = cells(result.predictions);
  expect(header!.slice(0, 11)).toEqual('sample surface L a b X Y Z expected_dE00 bound90_dE00 400'.split(' '));
  expect(rows.map((each) => each.slice(0, 2))).toEqual([
    ['wanted', 'film_on_black'],
    ['wanted', 'film_on_white'],
  ]);
  const truth = knownFilm(partsOf(MIX), WHITE);
  const spectrum = rows[1]!.slice(10).map(Number);
  expect(spectrum).toHaveLength(31);
  spectrum.forEach((percent, band) => {
    expect(Math.abs(percent - 100 * truth[band]!)).toBeLessThan(2.5);
  });
  for (const each of rows) expect(each.every((cell) => cell !== '' && !/NaN|Infinity/.test(cell))).toBe(true);
});

test('predictFilms(measurements, requests) takes a row without bare backings as the backing itself', () => {
  const asBare = predictFilms(MEASUREMENTS, table(...bareRows('x', MIX))).predictions;
  const asFilm = predictFilms(
    MEASUREMENTS,
    table(row('x', MIX, 'film_on_black', BLACK), row('x', MIX, 'film_on_white', WHITE)),
  ).predictions;
  expect(asFilm).toBe(asBare);
  const unnamed = predictFilms(MEASUREMENTS, table(row('x', MIX, '', BLACK))).predictions;
  expect(cells(unnamed)[1]!.slice(0, 2)).toEqual(['x', 'film']);
});

test('predictFilms(measurements, requests) never reads the answer from a table of measurements', () => {
  const honest = predictFilms(MEASUREMENTS, table(...bareRows('x', MIX))).predictions;
  const answered = predictFilms(MEASUREMENTS, table(...measuredRows('x', MIX))).predictions;
  expect(answered).toBe(honest);
});

test('predictFilms(measurements, requests) reads 0..1 as well as percent, and answers in the unit of the requests', () => {
  const ratios = table(...SHELF.flatMap(([name, amounts]) => measuredRows(name, amounts, 1)));
  const percent = cells(predictFilms(MEASUREMENTS, table(...bareRows('x', MIX))).predictions)[1]!;
  const ratio = cells(predictFilms(ratios, table(...bareRows('x', MIX, 1))).predictions)[1]!;
  expect(Math.abs(Number(ratio[2]) - Number(percent[2]))).toBeLessThan(0.01);
  expect(Math.abs(100 * Number(ratio[10]) - Number(percent[10]))).toBeLessThan(0.01);
});

test('predictFilms(measurements, requests) finds its columns in any order, with tabs, marks of byte order and comments', () => {
  const wild = MEASUREMENTS.split('\n')
    .map((line) => (line.startsWith('#') ? line : line.split(',').reverse().join('\t')))
    .join('\r\n');
  const straight = predictFilms(MEASUREMENTS, table(...bareRows('x', MIX)));
  const result = predictFilms(`\uFEFF${wild}`, table(...bareRows('x', MIX)));
  expect(messages(result)).toEqual([]);
  expect(result.predictions).toBe(straight.predictions);
});

test('predictFilms(measurements, requests) names an unknown paint by its line, offers the nearest, and predicts the others', () => {
  const result = predictFilms(
    MEASUREMENTS,
    table(row('bad', { dusck: 0.5, chalk: 0.5 }, 'film_on_black', BLACK), row('good', MIX, 'film_on_black', BLACK)),
    { measurements: 'shelf.csv', films: 'wanted.csv' },
  );
  expect(messages(result)).toEqual([
    'wanted.csv:2 error Unexpected paint `dusck` in bad, expected one that a measured film holds\n  fix: write `dusk`',
  ]);
  expect(cells(result.predictions).map(([sample]) => sample)).toEqual(['sample', 'good']);
});

test('predictFilms(measurements, requests) tells all errors of the measurements at once, and predicts nothing', () => {
  const result = predictFilms(
    table(
      row('1', { chalk: 1 }, 'bare_black', BLACK),
      row('1', { chalk: 0.9 }, 'film_on_black', BLACK),
      row('2', { dusk: 1 }, 'film_on_white', WHITE),
      row('3', { dusk: 1 }, 'underside', WHITE),
      row('4', { dusk: -1 }, 'bare_black', WHITE),
      row('5', { dusk: 1 }, 'bare_black', BLACK).replace(/,[^,]*$/, ',dark'),
    ),
    table(...bareRows('x', MIX)),
    { measurements: 'shelf.csv', films: 'wanted.csv' },
  );
  expect(result.predictions).toBeUndefined();
  expect(messages(result).filter((message) => message.includes('error'))).toEqual([
    'shelf.csv:3 error Unexpected other composition of 1, expected that of line 2\n  fix: write the same composition in all rows of 1, or give a second film a sample name of its own',
    'shelf.csv:4 error Unexpected `film_on_white` of 2 without its `bare_white`, expected the backing measured, too\n  fix: add the row `bare_white` of 2, the card alone',
    'shelf.csv:5 error Unexpected surface `underside`, expected one of `bare_white`, `film_on_white`, `bare_black`, `film_on_black`',
    'shelf.csv:6 error Unexpected `dusk=-1` in the composition, expected `paint=fraction`',
    'shelf.csv:7 error Unexpected `dark` in column `700`, expected a reflectance, at least 0',
  ]);
});

test.each([
  ['', 'error Unexpected empty file, expected a header and rows of reflectances'],
  ['# nothing\n', 'error Unexpected empty file, expected a header and rows of reflectances'],
  ['name,400,410,420\n', 'error Unexpected header without `sample`, expected a column of that name'],
  ['sample,composition\n', 'expected at least three columns in equal steps among 380, 385 … 780 nm'],
  ['sample,composition,400,410,430\n', 'expected at least three columns in equal steps'],
  ['sample,composition,400,410,420\n"1,chalk,1,1,1\n', 'error Unexpected quotes, expected CSV'],
  ['sample,composition,400,410,420\n', 'error Unexpected table without films, expected at least one'],
  ['sample,composition,surface,400,410,420\n1,chalk,bare_black,180,5,5\n', 'expected no more than 120 %'],
])('predictFilms(measurements) says what is wrong with %j', (text, expected) => {
  const result = predictFilms(text, table(...bareRows('x', MIX)));
  expect(messages(result).join('\n')).toContain(expected);
  expect(result.predictions).toBeUndefined();
});

test('predictFilms(measurements, requests) wants the wavelengths of the measurements in the requests', () => {
  const short = table(...bareRows('x', MIX))
    .split('\n')
    .map((line) => line.split(',').slice(0, -1).join(','))
    .join('\n');
  const result = predictFilms(MEASUREMENTS, short);
  expect(result.predictions).toBeUndefined();
  expect(messages(result)).toEqual([
    'films error Unexpected wavelengths, expected those of measurements: 700 nm are missing',
  ]);
});

test('predictFilms(measurements, requests) warns of films that are darker over white', () => {
  const swapped = measuredRows('1', { chalk: 1 }).map((line) =>
    line.replace(/film_on_(black|white)/, (_, under: string) => `film_on_${under === 'black' ? 'white' : 'black'}`),
  );
  const result = predictFilms(
    table(...swapped, ...SHELF.slice(1).flatMap(([name, amounts]) => measuredRows(name, amounts))),
    table(...bareRows('x', MIX)),
  );
  expect(messages(result)[0]).toMatch(
    /^measurements:4 warning Film 1 is darker as film_on_white than as film_on_black/,
  );
  expect(result.predictions).toBeDefined();
});

/** A table with a column of densities: that of each row by its composition. */
const withDensities = (text: string, densityOf: (composition: string) => string): string =>
  text
    .trimEnd()
    .split('\n')
    .map((line) => {
      if (line.startsWith('#')) return line;
      const [sample, composition] = line.split(',');
      return `${line},${sample === 'sample' ? 'density' : densityOf(composition!)}`;
    })
    .join('\n');

test('predictFilms(measurements) takes more room for a paint that is told to be lighter', () => {
  // No mixture was measured: how much room each paint takes, its density alone can say.
  const alone = table(...SHELF.slice(0, 2).flatMap(([name, amounts]) => measuredRows(name, amounts)));
  const lightness = (dusk: string): number => {
    const told = withDensities(alone, (composition) => (composition === 'dusk=1' ? dusk : '2'));
    const result = predictFilms(told, table(row('x', MIX, 'film_on_white', WHITE)));
    expect(messages(result)).toEqual([]);
    return Number(cells(result.predictions)[1]![2]);
  };
  // The dark one of the two: the lighter its paint, the more of the film it is.
  expect(lightness('1')).toBeLessThan(lightness('2') - 1);
  expect(lightness('2')).toBeLessThan(lightness('4') - 1);
});

test('predictFilms(measurements) tells densities that it cannot use, and figures that are none', () => {
  const result = predictFilms(
    withDensities(MEASUREMENTS, (composition) =>
      composition === 'dusk=1' ? '1.4' : composition === 'chalk=1' ? '' : '2',
    ),
    table(row('x', MIX, 'film_on_black', BLACK)),
  );
  expect(messages(result)[0]).toBe(
    'measurements:11 warning Unexpected density of a mixture, expected the density of a paint, in a row of that paint alone',
  );
  expect(result.predictions).toBeDefined();
  const wrong = predictFilms(
    withDensities(MEASUREMENTS, (composition) => (composition === 'dusk=1' ? '1.4 g/ml' : '')),
    table(row('x', MIX, 'film_on_black', BLACK)),
  );
  expect(messages(wrong)[0]).toBe(
    'measurements:7 error Unexpected density `1.4 g/ml`, expected a number above 0, at most 23\n  fix: write `1.4`',
  );
});

test('predictFilms(measurements) says whose density it has from the name of the paint', () => {
  const named = MEASUREMENTS.replaceAll('chalk', 'Zinc white 3');
  const { summary } = predictFilms(named, table(row('x', { dusk: 1 }, 'film_on_black', BLACK)));
  expect(summary).toContain('that of the pigment they are named after is taken for Zinc white 3.');
});
