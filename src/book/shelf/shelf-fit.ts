import type { DiagnosticCode } from '../../diagnostics/catalogue.ts';
import type { Diagnostic } from '../../diagnostics/diagnostic.ts';
import type { MaterialKind } from '../../kinds/kinds.ts';
import type { FilmPart, MeasuredFilm } from '../../optics/fit/film.ts';
import { type FittedMaterials, fitMaterials } from '../../optics/fit/fit-materials.ts';
import type { FitOptions } from '../../optics/fit/fit-options.ts';
import { materialDoubt } from '../../optics/fit/material-doubt.ts';
import { plasticConstants } from '../../optics/plastic.ts';
import { constantSpectrum, resampleSpectrum, type Spectrum } from '../../optics/spectrum.ts';
import { stackReflectance } from '../../optics/stack.ts';
import { IN_AIR } from '../../optics/surface.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { MEASUREMENTS_FILE, type Source } from '../../recipe/source.ts';
import { EXPECTED_DELTA_E } from '../../tables/colouring-kinds.ts';
import { PLASTIC_DENSITY } from '../../tables/material-defaults.ts';
import { gramsOfDose } from '../../units/dose.ts';
import { parseDose } from '../../units/parse-quantity.ts';
import { isFault, isRate } from '../../units/quantity.ts';
import { UNITS } from '../../units/unit.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import type { FilmsFinding } from '../films/films-finding.ts';
import { measuredFilms } from '../films/films-samples.ts';
import { strangerFinding, strangersIn } from '../films/films-strangers.ts';
import { type ReadAmount, readFilmsTable } from '../films/films-table.ts';
import { median } from '../median.ts';
import type { Things } from '../read/read-things.ts';
import type { Report } from '../report.ts';
import { keptConstants, type MaterialLook } from './material-look.ts';
import { handlingOf } from './material-of-kind.ts';

/** Name that the plastic has in the fit; no file can have it. */
const PLASTIC = '~films';

/**
 * What the joint fit believes of a shelf, other than of paints (`FIT_DEFAULTS`): thickness is measured with a caliper, within
 * 3 %, and how much a material scatters is not known beforehand. Common practice, no source.
 */
const SHELF_OPTIONS: Partial<FitOptions> = {
  amounts: 'concentrations',
  surface: IN_AIR,
  backingSurface: IN_AIR,
  scattering: { curvature: 0.03, slope: 0.15, centre: -1, spread: 3 },
  thicknessSpread: 0.03,
  drawdownSpread: 0.02,
};

// A film that is missed by more than this is named: ΔE00, about twice what a good measurement and the theory differ by.
const POOR_FILM = 4;

/** The materials that say they were measured. */
function measuredThings(materials: ReadonlyMap<string, Thing<MaterialKind>>): readonly Thing<MaterialKind>[] {
  return [...materials.values()].filter(
    ({ fields }) => 'look' in fields && fields.look && 'kind' in fields.look && fields.look.kind === 'measured',
  );
}

/** What the films of a shelf tell. */
export interface ShelfFit {
  /** What they tell of a material by its name: nothing where no film holds it, `unreadable` where those that do cannot be used. */
  readonly lookOf: (id: string) => MaterialLook | 'unreadable' | undefined;
  /** Names of all that the films hold which were fitted; where none was, of all that keeps them from it. */
  readonly holds: readonly string[];
  /** Lines of the films that were left out, since they hold what cannot be used; undefined where no film is left. */
  readonly leftOut: readonly number[] | undefined;
}

/** What a table tells that cannot be used. */
export const UNREADABLE: ShelfFit = { lookOf: () => 'unreadable', holds: [], leftOut: undefined };

/**
 * K and S of all measured materials of the shelf at once, from every film in `shelf/measurements.csv`: several doses,
 * thicknesses and mixtures tie them together. Faults of the table are reported.
 *
 * @param isSound whether the file of a material by that name can be used; films of others are left out
 */
export function fitShelf(
  table: Source | 'unreadable' | undefined,
  { materials, faulty }: Pick<Things, 'materials' | 'faulty'>,
  isSound: (id: string) => boolean,
  report: Report,
): ShelfFit {
  if (table === 'unreadable') return UNREADABLE;
  const measured = measuredThings(materials);
  if (table === undefined) return { lookOf: () => undefined, holds: [], leftOut: [] };
  const tell: Tell = (code, line, finding, cell) => {
    report.tell(code, MEASUREMENTS_FILE, { start: placeIn(table, line, cell), ...finding });
  };
  const read = readFilmsTable(table.text, MEASUREMENTS_FILE, amountReader(materials));
  const { films: found, findings } = measuredFilms(read);
  const known = new Set(measured.map(({ id }) => id));
  const strangers = strangersIn(read, (name) => known.has(name) || materials.get(name)?.kind === 'plastic');
  const strange = new Set([...strangers.values()].flatMap(({ samples }) => samples));
  for (const finding of [...read.findings, ...findings]) {
    // Rows of a film in which a name is misspelt do not agree until it is mended.
    if (finding.disagrees === undefined || !strange.has(finding.disagrees)) tellFinding(finding, tell);
  }
  for (const [name, { lines }] of strangers) {
    if (faulty.has('colorant', name)) continue;
    tell('shelf/measurements', lines[0], strangerFinding(name, lines, materials, known), name);
  }
  tellSameBackings(found, (film) => read.rows.find(({ sample }) => sample === film)?.line, tell);
  // Films of what cannot be used say nothing: the others are fitted without them.
  const unusable = (name: string): boolean => (strangers.has(name) ? faulty.has('colorant', name) : !isSound(name));
  const without = new Map(
    read.rows.flatMap(({ sample, parts = [] }) => {
      const holds = parts.flatMap(({ material }) => (unusable(material) ? [material] : []));
      return holds.length === 0 ? [] : [[sample, holds] as const];
    }),
  );
  const kept = found.filter(({ name }) => !without.has(name));
  const wrong = [...read.findings, ...findings].filter(({ severity }) => severity === 'error');
  const isWrong =
    wrong.some(({ disagrees }) => disagrees === undefined || !without.has(disagrees)) ||
    [...strangers.keys()].some((name) => !unusable(name));
  if (isWrong || kept.length === 0) return { ...UNREADABLE, holds: [...new Set([...without.values()].flat())] };
  const films = kept.map((film) => withPlastic(film, materials));
  const fitted = fitMaterials([...films, ...clearFilms(films, read.wavelengths)], {
    ...SHELF_OPTIONS,
    wavelengths: read.wavelengths,
  });
  tellPoorFilms(fitted, (film) => read.rows.find(({ sample }) => sample === film)?.line, tell);
  const gone = new Set(
    found.flatMap(({ name, parts }) => (without.has(name) ? parts.map(({ material }) => material) : [])),
  );
  const looks = (id: string): ReturnType<ShelfFit['lookOf']> =>
    known.has(id) && fitted.materials.has(id) ? lookOf(id, films, fitted) : gone.has(id) ? 'unreadable' : undefined;
  return {
    lookOf: looks,
    holds: [...new Set(kept.flatMap(({ parts }) => parts.map(({ material }) => material)))],
    leftOut: read.rows.flatMap(({ sample, line }) => (without.has(sample) ? [line] : [])),
  };
}

/** Where a cell stands; a table's reader knows lines alone. */
function placeIn(table: Source, line = 1, cell?: string): Diagnostic['start'] {
  const text = table.text.split(/\r?\n/)[line - 1] ?? '';
  return { line, column: Math.max(0, cell === undefined ? 0 : text.indexOf(cell)) + 1 };
}

function tellFinding({ severity, line, found, expected, cell, fix }: FilmsFinding, tell: Tell): void {
  const code = severity === 'error' ? 'shelf/measurements' : 'shelf/film';
  tell(
    code,
    line,
    { found, expected: expected ?? 'a table of films as the manual describes it', ...defined({ fix }) },
    cell,
  );
}

type Tell = (
  code: DiagnosticCode,
  line: number | undefined,
  finding: Pick<Diagnostic, 'found' | 'expected' | 'why' | 'fix'>,
  cell?: string,
) => void;

/** Cards that differ by less than this, mean reflectance, are no white and black one. Convention of this book. */
const SAME_CARD = 0.2;

function tellSameBackings(
  films: readonly MeasuredFilm[],
  lineOf: (film: string) => number | undefined,
  tell: Tell,
): void {
  for (const { name, views } of films) {
    const cards = views.map(
      ({ backing }) => Array.from(backing).reduce((sum, value) => sum + value, 0) / backing.length,
    );
    const [darkest, lightest] = [Math.min(...cards), Math.max(...cards)];
    if (cards.length < 2 || lightest - darkest >= SAME_CARD) continue;
    tell(
      'shelf/film',
      lineOf(name),
      {
        found: `film \`${name}\` on cards that reflect ${(100 * darkest).toFixed(0)} % and ${(100 * lightest).toFixed(0)} %`,
        expected: 'a white card and a black one',
        why: 'over cards that are alike nobody can tell what a film absorbs from what it scatters',
        fix: 'correct the rows of its bare cards, or measure it on a white and on a black card',
      },
      name,
    );
  }
}

function tellPoorFilms(fitted: FittedMaterials, lineOf: (film: string) => number | undefined, tell: Tell): void {
  for (const { film, views } of fitted.faults) {
    tell(
      'shelf/film',
      lineOf(film),
      {
        found: `film \`${film}\`, darker as ${views[0]} than as ${views[1]}`,
        expected: 'a film that is lighter over white than over black, as every layer is',
        why: 'the two drawdowns differ, or their rows were exchanged',
        fix: 'exchange the rows if they were; otherwise draw it down and measure it again',
      },
      film,
    );
  }
  const impossible = new Set(fitted.faults.map(({ film }) => film));
  for (const { name, views } of fitted.films) {
    if (impossible.has(name)) continue;
    const worst = Math.max(...views.map(({ deltaE00 }) => deltaE00));
    if (worst <= POOR_FILM) continue;
    tell(
      'shelf/film',
      lineOf(name),
      {
        found: `film \`${name}\`, which the fit of all films misses by ΔE00 ${worst.toFixed(1)}`,
        expected: `at most ${POOR_FILM}`,
        why: 'a wrong dose, thickness or drawdown spoils what the others tell',
        fix: 'make and measure it again, or remove its rows',
      },
      name,
    );
  }
}

/** Doses as recipes have them, `10 drops per 100 ml` or `1 %`, in g per ml of plastic. */
function amountReader(materials: ReadonlyMap<string, Thing<MaterialKind>>): ReadAmount {
  return (figure, name) => {
    const thing = materials.get(name);
    if (!thing) return 1e-3; // Told as a stranger, once, with the nearest name.
    const dose = parseDose(figure);
    const relative = {
      expected: 'a dose per volume of plastic, or a share of it, such as `10 drops per 100 ml` or `1 %`',
    };
    if (isFault(dose) || (!isRate(dose) && UNITS[dose.unit].dimension !== 'part')) return relative;
    const handling = handlingOf(thing);
    const unit = isRate(dose) ? dose.quantity.unit : dose.unit;
    if (UNITS[unit].dimension === 'drop' && handling.gramsPerDrop === undefined) return relative;
    return gramsOfDose(dose, { gramsPerDrop: 0, ...handling }, { ml: 100, grams: 100 * PLASTIC_DENSITY }) / 100;
  };
}

/** A film with its plastic as a part of amount 1, however it was named. */
function withPlastic(film: MeasuredFilm, materials: ReadonlyMap<string, Thing<MaterialKind>>): MeasuredFilm {
  const parts = film.parts.filter(({ material }) => materials.get(material)?.kind !== 'plastic');
  return { ...film, parts: [{ material: PLASTIC, amount: 1 }, ...parts] };
}

/**
 * What clear plastic of the films' thicknesses looks like by the book's own K and S, as films: unless a clear film was
 * measured, this is how the fit knows what the plastic does.
 */
function clearFilms(films: readonly MeasuredFilm[], wavelengths: readonly number[]): readonly MeasuredFilm[] {
  if (films.some(({ parts }) => parts.length === 1)) return [];
  const plastic = plasticConstants('clear');
  return [...new Set(films.map(({ thickness }) => thickness ?? 1))].map((thickness) => ({
    name: `clear plastic of ${thickness} mm`,
    parts: [{ material: PLASTIC, amount: 1 }],
    thickness,
    views: [0.9, 0.03].map((inside) => ({
      label: inside > 0.5 ? 'film_on_white' : 'film_on_black',
      backing: onGrid(stackReflectance([], constantSpectrum(inside), IN_AIR), wavelengths),
      seen: onGrid(stackReflectance([{ ...plastic, thickness }], constantSpectrum(inside), IN_AIR), wavelengths),
    })),
  }));
}

function onGrid(spectrum: Spectrum, wavelengths: readonly number[]): readonly number[] {
  const last = spectrum.length - 1;
  return wavelengths.map((wavelength) => {
    const at = Math.min(last, Math.max(0, (wavelength - 380) / 10));
    const below = Math.min(last - 1, Math.floor(at));
    return spectrum[below]! + (at - below) * (spectrum[below + 1]! - spectrum[below]!);
  });
}

function lookOf(id: string, films: readonly MeasuredFilm[], fitted: FittedMaterials): MaterialLook {
  const { wavelengths } = fitted.options;
  const { absorption, scattering } = required(fitted.materials, id);
  const own = films.filter(({ parts }) => parts.some(({ material }) => material === id));
  const alone = own.filter(({ parts }) => parts.length === 2);
  const names = new Set(own.map(({ name }) => name));
  const misses = fitted.films
    .filter(({ name }) => names.has(name))
    .flatMap(({ views }) => views.map(({ deltaE00 }) => deltaE00));
  const residual = Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length);
  const distinct = (numbers: readonly number[]): number => new Set(numbers.map((number) => number.toPrecision(6))).size;
  return {
    constants: keptConstants({
      absorption: resampleSpectrum(wavelengths, absorption),
      scattering: resampleSpectrum(wavelengths, scattering),
    }),
    tier: 'measured',
    expectedDeltaE: Math.max(EXPECTED_DELTA_E.measured, residual),
    doubt: materialDoubt(fitted, id),
    typical: median(own.map(({ parts }) => amountIn(parts, id))),
    fit: {
      films: own.length,
      residual: Number(residual.toFixed(2)),
      doses: distinct(alone.map(({ parts }) => amountIn(parts, id))),
      thicknesses: distinct(alone.map(({ thickness }) => thickness ?? 1)),
      mixtures: own.length - alone.length,
    },
  };
}

function amountIn(parts: readonly FilmPart[], id: string): number {
  return parts.find(({ material }) => material === id)!.amount;
}
