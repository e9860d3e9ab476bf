/**
 * Tables of films: CSV text in, rows of spectra with their line numbers out.
 *
 * Columns, in any order and case: `sample`, `composition`, `surface`, `thickness`, `density`, `unit`, and one for each
 * wavelength, named by it in nm (`400`, `400 nm` or `R400`). Commas or tabs part the cells; lines that start with `#` are comments. Other
 * columns are left alone.
 *
 * Reflectances are percent or 0..1: as the column `unit` says (`percent` or `ratio`), or a comment line `# unit: percent`,
 * or, where neither does, percent if any number of the file is above 2.
 *
 * Wavelengths: those of 380, 390 … 780 nm if they are there in equal steps, else of 380, 385 … 780 nm; others are not read.
 */

import { CsvError, parse } from 'csv-parse/sync';
import type { FilmPart } from '../../optics/fit/film.ts';
import { defined } from '../../values/defined.ts';
import type { FilmsFinding } from './films-finding.ts';
import { DENSITY, readFigure, type Tell, THICKNESS } from './read-figure.ts';

/** One row. */
export interface FilmsRow {
  readonly line: number;
  readonly sample: string;
  /** Undefined where the cell is empty. */
  readonly parts?: readonly FilmPart[];
  /** Lower case; empty where there is none. */
  readonly surface: string;
  readonly thickness?: number;
  /** g/ml, of the paint that the film is of. */
  readonly density?: number;
  /** 0..1, on the table's wavelengths; undefined where all cells are empty. */
  readonly spectrum?: readonly number[];
}

/** A table as it was read. With an error among the findings, it may be incomplete. */
export interface FilmsTable {
  readonly file: string;
  readonly wavelengths: readonly number[];
  readonly unit: 'percent' | 'ratio';
  readonly rows: readonly FilmsRow[];
  readonly findings: readonly FilmsFinding[];
}

interface Parsed {
  readonly record: string[];
  readonly info: { readonly lines: number };
}

/** What the figure of a part means: its amount, or what was expected in its place. */
export type ReadAmount = (figure: string, material: string) => number | { readonly expected: string };

/** Reads a table; `file` is its name in what there is to tell. Figures of a composition are parts by mass unless told otherwise. */
export function readFilmsTable(text: string, file: string, amountOf: ReadAmount = partByMass): FilmsTable {
  const findings: FilmsFinding[] = [];
  const tell: Tell = (severity, line, fault, fix) =>
    findings.push({ severity, file, ...fault, ...defined({ line, fix }) });
  const [header, ...records] = parsedRecords(text, tell);
  const nothing: FilmsTable = { file, wavelengths: [], unit: 'ratio', rows: [], findings };
  if (!header) {
    if (findings.length === 0) {
      tell('error', undefined, { found: 'empty file', expected: 'a header and rows of reflectances' });
    }
    return nothing;
  }
  if (header.record.length === 1 && (header.record[0]!.match(/;/g)?.length ?? 0) > 2) {
    tell(
      'error',
      header.info.lines,
      { found: 'semicolons between the columns', expected: 'commas' },
      'save the table as CSV with commas between the columns, and with points in the numbers',
    );
    return nothing;
  }
  const columns = readHeader(header, tell);
  if (!columns) return nothing;
  const numbers = records.map((record) => readNumbers(record, header.record, columns, tell));
  const highest = Math.max(0, ...numbers.flatMap((spectrum) => spectrum ?? []));
  const stated = /^#.*\bunit\s*:\s*(percent|%|ratio)/im.exec(text)?.[1]?.toLowerCase();
  const unit = stated === 'ratio' || (stated === undefined && highest <= 2) ? 'ratio' : 'percent';
  const rows = records.map((record, index) => readRow(record, columns, numbers[index], unit, amountOf, tell));
  return { file, wavelengths: columns.spectrum.map(({ wavelength }) => wavelength), unit, rows, findings };
}

function parsedRecords(text: string, tell: Tell): Parsed[] {
  try {
    // The library's types don't know that `info` changes what comes out.
    return parse(text, {
      bom: true,
      comment: '#',
      comment_no_infix: true,
      delimiter: [',', '\t'],
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      skip_records_with_empty_values: true,
      trim: true,
    }) as unknown as Parsed[];
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = typeof error.lines === 'number' ? error.lines : undefined;
    tell('error', line, { found: 'quotes', expected: `CSV: ${error.message}` }, 'close the quotes, or leave them out');
    return [];
  }
}

interface Columns {
  readonly sample: number;
  readonly composition: number;
  readonly surface: number;
  readonly thickness: number;
  readonly density: number;
  readonly unit: number;
  readonly spectrum: readonly { readonly index: number; readonly wavelength: number }[];
}

function readHeader({ record, info }: Parsed, tell: Tell): Columns | undefined {
  const names = record.map((name) => name.toLowerCase());
  const at = (name: string): number => names.indexOf(name);
  const columns = { sample: at('sample'), composition: at('composition'), surface: at('surface') };
  const missing = Object.entries(columns).filter(([name, index]) => index < 0 && name !== 'surface');
  for (const [name] of missing) {
    tell('error', info.lines, { found: `header without \`${name}\``, expected: 'a column of that name', cell: name });
  }
  const all = names.flatMap((name, index) => {
    const [, digits] = /^r?_?(\d+(?:\.\d+)?)\s*(?:nm)?$/.exec(name) ?? [];
    return digits === undefined ? [] : [{ index, wavelength: Number(digits) }];
  });
  all.sort((one, other) => one.wavelength - other.wavelength);
  const spectrum = [10, 5]
    .map((step) =>
      all.filter(({ wavelength }) => wavelength >= 380 && wavelength <= 780 && (wavelength - 380) % step === 0),
    )
    .find(isGrid);
  if (!spectrum) {
    tell(
      'error',
      info.lines,
      {
        found: `wavelengths ${all.map(({ wavelength }) => wavelength).join(', ') || '(none)'}`,
        expected: 'at least three columns in equal steps among 380, 385 … 780 nm',
      },
      'name each column of reflectances by its wavelength, such as `400`',
    );
  }
  if (missing.length > 0 || !spectrum) return undefined;
  return { ...columns, thickness: at('thickness'), density: at('density'), unit: at('unit'), spectrum };
}

function isGrid(columns: readonly { readonly wavelength: number }[]): boolean {
  const [first, second] = columns;
  if (!first || !second || columns.length < 3) return false;
  const step = second.wavelength - first.wavelength;
  return columns.every(({ wavelength }, index) => wavelength === first.wavelength + index * step) && step > 0;
}

/** The reflectances of a row as they stand; undefined if they are all empty, or one of them is no number. */
function readNumbers(
  { record, info }: Parsed,
  header: readonly string[],
  columns: Columns,
  tell: Tell,
): number[] | undefined {
  const cells = columns.spectrum.map(({ index }) => record[index] ?? '');
  if (cells.every((cell) => cell === '')) return undefined;
  const numbers = cells.map((cell) => (cell === '' ? Number.NaN : Number(cell)));
  const bad = numbers.findIndex((number) => !(Number.isFinite(number) && number >= 0));
  if (bad < 0) return numbers;
  const where = header[columns.spectrum[bad]!.index];
  const cell = cells[bad]!;
  const number = /^[\d.]+(?=\s*%$)/.exec(cell)?.[0];
  tell(
    'error',
    info.lines,
    {
      found: `${cell === '' ? 'empty cell' : `\`${cell}\``} in column \`${where}\``,
      expected: 'a reflectance, at least 0',
      cell,
    },
    number === undefined ? undefined : `write \`${number}\`, and say percent once: in a line \`# unit: percent\``,
  );
  return undefined;
}

function readRow(
  { record, info }: Parsed,
  columns: Columns,
  numbers: readonly number[] | undefined,
  unit: 'percent' | 'ratio',
  amountOf: ReadAmount,
  tell: Tell,
): FilmsRow {
  const cell = (index: number): string => (index < 0 ? '' : (record[index] ?? ''));
  const line = info.lines;
  const sample = cell(columns.sample);
  if (sample === '') tell('error', line, { found: 'row without a sample', expected: 'the name of the film' });
  const own = cell(columns.unit).toLowerCase();
  if (!['', 'percent', '%', 'ratio'].includes(own)) {
    tell('error', line, { found: `unit \`${own}\``, expected: '`percent` or `ratio`', cell: own });
  }
  const percent = own === '' ? unit === 'percent' : own !== 'ratio';
  const spectrum = numbers?.map((number) => (percent ? number / 100 : number));
  const highest = Math.max(0, ...(spectrum ?? []));
  if (highest > 1.2) {
    tell('error', line, { found: `reflectance of ${(100 * highest).toFixed(1)} %`, expected: 'no more than 120 %' });
  }
  const thickness = readFigure(cell(columns.thickness), THICKNESS, line, tell);
  const density = readFigure(cell(columns.density), DENSITY, line, tell);
  return defined({
    line,
    sample,
    parts: readComposition(cell(columns.composition), line, amountOf, tell),
    surface: cell(columns.surface).toLowerCase(),
    thickness,
    density,
    spectrum,
  });
}

const partByMass: ReadAmount = (figure) => Number(figure.replace(/%$/, ''));

/** `ochre=0.9;soot=0.1`: parts by mass. A name alone is a film of nothing else. */
function readComposition(text: string, line: number, amountOf: ReadAmount, tell: Tell): FilmPart[] | undefined {
  if (text === '') return undefined;
  const parts: FilmPart[] = [];
  for (const piece of text.split(';')) {
    if (piece.trim() === '') continue;
    const [name = '', figure] = piece.split('=').map((side) => side.trim());
    const amount = figure === undefined ? 1 : amountOf(figure, name);
    if (name === '' || figure === '' || typeof amount === 'object' || !(amount >= 0 && amount < 1e9)) {
      const expected = typeof amount === 'object' ? amount.expected : '`paint=fraction`';
      tell('error', line, {
        found: `\`${piece.trim()}\` in the composition`,
        expected: `${expected}`,
        cell: piece.trim(),
      });
      return undefined;
    }
    if (parts.some((part) => part.material === name)) {
      tell('error', line, { found: `second \`${name}\` in the composition`, expected: 'each paint once', cell: name });
      return undefined;
    }
    if (amount > 0) parts.push({ material: name, amount });
  }
  if (parts.length === 0) {
    tell('error', line, {
      found: `composition \`${text}\``,
      expected: 'at least one paint of more than 0',
      cell: text,
    });
    return undefined;
  }
  return parts;
}
