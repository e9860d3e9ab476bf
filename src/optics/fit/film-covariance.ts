/**
 * What a predicted film may be off by, from four causes: what its materials are, what really went into it, how thick it is, and what
 * the theory misses.
 */
import type { Lab } from '../cielab.ts';
import { appliedMetric, localMetric } from '../local-metric.ts';
import type { FilmNumbers, FilmState } from './film-model.ts';
import type { FittedMaterial, FittedMaterials } from './fit-materials.ts';
import { labByUnknowns, posteriorCovariance } from './material-posterior.ts';
import { amountShares, factorPrior, weighingSpreads } from './part-spreads.ts';
import type { ViewSlopes } from './view-slopes.ts';

/** How a film's colour moves by a standard deviation of each unknown, along the axes of the metric. */
interface Moves {
  readonly byMaterials: readonly Float64Array[];
  /** Thickness first, then the amount of each part. */
  readonly ownErrors: readonly Float64Array[];
}

/** Covariance of a prediction's error, 3 × 3 row by row, along axes in which its squared length is ΔE00². */
export function filmCovariance(
  fitted: FittedMaterials,
  film: FilmNumbers,
  state: FilmState,
  slopes: ViewSlopes,
  lab: Lab,
): Float64Array {
  const { byMaterials, ownErrors } = movesOf(fitted, film, state, slopes, lab);
  const covariance = posteriorCovariance(fitted.posterior, byMaterials);
  const miss = theoryMiss(fitted, film);
  for (let i = 0; i < 3; i++) {
    for (let j = 0; j < 3; j++) {
      covariance[i * 3 + j]! += ownErrors.reduce((sum, move) => sum + move[i]! * move[j]!, 0);
    }
    covariance[i * 4]! += miss ** 2;
  }
  return covariance;
}

function movesOf(
  { options, posterior, materials: all }: FittedMaterials,
  film: FilmNumbers,
  state: FilmState,
  slopes: ViewSlopes,
  lab: Lab,
): Moves {
  const materials = [...all.values()];
  const perMaterial = 2 * slopes.R.length + 1;
  const amountsAt = film.materials.length * perMaterial;
  const thicknessAt = amountsAt + film.materials.length;
  const spreads = {
    factors: film.materials.map((material) => factorPrior(materials[material]!.name, options).spread),
    weighing: weighingSpreads(film.amounts, options),
  };
  const rows = labByUnknowns(perMaterial, film, state, materials, slopes, spreads, thicknessAt + 1);
  const metric = localMetric(lab);
  const along = (unknown: number): Float64Array =>
    Float64Array.from(appliedMetric(metric, rows[0]![unknown]!, rows[1]![unknown]!, rows[2]![unknown]!));
  const byMaterials = rows.map(() => new Float64Array(posterior.factor.rows.length));
  for (let i = 0; i < amountsAt; i++) {
    const place = posterior.begins[film.materials[Math.floor(i / perMaterial)]!]! + (i % perMaterial);
    along(i).forEach((slope, axis) => {
      byMaterials[axis]![place] = slope;
    });
  }
  const thicknessSpread = Math.hypot(options.thicknessSpread, options.drawdownSpread);
  return {
    byMaterials,
    ownErrors: [
      along(thicknessAt).map((slope) => thicknessSpread * slope),
      ...film.materials.map((_, part) => along(amountsAt + part)),
    ],
  };
}

/** A film that holds as many times as much of a material as any that was measured is far beyond all of them. Convention of this book. */
const FAR_BEYOND = 1.5;

/**
 * What the theory misses of a film, ΔE00 along each axis: more where no film tells how its materials get on, since two of them
 * never met in one, or none held nearly as much of one.
 */
function theoryMiss({ materials: all, options }: FittedMaterials, { materials, amounts }: FilmNumbers): number {
  const fitted = [...all.values()];
  const shares = amountShares(amounts, options);
  const isBeyond = materials.some((material, part) => shares[part]! > FAR_BEYOND * fitted[material]!.most);
  return options.modelMiss * (isBeyond || !haveMet(materials.map((each) => fitted[each]!)) ? options.strangersMiss : 1);
}

/** Whether each two of the materials are together in some film of the fit. */
function haveMet(materials: readonly FittedMaterial[]): boolean {
  return materials.every(({ films }, index) =>
    materials.slice(index + 1).every((other) => other.films.some((film) => films.includes(film))),
  );
}
