/**
 * All materials of a shelf from all films made of them, at once.
 *
 * Each film is a mix of its materials (K and S add by volume), over its backing, behind its surface. A mass fraction is
 * turned into one of volume by a factor a material, found with the rest. What few films tell is filled in by belief:
 * absorption and above all scattering are smooth over wavelength, films are about as thick as stated, factors are near 1.
 * How strongly each of these is held was chosen by cross-validation (see `fit-options.ts`).
 *
 * Sources: D. R. Duncan, Proc. Phys. Soc. 52:390 (1940); P. Kubelka, J. Opt. Soc. Am. 38:448 (1948); J. L. Saunderson,
 * J. Opt. Soc. Am. 32:727 (1942).
 */
import { deltaE00 } from '../delta-e00.ts';
import type { MeasuredFilm } from './film.ts';
import { type FilmFault, filmFaults } from './film-faults.ts';
import { filmState, mixFilm } from './film-model.ts';
import { filmMisfits, filmObjective, filmWeight } from './film-objective.ts';
import {
  type FilmProblem,
  filmProblem,
  materialStates,
  type ProblemFilm,
  readMaterials,
  viewThickness,
} from './film-problem.ts';
import { firstGuess } from './first-guess.ts';
import { FIT_DEFAULTS, type FitOptions } from './fit-options.ts';
import { type MaterialPosterior, materialPosterior } from './material-posterior.ts';
import { minimize } from './minimize.ts';
import { amountShares } from './part-spreads.ts';
import { viewSlopes } from './view-slopes.ts';

/** A material as the films tell it. */
export interface FittedMaterial {
  readonly name: string;
  /** K and S per unit of thickness of the material undiluted (`fractions`), or per g/ml (`concentrations`). */
  readonly absorption: Float64Array;
  readonly scattering: Float64Array;
  /** How much volume a gram takes, to optics, beside the other materials; 1 for `concentrations`. */
  readonly factor: number;
  /** Names of the films that hold it, and whether one of them holds nothing else. */
  readonly films: readonly string[];
  readonly alone: boolean;
  /** The largest share that it has of any film by mass (`fractions`), or g/ml (`concentrations`). */
  readonly most: number;
}

/** What is left over of a film. */
export interface FilmResidual {
  readonly name: string;
  /** Share of full weight that the fit gave it, 0..1: a low one is a film that does not fit with the others. */
  readonly weight: number;
  readonly views: readonly {
    readonly label: string;
    /** Against a film as thick as stated. */
    readonly deltaE00: number;
    /** How thick the fit takes this drawdown to be, as a ratio to the stated thickness. */
    readonly thicknessRatio: number;
  }[];
}

/** What `fitMaterials` returns, and `predictFilm` takes. */
export interface FittedMaterials {
  readonly options: FitOptions;
  readonly materials: ReadonlyMap<string, FittedMaterial>;
  readonly films: readonly FilmResidual[];
  readonly faults: readonly FilmFault[];
  /** What the fit rests on. */
  readonly restsOn: {
    readonly films: number;
    readonly views: number;
    readonly iterations: number;
    /** False if the search ended before it found the best. */
    readonly converged: boolean;
  };
  /** How surely the films tell the materials: see `materialPosterior`. */
  readonly posterior: MaterialPosterior;
}

/**
 * Fits all materials of `films` together.
 *
 * Units: reflectances 0..1 as measured from outside; the rest is said at `FitOptions`, and `FIT_DEFAULTS` stand in for what
 * is not named. Every material of the films is in the result, each with `absorption` and `scattering` above 0.
 * Throws: RangeError for films that `requireFilm` refuses, none at all, or wavelengths that are not on the grid.
 */
export function fitMaterials(
  films: readonly MeasuredFilm[],
  options: Partial<FitOptions> & Pick<FitOptions, 'wavelengths'>,
): FittedMaterials {
  const problem = filmProblem(films, { ...FIT_DEFAULTS, ...options });
  const { maxIterations, tolerance } = problem.options;
  const found = minimize(filmObjective(problem), firstGuess(problem), { maxIterations, tolerance, memory: 20 });
  const states = materialStates(problem);
  readMaterials(problem, found.x, new Float64Array(problem.unknowns), states);
  const misfits = filmMisfits(problem, found.x);
  const materials = problem.materials.map((name, m): FittedMaterial => {
    const holding = films.filter((film) => film.parts.some((part) => part.material === name));
    const alone = holding.some((film) => film.parts.length === 1);
    const most = Math.max(
      ...problem.films.flatMap(({ materials: held, amounts }) =>
        held.includes(m) ? [amountShares(amounts, problem.options)[held.indexOf(m)]!] : [],
      ),
    );
    return { name, ...states[m]!, films: holding.map((film) => film.name), alone, most };
  });
  return {
    options: problem.options,
    materials: new Map(materials.map((material) => [material.name, material])),
    films: problem.films.map((film, f) => ({
      name: films[f]!.name,
      weight: Math.min(1, filmWeight(problem, film, misfits[f]!) / filmWeight(problem, film, 0)),
      views: viewResiduals(problem, film, found.x, states).map((residual, v) => ({
        label: films[f]!.views[v]!.label,
        ...residual,
      })),
    })),
    faults: filmFaults(films, problem.options.wavelengths),
    restsOn: {
      films: films.length,
      views: films.reduce((sum, film) => sum + film.views.length, 0),
      iterations: found.iterations,
      converged: found.converged,
    },
    posterior: materialPosterior(problem, found.x, states),
  };
}

function viewResiduals(
  problem: FilmProblem,
  film: ProblemFilm,
  z: Float64Array,
  states: ReturnType<typeof materialStates>,
): { deltaE00: number; thicknessRatio: number }[] {
  const state = filmState(problem.bands, film.materials.length);
  mixFilm(film, states, problem.options.amounts, state);
  return film.views.map((view, v) => {
    const { lab } = viewSlopes(state, film.thickness, view.backing, problem.options.surface, problem.weights).lab;
    const [L, a, b] = lab;
    const [L2, a2, b2] = view.lab;
    return {
      deltaE00: deltaE00({ L: L!, a: a!, b: b! }, { L: L2!, a: a2!, b: b2! }),
      thicknessRatio: viewThickness(problem, film, v, z) / film.thickness,
    };
  });
}
