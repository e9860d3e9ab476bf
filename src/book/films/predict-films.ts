/**
 * From measured films and wanted compositions to predicted spectra and colours, as CSV.
 *
 * Layouts are told in `films-table.ts` and `films-samples.ts`. A prediction's row holds sample, surface; L, a, b (D65, 2°);
 * X, Y, Z (Y of white = 100); the expected ΔE00 and the one not exceeded nine times in ten; then the reflectance in each
 * wavelength of the measurements, in percent or 0..1 as the requests are.
 *
 * @packageDocumentation
 */

import { nearestName } from '../../diagnostics/nearest-name.ts';
import { type FittedMaterials, fitMaterials } from '../../optics/fit/fit-materials.ts';
import { type PredictedFilm, predictFilm } from '../../optics/fit/predict-film.ts';
import { defined } from '../../values/defined.ts';
import { compareFindings, type FilmsFinding } from './films-finding.ts';
import { measuredFilms, type RequestedView, requestedViews } from './films-samples.ts';
import { type FilmsTable, readFilmsTable } from './films-table.ts';
import { paintDensities } from './paint-densities.ts';

/** Predicted films, and what was found on the way. */
export interface FilmsPrediction {
  /** CSV; undefined where the measurements can't be used, or nothing could be predicted. */
  readonly predictions?: string;
  readonly findings: readonly FilmsFinding[];
  /** What the predictions rest on, in a sentence. */
  readonly summary?: string;
}

/** What the tables are called in findings. */
export interface FilmsNames {
  readonly measurements: string;
  readonly films: string;
}

/**
 * Predicts films.
 *
 * Shape: two CSV texts in, one out. An error in the measurements stops everything; an error in a request leaves out that
 * sample alone.
 */
export function predictFilms(
  measurementsCsv: string,
  requestsCsv: string,
  names: FilmsNames = { measurements: 'measurements', films: 'films' },
): FilmsPrediction {
  const measurements = readFilmsTable(measurementsCsv, names.measurements);
  const requests = readFilmsTable(requestsCsv, names.films);
  const measured = measuredFilms(measurements);
  const requested = requestedViews(requests);
  const { densities, byName, findings: aboutDensities } = paintDensities(measurements);
  const aboutMeasurements = [...measurements.findings, ...measured.findings, ...aboutDensities];
  const findings = [...aboutMeasurements, ...requests.findings, ...requested.findings];
  if (aboutMeasurements.some(isError)) return { findings: findings.sort(compareFindings) };

  const fitted = fitMaterials(measured.films, { wavelengths: measurements.wavelengths, densities });
  findings.push(...faultWarnings(fitted, measurements));
  const columns = wantedColumns(measurements, requests, findings);
  const faulty = faultySamples(requests, findings);
  const lines: string[] = [];
  for (const view of columns ? requested.views : []) {
    if (faulty.has(view.sample)) continue;
    const unknown = view.parts.find(({ material }) => !fitted.materials.has(material));
    if (unknown) {
      findings.push(unknownMaterial(unknown.material, view, fitted, requests.file));
      continue;
    }
    const backing = columns!.map((column) => view.backing[column]!);
    lines.push(predictionLine(view, predictFilm(fitted, view.parts, backing, view.thickness), requests.unit));
  }
  const header = [
    ...['sample', 'surface', 'L', 'a', 'b', 'X', 'Y', 'Z', 'expected_dE00', 'bound90_dE00'],
    ...measurements.wavelengths,
  ].join(',');
  return defined({
    predictions: lines.length === 0 ? undefined : `${[header, ...lines].join('\n')}\n`,
    findings: findings.sort(compareFindings),
    summary: summaryOf(fitted, lines.length, byName),
  });
}

function isError({ severity }: FilmsFinding): boolean {
  return severity === 'error';
}

/** Where the measurements' wavelengths stand among those of the requests; undefined, and told, if some are missing. */
function wantedColumns(measurements: FilmsTable, requests: FilmsTable, findings: FilmsFinding[]): number[] | undefined {
  const columns = measurements.wavelengths.map((wavelength) => requests.wavelengths.indexOf(wavelength));
  const missing = measurements.wavelengths.filter((_, index) => columns[index]! < 0);
  if (missing.length === 0) return columns;
  if (requests.wavelengths.length > 0) {
    findings.push({
      severity: 'error',
      file: requests.file,
      found: 'wavelengths',
      expected: `those of ${measurements.file}: ${missing.join(', ')} nm are missing`,
    });
  }
  return undefined;
}

/** Samples that have an error in any of their rows. */
function faultySamples(table: FilmsTable, findings: readonly FilmsFinding[]): Set<string> {
  const lines = new Set(
    findings.filter((finding) => isError(finding) && finding.file === table.file).map(({ line }) => line),
  );
  return new Set(table.rows.filter(({ line }) => lines.has(line)).map(({ sample }) => sample));
}

function faultWarnings(fitted: FittedMaterials, table: FilmsTable): FilmsFinding[] {
  return fitted.faults.map(({ film, views, message }) =>
    defined({
      severity: 'warning',
      file: table.file,
      line: table.rows.find(({ sample, surface }) => sample === film && surface === views[0])?.line,
      found: message,
    }),
  );
}

function unknownMaterial(name: string, view: RequestedView, fitted: FittedMaterials, file: string): FilmsFinding {
  const nearest = nearestName(name, fitted.materials.keys());
  return {
    severity: 'error',
    file,
    line: view.line,
    found: `paint \`${name}\` in ${view.sample}`,
    expected: 'one that a measured film holds',
    cell: name,
    fix: nearest === undefined ? `measure a film with ${name} first` : `write \`${nearest}\``,
  };
}

function predictionLine(view: RequestedView, film: PredictedFilm, unit: 'percent' | 'ratio'): string {
  const { lab, tristimulus, expected, bound90, spectrum } = film;
  const [scale, decimals] = unit === 'percent' ? [100, 4] : [1, 6];
  const figures = [lab.L, lab.a, lab.b, 100 * tristimulus.X, 100 * tristimulus.Y, 100 * tristimulus.Z].map((figure) =>
    figure.toFixed(4),
  );
  return [
    quoted(view.sample),
    quoted(view.surface),
    ...figures,
    expected.toFixed(2),
    bound90.toFixed(2),
    ...Array.from(spectrum, (R) => (scale * R).toFixed(decimals)),
  ].join(',');
}

function quoted(text: string): string {
  return /[",\n\t]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

function summaryOf(fitted: FittedMaterials, predicted: number, byName: readonly string[]): string {
  const { films: count, views, converged } = fitted.restsOn;
  const doubted = fitted.films.filter(({ weight }) => weight < 0.5).map(({ name }) => name);
  return [
    `Predicted ${predicted} from ${count} measured films (${views} views) of ${fitted.materials.size} paints.`,
    ...(byName.length === 0
      ? []
      : [
          `Without a density in the table, that of the pigment they are named after is taken for ${byName.join(', ')}.`,
        ]),
    ...(doubted.length === 0
      ? []
      : [`Films that do not agree with the others, and count little: ${doubted.join(', ')}.`]),
    ...(converged ? [] : ['The search for the best fit ended early: the figures may be off.']),
  ].join(' ');
}
