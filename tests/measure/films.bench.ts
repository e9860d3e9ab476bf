/**
 * How near the joint fit of materials predicts measured films of real paints that it has not seen, in ΔE00 (D65, 2°), beside
 * the plain two-constant theory on the same films. Run by `npm run bench`; it takes about a minute.
 *
 * Data: Geldof et al., Heritage Science 6:17 (2018), doi 10.1186/s40494-018-0181-6; see `tests/optics/fit/pigment-films.ts`.
 * The options of the fit were chosen by leaving out one mix at a time, so there the figures flatter it a little. How wide the bounds
 * are was chosen by reasoning (see `FitOptions`) and tried on halves kept apart by the lots 1 to 140; printed are others.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fitMaterials } from '../../src/optics/fit/fit-materials.ts';
import type { FitOptions } from '../../src/optics/fit/fit-options.ts';
import { type FilmsApart, type HowMet, halfApart, howMet, paintsApart } from '../optics/fit/films-apart.ts';
import {
  coverage,
  criterion,
  leaveOneOut,
  type Miss,
  missesOf,
  type PigmentFilms,
  PLAIN_TWO_CONSTANT,
  pigmentFilms,
  quantile,
} from '../optics/fit/pigment-films.ts';

const FILE = '../shared/reference/pigment_films_shared.csv';

const MODELS: readonly (readonly [string, Partial<FitOptions>])[] = [
  ['plain two-constant theory', PLAIN_TWO_CONSTANT],
  ['the same with a factor a paint', { ...PLAIN_TWO_CONSTANT, factorSpread: 0.5 }],
  ['the joint fit of this book', {}],
];

/** Lots by which halves are kept apart. */
const LOTS = Array.from({ length: 30 }, (_, i) => 201 + i);

function line(name: string, misses: readonly Miss[], bounds: boolean): void {
  const off = misses.map((miss) => miss.deltaE00);
  const figures = `criterion ${criterion(misses).toFixed(3)}, median ${quantile(off, 0.5).toFixed(2)}, p95 ${quantile(off, 0.95).toFixed(2)}`;
  const usual = quantile(
    misses.map(({ bound90 }) => bound90),
    0.5,
  );
  const held = bounds
    ? `, 90 % bound (median ${usual.toFixed(1)}) holds for ${(100 * coverage(misses)).toFixed(0)} %`
    : '';
  console.log(`  ${name}: ${figures} (${off.length} views)${held}`);
}

function scores(films: PigmentFilms, options: Partial<FitOptions>, bounds: boolean): void {
  const { calibration, validation, all, wavelengths, densities } = films;
  const withGrid = { ...(bounds ? { densities } : {}), ...options, wavelengths };
  line('calibration films to validation films', missesOf(fitMaterials(calibration, withGrid), validation), bounds);
  const mixes = all.filter(({ parts }) => parts.length > 1);
  const left = leaveOneOut(mixes, all, withGrid);
  line('each mix left out', left, bounds);
  // A mix whose every paint is in two more films at least: the rest have to be told from a film of the paint alone.
  const count = (material: string): number =>
    all.filter(({ parts }) => parts.some((part) => part.material === material)).length;
  const told = new Set(
    mixes.filter(({ parts }) => parts.every(({ material }) => count(material) >= 3)).map(({ name }) => name),
  );
  line(
    '  of these, paints in two more films',
    left.filter(({ film }) => told.has(film)),
    bounds,
  );
  const alone = all.filter(({ parts }) => parts.length === 1);
  line('each paint alone left out, told by its tints', leaveOneOut(alone, all, withGrid), bounds);
  if (!bounds) return;
  apart(
    `half of the mixes kept apart, ${LOTS.length} lots`,
    LOTS.map((lot) => halfApart(all, lot)),
    withGrid,
  );
  apart('all mixes of one paint kept apart, each paint', paintsApart(all), withGrid);
}

/** Misses of films kept apart, all together and by how their paints had met. */
function apart(
  name: string,
  splits: readonly FilmsApart[],
  options: Partial<FitOptions> & Pick<FitOptions, 'wavelengths'>,
): void {
  const misses = new Map<HowMet, Miss[]>([
    ['met', []],
    ['strangers', []],
    ['never mixed', []],
  ]);
  for (const split of splits) {
    const fitted = fitMaterials(split.kept, options);
    for (const film of split.apart) misses.get(howMet(film, split.kept))!.push(...missesOf(fitted, [film]));
  }
  line(name, [...misses.values()].flat(), true);
  const kinds = [...misses].filter(([, some]) => some.length > 0);
  if (kinds.length < 2) return;
  for (const [how, some] of kinds) line(`  of these, paints that had ${HOW_MET[how]}`, some, true);
}

const HOW_MET: Readonly<Record<HowMet, string>> = {
  met: 'met in a film',
  strangers: 'only met others',
  'never mixed': 'met none, one of them at least',
};

/** Prints the scores. */
export function main(): void {
  const path = join(process.cwd(), FILE);
  if (!existsSync(path)) {
    console.log(`films: skipped, since there is no ${FILE}`);
    return;
  }
  const films = pigmentFilms(readFileSync(path, 'utf8'));
  for (const [name, options] of MODELS) {
    console.log(name);
    scores(films, options, !name.startsWith('plain') && !name.startsWith('the same'));
  }
}

main();
