/**
 * Where a fit of materials starts.
 */
import { absorptionToScattering } from '../kubelka-munk.ts';
import { surfaceInward } from '../surface.ts';
import type { FilmProblem } from './film-problem.ts';
import { standardFromCurve } from './smooth-prior.ts';

/** Reflectances inside between which K/S of a film is taken at its word. */
const DARKEST = 0.004;
const LIGHTEST = 0.98;

/**
 * How much thinner than believed, as a logarithm, all materials start. From a start that hides the backing, nothing would
 * tell the search that a film shows its backing: it can end in a film that is opaque and wrong. Not so the other way.
 */
const THINNER = -1;

/**
 * Unknowns to start from: each material scatters less than the prior says, and absorbs as the film shows of which it is
 * the largest part, as if that film were made of nothing else and hid its backing.
 */
export function firstGuess(problem: FilmProblem): Float64Array {
  const { absorption, scattering, bands, materials, options, perMaterial } = problem;
  const z = new Float64Array(problem.unknowns);
  const logs = new Float64Array(problem.unknowns);
  const lnS = scattering.centre + THINNER;
  for (let m = 0; m < materials.length; m++) {
    const at = m * perMaterial;
    const { seen } = purestFilm(problem, m).views[0]!;
    for (let band = 0; band < bands; band++) {
      const inside = surfaceInward(Math.min(1, seen[band]!), options.surface);
      const ratio = absorptionToScattering(Math.min(LIGHTEST, Math.max(DARKEST, inside)));
      logs[at + band] = lnS + Math.log(ratio);
      logs[at + bands + band] = lnS;
    }
    standardFromCurve(absorption, logs, z, at);
    standardFromCurve(scattering, logs, z, at + bands);
  }
  return z;
}

function purestFilm(problem: FilmProblem, material: number): FilmProblem['films'][number] {
  let best = problem.films[0]!;
  let bestShare = -1;
  for (const film of problem.films) {
    const index = film.materials.indexOf(material);
    if (index < 0) continue;
    const whole = film.amounts.reduce((sum, amount) => sum + amount, 0);
    const share =
      problem.options.amounts === 'fractions' ? film.amounts[index]! / whole : film.amounts[index]! * film.thickness;
    if (share > bestShare) {
      best = film;
      bestShare = share;
    }
  }
  return best;
}
