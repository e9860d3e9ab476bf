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
 * Unknowns to start from: each material scatters as the prior says, and absorbs as the film shows of which it is the
 * largest part, as if that film were made of nothing else and hid its backing.
 */
export function firstGuess(problem: FilmProblem): Float64Array {
  const z = new Float64Array(problem.unknowns);
  const logs = new Float64Array(problem.unknowns);
  for (let m = 0; m < problem.materials.length; m++) {
    const at = m * problem.perMaterial;
    const { seen } = purestFilm(problem, m).views[0]!;
    for (let band = 0; band < problem.bands; band++) {
      const inside = surfaceInward(Math.min(1, seen[band]!), problem.options.surface);
      const ratio = absorptionToScattering(Math.min(LIGHTEST, Math.max(DARKEST, inside)));
      logs[at + band] = problem.scattering.centre + Math.log(ratio);
    }
    standardFromCurve(problem.absorption, logs, z, at);
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
