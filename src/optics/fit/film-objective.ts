/**
 * How badly unknowns explain films: minus the logarithm of their posterior probability, with its gradient.
 *
 * A film's misfit q adds, over its views, colour (in ΔE00) and bands (in lightness), each divided by its noise. Its
 * logarithm of probability is Student's t, (ν + d)/2 · ln(1 + q/ν): about q/2 for a good film, flat for a hopeless one, so
 * that a bad drawdown can't bend the materials. Unknowns add half their squares.
 *
 * Source: K. L. Lange, R. J. A. Little & J. M. G. Taylor, J. Am. Stat. Assoc. 84:881 (1989), for the t (from memory).
 */
import { bandLightness, bandLightnessSlope, type LabSlopes, labSlopes, labSlopesSpace } from './colour-misfit.ts';
import { type FilmState, filmState, type LayerSlopes, layerSlopes, mixFilm } from './film-model.ts';
import {
  type FilmProblem,
  type MaterialState,
  materialStates,
  type ProblemFilm,
  readMaterials,
  viewThickness,
  weighedFilm,
} from './film-problem.ts';
import type { Objective } from './minimize.ts';
import { gradientToStandard } from './smooth-prior.ts';

/** Colour terms a view brings into the degrees of freedom of a film's misfit. */
const TERMS_PER_VIEW = 3;

/** Share of its full weight that a film of misfit q keeps. */
export function filmWeight(problem: FilmProblem, film: ProblemFilm, q: number): number {
  const nu = problem.options.robustness;
  if (nu === Number.POSITIVE_INFINITY) return 1;
  return (nu + TERMS_PER_VIEW * film.views.length) / (nu + q);
}

function filmCost(problem: FilmProblem, film: ProblemFilm, q: number): number {
  const nu = problem.options.robustness;
  if (nu === Number.POSITIVE_INFINITY) return q / 2;
  return ((nu + TERMS_PER_VIEW * film.views.length) / 2) * Math.log1p(q / nu);
}

/** The misfit of a film, its K and S, and the gradient of half the misfit by what it depends on. */
interface FilmMisfit {
  q: number;
  readonly state: FilmState;
  readonly byK: Float64Array;
  readonly byS: Float64Array;
  /** By ln thickness of each view. */
  readonly byThickness: Float64Array;
}

/** Makes the objective of a problem. It keeps space of its own and returns to it at each call: not for two at once. */
export function filmObjective(problem: FilmProblem): Objective {
  const { bands, perMaterial, options } = problem;
  const materials = materialStates(problem);
  const logs = new Float64Array(problem.unknowns);
  const space = misfitSpace(problem);
  const misfits = problem.films.map(
    (film): FilmMisfit => ({
      q: 0,
      state: filmState(bands, film.materials.length),
      byK: new Float64Array(bands),
      byS: new Float64Array(bands),
      byThickness: new Float64Array(film.views.length),
    }),
  );
  return (z, gradient) => {
    readMaterials(problem, z, logs, materials);
    gradient.fill(0);
    let value = 0;
    for (let f = 0; f < problem.films.length; f++) {
      const film = problem.films[f]!;
      const misfit = misfits[f]!;
      measureMisfit(problem, film, z, materials, space, misfit);
      value += filmCost(problem, film, misfit.q);
      const weight = filmWeight(problem, film, misfit.q);
      for (let view = 0; view < film.views.length; view++) {
        const slope = weight * misfit.byThickness[view]!;
        gradient[film.thicknessAt]! += slope * options.thicknessSpread;
        gradient[film.thicknessAt + 1 + view]! += slope * options.drawdownSpread;
      }
      spreadToMaterials(problem, film, misfit, weight, materials, gradient);
    }
    for (let m = 0; m < problem.materials.length; m++) {
      gradientToStandard(problem.absorption, gradient, m * perMaterial);
      gradientToStandard(problem.scattering, gradient, m * perMaterial + bands);
    }
    let squares = 0;
    for (let i = 0; i < z.length; i++) {
      squares += z[i]! * z[i]!;
      gradient[i]! += z[i]!;
    }
    return value + squares / 2;
  };
}

/** The misfit q of each film for given unknowns. */
export function filmMisfits(problem: FilmProblem, z: Float64Array): number[] {
  const materials = materialStates(problem);
  readMaterials(problem, z, new Float64Array(problem.unknowns), materials);
  const space = misfitSpace(problem);
  return problem.films.map((film) => {
    const misfit: FilmMisfit = {
      q: 0,
      state: filmState(problem.bands, film.materials.length),
      byK: new Float64Array(problem.bands),
      byS: new Float64Array(problem.bands),
      byThickness: new Float64Array(film.views.length),
    };
    measureMisfit(problem, film, z, materials, space, misfit);
    return misfit.q;
  });
}

interface MisfitSpace {
  readonly R: Float64Array;
  readonly RbyK: Float64Array;
  readonly RbyS: Float64Array;
  readonly lab: LabSlopes;
  readonly layer: LayerSlopes;
}

function misfitSpace(problem: FilmProblem): MisfitSpace {
  return {
    R: new Float64Array(problem.bands),
    RbyK: new Float64Array(problem.bands),
    RbyS: new Float64Array(problem.bands),
    lab: labSlopesSpace(problem.bands),
    layer: { R: 0, byK: 0, byS: 0 },
  };
}

function measureMisfit(
  problem: FilmProblem,
  film: ProblemFilm,
  z: Float64Array,
  materials: readonly MaterialState[],
  space: MisfitSpace,
  out: FilmMisfit,
): void {
  const { bands, options, weights } = problem;
  const { R, RbyK, RbyS, lab, layer } = space;
  const { K, S } = out.state;
  mixFilm(weighedFilm(film, z), materials, options.amounts, out.state);
  out.q = 0;
  out.byK.fill(0);
  out.byS.fill(0);
  const perColour = 1 / options.colourNoise ** 2;
  const perBand = 1 / options.bandNoise ** 2;
  for (let v = 0; v < film.views.length; v++) {
    const view = film.views[v]!;
    const thickness = viewThickness(problem, film, v, z);
    for (let band = 0; band < bands; band++) {
      layerSlopes(K[band]!, S[band]!, thickness, view.backing[band]!, options.surface, layer);
      R[band] = layer.R;
      RbyK[band] = layer.byK;
      RbyS[band] = layer.byS;
    }
    labSlopes(R, weights, lab);
    const [u11, u12, u13, , u22, u23, , , u33] = view.metric;
    const dL = lab.lab[0]! - view.lab[0]!;
    const da = lab.lab[1]! - view.lab[1]!;
    const db = lab.lab[2]! - view.lab[2]!;
    const one = u11! * dL + u12! * da + u13! * db;
    const two = u22! * da + u23! * db;
    const three = u33! * db;
    out.q += perColour * (one * one + two * two + three * three);
    const byL = perColour * u11! * one;
    const byA = perColour * (u12! * one + u22! * two);
    const byB = perColour * (u13! * one + u23! * two + u33! * three);
    const [LbyBand, AbyBand, BbyBand] = lab.byBand;
    let byThickness = 0;
    for (let band = 0; band < bands; band++) {
      const off = bandLightness(R[band]!) - bandLightness(view.seen[band]!);
      const weight = perBand * problem.bandWeights[band]!;
      out.q += weight * off * off;
      const byR =
        byL * LbyBand[band]! +
        byA * AbyBand[band]! +
        byB * BbyBand[band]! +
        weight * off * bandLightnessSlope(R[band]!);
      const byK = byR * RbyK[band]!;
      const byS = byR * RbyS[band]!;
      out.byK[band]! += byK;
      out.byS[band]! += byS;
      // Only K and S times thickness matter.
      byThickness += byK * K[band]! + byS * S[band]!;
    }
    out.byThickness[v] = byThickness;
  }
}

/** Adds what a film says about its materials and amounts to the gradient: by ln k, ln s and the standard numbers of ln factor and ln amount. */
function spreadToMaterials(
  problem: FilmProblem,
  film: ProblemFilm,
  misfit: FilmMisfit,
  weight: number,
  materials: readonly MaterialState[],
  gradient: Float64Array,
): void {
  const { bands, perMaterial, factors, options } = problem;
  const { v, K, S } = misfit.state;
  // Effective fractions sum to 1: more of one is less of all the others, which is the film as it stands.
  let whole = 0;
  for (let band = 0; band < bands; band++) whole += misfit.byK[band]! * K[band]! + misfit.byS[band]! * S[band]!;
  for (let i = 0; i < film.materials.length; i++) {
    const { absorption, scattering } = materials[film.materials[i]!]!;
    const at = film.materials[i]! * perMaterial;
    let own = 0;
    for (let band = 0; band < bands; band++) {
      const byLnK = v[i]! * misfit.byK[band]! * absorption[band]!;
      const byLnS = v[i]! * misfit.byS[band]! * scattering[band]!;
      own += byLnK + byLnS;
      gradient[at + band]! += weight * byLnK;
      gradient[at + bands + band]! += weight * byLnS;
    }
    if (options.amounts === 'fractions') {
      const byLnAmount = weight * (own - v[i]! * whole);
      gradient[at + 2 * bands]! += factors[film.materials[i]!]!.spread * byLnAmount;
      gradient[film.unknowns + i]! += film.weighing[i]! * byLnAmount;
    }
  }
}
