/**
 * Films and options turned into numbers once, for the many evaluations of a fit; and the list of its unknowns.
 *
 * The unknowns are standard normal before the films are seen. For each material, in order: ln k of each band, ln s of
 * each band, ln factor. Then, for each film: ln amount of each of its parts, ln thickness, and of each of its drawdowns.
 */

import { localMetric } from '../local-metric.ts';
import { type ObserverWeights, observerWeights } from '../tristimulus.ts';
import { bandWeights, labSlopes, labSlopesSpace } from './colour-misfit.ts';
import { type MeasuredFilm, requireFilm } from './film.ts';
import { backingInside, type FilmNumbers } from './film-model.ts';
import type { FitOptions } from './fit-options.ts';
import { type FactorPrior, factorPrior, weighingSpreads } from './part-spreads.ts';
import { curveFromStandard, type SmoothPrior, smoothPrior } from './smooth-prior.ts';

/** One view of a film in numbers. */
export interface ViewNumbers {
  readonly backing: Float64Array;
  readonly seen: Float64Array;
  readonly lab: Float64Array;
  /** See `localMetric`. */
  readonly metric: Float64Array;
}

/** One film in numbers. */
export interface ProblemFilm extends FilmNumbers {
  readonly thickness: number;
  readonly views: readonly ViewNumbers[];
  /** Standard deviation of ln amount of each part. */
  readonly weighing: readonly number[];
  /** Position of its unknowns: first ln amount of each part. */
  readonly unknowns: number;
  /** Position of ln thickness among the unknowns; the drawdowns follow it. */
  readonly thicknessAt: number;
}

/** What a fit works on. */
export interface FilmProblem {
  readonly options: FitOptions;
  readonly bands: number;
  readonly weights: ObserverWeights;
  readonly bandWeights: Float64Array;
  readonly materials: readonly string[];
  readonly films: readonly ProblemFilm[];
  readonly absorption: SmoothPrior;
  readonly scattering: SmoothPrior;
  /**
   * What the priors' ln k and ln s of each material are raised by: they speak of the material as it stands in a film, of the
   * thickness that films have (`fractions`) or in the film that has most of it (`concentrations`).
   */
  readonly raised: readonly number[];
  /** Of ln factor of each material. */
  readonly factors: readonly FactorPrior[];
  /** Unknowns of one material: 2 × bands + 1. */
  readonly perMaterial: number;
  readonly unknowns: number;
}

/** Materials as they follow from the unknowns. */
export interface MaterialState {
  readonly absorption: Float64Array;
  readonly scattering: Float64Array;
  factor: number;
}

/**
 * Prepares films for a fit.
 *
 * Throws: RangeError for what `requireFilm` and `observerWeights` refuse, and if there are no films.
 */
export function filmProblem(films: readonly MeasuredFilm[], options: FitOptions): FilmProblem {
  if (films.length === 0) throw new RangeError('There are no films; give at least one');
  const bands = options.wavelengths.length;
  if (bands < 3) throw new RangeError(`There are ${bands} wavelengths; give at least three`);
  const weights = observerWeights(options.wavelengths, 'D65');
  const materials = [...new Set(films.flatMap((film) => film.parts.map((part) => part.material)))].sort(byCodeUnit);
  const position = new Map(materials.map((name, index) => [name, index]));
  const perMaterial = 2 * bands + 1;
  let unknowns = perMaterial * materials.length;
  const numbers = films.map((film): ProblemFilm => {
    requireFilm(film, bands);
    const at = unknowns;
    unknowns += film.parts.length + 1 + film.views.length;
    const amounts = film.parts.map((part) => part.amount);
    return {
      materials: film.parts.map((part) => position.get(part.material)!),
      amounts,
      weighing: weighingSpreads(amounts, options),
      thickness: film.thickness ?? 1,
      views: film.views.map((view) => viewNumbers(view.backing, view.seen, options, weights)),
      unknowns: at,
      thicknessAt: at + amounts.length,
    };
  });
  const step = options.wavelengths[1]! - options.wavelengths[0]!;
  return {
    options,
    bands,
    weights,
    bandWeights: bandWeights(weights),
    materials,
    films: numbers,
    absorption: smoothPrior(bands, step, options.absorption),
    scattering: smoothPrior(bands, step, options.scattering),
    raised: materials.map((_, m) => -Math.log(usualDepth(numbers, m, options))),
    factors: materials.map((name) => factorPrior(name, options)),
    perMaterial,
    unknowns,
  };
}

/** Space for the materials of a problem. */
export function materialStates(problem: FilmProblem): MaterialState[] {
  return problem.materials.map(() => ({
    absorption: new Float64Array(problem.bands),
    scattering: new Float64Array(problem.bands),
    factor: 1,
  }));
}

/** ln k and ln s can't go where their exponentials would not be numbers that a layer takes. */
const LARGEST_LOG = 18;

/** Writes the materials that the unknowns `z` stand for; `logs` is space for as many numbers as there are unknowns. */
export function readMaterials(
  problem: FilmProblem,
  z: Float64Array,
  logs: Float64Array,
  out: readonly MaterialState[],
): void {
  const { bands, perMaterial } = problem;
  for (let m = 0; m < out.length; m++) {
    const at = m * perMaterial;
    const raised = problem.raised[m]!;
    curveFromStandard(problem.absorption, z, logs, at);
    curveFromStandard(problem.scattering, z, logs, at + bands);
    const { absorption, scattering } = out[m]!;
    for (let band = 0; band < bands; band++) {
      absorption[band] = Math.exp(raised + held(logs[at + band]!));
      scattering[band] = Math.exp(raised + held(logs[at + bands + band]!));
    }
    const { centre, spread } = problem.factors[m]!;
    out[m]!.factor = Math.exp(held(centre + spread * z[at + 2 * bands]!));
  }
}

/** Thickness of a view of a film, as it follows from the unknowns. */
export function viewThickness(problem: FilmProblem, film: ProblemFilm, view: number, z: Float64Array): number {
  const { thicknessSpread, drawdownSpread } = problem.options;
  const ln = thicknessSpread * z[film.thicknessAt]! + drawdownSpread * z[film.thicknessAt + 1 + view]!;
  return film.thickness * Math.exp(within5(ln));
}

/** A film with the amounts that really went into it, as they follow from the unknowns. */
export function weighedFilm(film: ProblemFilm, z: Float64Array): FilmNumbers {
  return {
    materials: film.materials,
    amounts: film.amounts.map((amount, i) => amount * Math.exp(within5(film.weighing[i]! * z[film.unknowns + i]!))),
  };
}

function within5(ln: number): number {
  return Math.max(-5, Math.min(5, ln));
}

function viewNumbers(
  backing: ArrayLike<number>,
  seen: ArrayLike<number>,
  options: FitOptions,
  weights: ObserverWeights,
): ViewNumbers {
  const slopes = labSlopesSpace(seen.length);
  labSlopes(seen, weights, slopes);
  const [L, a, b] = slopes.lab;
  return {
    backing: backingInside(backing, options.backingSurface),
    seen: Float64Array.from(seen),
    lab: slopes.lab,
    metric: localMetric({ L: L!, a: a!, b: b! }),
  };
}

/** Thickness of films, times the amount of the material where amounts are concentrations. */
function usualDepth(films: readonly ProblemFilm[], material: number, options: FitOptions): number {
  if (options.amounts === 'fractions') {
    return Math.exp(films.reduce((sum, film) => sum + Math.log(film.thickness), 0) / films.length);
  }
  return Math.max(...films.map((film) => (film.amounts[film.materials.indexOf(material)] ?? 0) * film.thickness));
}

function held(ln: number): number {
  return Math.max(-LARGEST_LOG, Math.min(LARGEST_LOG, ln));
}

function byCodeUnit(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
