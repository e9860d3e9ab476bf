/**
 * From rows of a table to films: those that were measured, and those that are asked for.
 */

import { nearestName } from '../../diagnostics/nearest-name.ts';
import type { FilmPart, MeasuredFilm } from '../../optics/fit/film.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import type { FilmsFault, FilmsFinding } from './films-finding.ts';
import type { FilmsRow, FilmsTable } from './films-table.ts';

/** A film on a backing whose look is asked for. */
export interface RequestedView {
  readonly line: number;
  readonly sample: string;
  /** Such as `film_on_black`; `film` where the table does not say. */
  readonly surface: string;
  readonly parts: readonly FilmPart[];
  readonly thickness: number;
  readonly backing: readonly number[];
}

interface Sample {
  readonly name: string;
  readonly rows: readonly FilmsRow[];
  readonly parts: readonly FilmPart[];
  readonly thickness: number;
}

const BARE = /^bare_?(.*)$/;
const FILM = /^film_on_?(.*)$/;

const USUAL_SURFACES = ['bare_white', 'film_on_white', 'bare_black', 'film_on_black'];
const SURFACES = USUAL_SURFACES.map((surface) => `\`${surface}\``).join(', ');

function surfaceFix(surface: string): string | undefined {
  const nearest = nearestName(surface, USUAL_SURFACES);
  return nearest === undefined ? undefined : `write \`${nearest}\``;
}

/**
 * Films of a table of measurements: rows of one sample belong together, each `film_on_black` with the `bare_black` of that
 * sample, and so for any other backing.
 */
export function measuredFilms(table: FilmsTable): { films: MeasuredFilm[]; findings: FilmsFinding[] } {
  const findings: FilmsFinding[] = [];
  const films: MeasuredFilm[] = [];
  for (const sample of samplesOf(table, findings)) {
    const bare = new Map<string, FilmsRow>();
    const film = new Map<string, FilmsRow>();
    for (const row of sample.rows) {
      const [, backing] = BARE.exec(row.surface) ?? [];
      const [, under] = FILM.exec(row.surface) ?? [];
      const [kind, key] = backing === undefined ? [film, under] : [bare, backing];
      if (key === undefined) {
        findings.push(
          wrong(
            table,
            row,
            { found: `surface \`${row.surface}\``, expected: `one of ${SURFACES}`, cell: row.surface },
            surfaceFix(row.surface),
          ),
        );
      } else if (kind.has(key)) {
        findings.push(
          wrong(table, row, {
            found: `second \`${row.surface}\` of ${sample.name}`,
            expected: `one; the first is in line ${required(kind, key).line}`,
            cell: row.surface,
          }),
        );
      } else kind.set(key, row);
    }
    const views = [...film].flatMap(([key, row]) => {
      const under = bare.get(key);
      if (!under?.spectrum || !row.spectrum) {
        const toldOf = table.findings.some(({ line }) => line === row.line || line === under?.line);
        if (under && toldOf) return [];
        if (under) {
          findings.push(
            wrong(table, row, {
              found: `film of ${sample.name} with an empty spectrum`,
              expected: 'the backing and the film measured',
            }),
          );
        } else {
          const usual = key === 'white' || key === 'black';
          findings.push(
            wrong(
              table,
              row,
              {
                found: `\`${row.surface}\` of ${sample.name} without its \`bare_${key}\``,
                expected: `the backing measured, too${usual ? '' : `; the usual surfaces are ${SURFACES}`}`,
                cell: row.surface,
              },
              usual
                ? `add the row \`bare_${key}\` of ${sample.name}, the card alone`
                : `write \`film_on_white\` or \`film_on_black\`, or add a row \`bare_${key}\``,
            ),
          );
        }
        return [];
      }
      return [{ label: row.surface, backing: under.spectrum, seen: row.spectrum }];
    });
    if (views.length > 0) {
      films.push({ name: sample.name, parts: sample.parts, thickness: sample.thickness, views });
    } else if (film.size === 0) {
      findings.push({
        severity: 'warning',
        file: table.file,
        line: sample.rows[0]!.line,
        found: `Sample ${sample.name} has no film, only bare backings: it tells nothing`,
      });
    }
  }
  if (films.length === 0 && findings.length === 0 && table.findings.length === 0) {
    findings.push({
      severity: 'error',
      file: table.file,
      found: 'table without films',
      expected: 'at least one',
    });
  }
  return { films, findings };
}

/**
 * Films of a table of requests. Where a sample has `bare_…` rows, those are its backings, and its `film_on_…` rows, if any,
 * are not read: a table of measurements is a table of requests too. Where it has none, each row is a backing to predict
 * the film on, and its surface only names it.
 */
export function requestedViews(table: FilmsTable): { views: RequestedView[]; findings: FilmsFinding[] } {
  const findings: FilmsFinding[] = [];
  const views: RequestedView[] = [];
  for (const { name, rows, parts, thickness } of samplesOf(table, findings)) {
    const bare = rows.filter((row) => BARE.test(row.surface));
    for (const row of bare.length > 0 ? bare : rows) {
      const [, backing] = BARE.exec(row.surface) ?? [];
      if (!row.spectrum) {
        findings.push(wrong(table, row, { found: `empty spectrum of ${name}`, expected: 'that of its backing' }));
        continue;
      }
      const surface = backing === undefined ? row.surface || 'film' : `film_on_${backing}`;
      views.push({ line: row.line, sample: name, surface, parts, thickness, backing: row.spectrum });
    }
  }
  return { views, findings };
}

/** Rows by sample, in the order in which samples come first; those without a usable composition are told and left out. */
function samplesOf(table: FilmsTable, findings: FilmsFinding[]): Sample[] {
  const groups = new Map<string, FilmsRow[]>();
  for (const row of table.rows) {
    const group = groups.get(row.sample);
    if (group) group.push(row);
    else groups.set(row.sample, [row]);
  }
  const samples: Sample[] = [];
  for (const [name, rows] of groups) {
    const first = rows.find((row) => row.parts);
    if (!first?.parts) {
      // A composition that can't be read was told with its line.
      if (!table.findings.some(({ line }) => rows.some((row) => row.line === line))) {
        findings.push(
          wrong(table, rows[0]!, { found: `sample ${name} without a composition`, expected: '`paint=fraction;…`' }),
        );
      }
      continue;
    }
    const other = rows.find((row) => row.parts && compositionKey(row.parts) !== compositionKey(first.parts!));
    if (other) {
      findings.push({
        ...wrong(
          table,
          other,
          { found: `other composition of ${name}`, expected: `that of line ${first.line}` },
          `write the same composition in all rows of ${name}, or give a second film a sample name of its own`,
        ),
        disagrees: name,
      });
      continue;
    }
    const thickness = rows.find((row) => row.thickness !== undefined)?.thickness ?? 1;
    samples.push({ name, rows, parts: first.parts, thickness });
  }
  return samples;
}

function compositionKey(parts: readonly FilmPart[]): string {
  return parts
    .map(({ material, amount }) => `${material}=${amount}`)
    .sort()
    .join(';');
}

function wrong(table: FilmsTable, row: FilmsRow, fault: FilmsFault, fix?: string): FilmsFinding {
  return { severity: 'error', file: table.file, line: row.line, ...fault, ...defined({ fix }) };
}
