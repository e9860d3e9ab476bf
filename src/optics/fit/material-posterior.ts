/**
 * How surely the films tell ln k, ln s and ln factor of each material: the Gaussian about the best fit (Laplace's
 * approximation, with the Gauss–Newton curvature).
 *
 * Unknowns of the films (their amounts and thickness) are summed over first, film by film, so that only the materials are left.
 */
import { bandLightnessSlope } from './colour-misfit.ts';
import { addElement, type Envelope, envelope, factorize, solveLower } from './envelope-cholesky.ts';
import { type FilmNumbers, filmState, mixFilm } from './film-model.ts';
import { filmMisfits, filmWeight } from './film-objective.ts';
import { type FilmProblem, type MaterialState, type ProblemFilm, viewThickness, weighedFilm } from './film-problem.ts';
import type { PartSpreads } from './part-spreads.ts';
import type { SmoothPrior } from './smooth-prior.ts';
import { bandByUnknowns, type ViewSlopes, viewSlopes } from './view-slopes.ts';

/** The Gaussian: the factor of its precision, and where each material's unknowns begin in it. */
export interface MaterialPosterior {
  readonly factor: Envelope;
  readonly begins: readonly number[];
}

/** Makes the Gaussian about the fit `z` whose materials are `materials`. */
export function materialPosterior(
  problem: FilmProblem,
  z: Float64Array,
  materials: readonly MaterialState[],
): MaterialPosterior {
  const { perMaterial, bands } = problem;
  const { order, begins } = fewestPartnersFirst(problem);
  const matrix = envelope(envelopeStarts(problem, order, begins));
  for (const begin of begins) {
    addPrior(matrix, problem.absorption, begin);
    addPrior(matrix, problem.scattering, begin + bands);
    addElement(matrix, begin + 2 * bands, begin + 2 * bands, 1);
  }
  const misfits = filmMisfits(problem, z);
  problem.films.forEach((film, index) => {
    const information = filmInformation(problem, film, z, materials, filmWeight(problem, film, misfits[index]!));
    const size = film.materials.length * perMaterial;
    const place = (local: number): number =>
      begins[film.materials[Math.floor(local / perMaterial)]!]! + (local % perMaterial);
    for (let i = 0; i < size; i++) {
      for (let j = 0; j <= i; j++) {
        const value = information.matrix[i * information.size + j]!;
        if (value !== 0) addElement(matrix, Math.max(place(i), place(j)), Math.min(place(i), place(j)), value);
      }
    }
  });
  factorize(matrix);
  return { factor: matrix, begins };
}

/**
 * Covariance of several quantities that change with the unknowns as `gradients` say (one row each over all unknowns, in
 * the posterior's order): G H⁻¹ Gᵀ, row by row. The gradients are used up.
 */
export function posteriorCovariance(posterior: MaterialPosterior, gradients: readonly Float64Array[]): Float64Array {
  for (const gradient of gradients) solveLower(posterior.factor, gradient);
  const count = gradients.length;
  const covariance = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      let sum = 0;
      for (let k = 0; k < gradients[i]!.length; k++) sum += gradients[i]![k]! * gradients[j]![k]!;
      covariance[i * count + j] = sum;
    }
  }
  return covariance;
}

/** Materials that meet many others come last: then the factor stays empty where two materials never meet. */
function fewestPartnersFirst(problem: FilmProblem): { order: number[]; begins: number[] } {
  const partners = problem.materials.map(() => new Set<number>());
  for (const film of problem.films) {
    for (const one of film.materials) for (const other of film.materials) partners[one]!.add(other);
  }
  const order = problem.materials.map((_, m) => m).sort((a, b) => partners[a]!.size - partners[b]!.size || a - b);
  const begins = new Array<number>(order.length);
  order.forEach((material, position) => {
    begins[material] = position * problem.perMaterial;
  });
  return { order, begins };
}

function envelopeStarts(problem: FilmProblem, order: readonly number[], begins: readonly number[]): number[] {
  const starts: number[] = [];
  for (const material of order) {
    const own = begins[material]!;
    let start = own;
    for (const film of problem.films) {
      if (!film.materials.includes(material)) continue;
      for (const other of film.materials) start = Math.min(start, begins[other]!);
    }
    for (let i = 0; i < problem.perMaterial; i++) starts.push(start);
  }
  return starts;
}

function addPrior(matrix: Envelope, prior: SmoothPrior, begin: number): void {
  const [main, first, second] = prior.precision;
  for (let i = 0; i < main.length; i++) {
    addElement(matrix, begin + i, begin + i, main[i]!);
    if (i > 0) addElement(matrix, begin + i, begin + i - 1, first[i]!);
    if (i > 1) addElement(matrix, begin + i, begin + i - 2, second[i]!);
  }
}

/** What a film tells about its materials, its amounts and thickness unknown: a square matrix over local unknowns, then thickness. */
function filmInformation(
  problem: FilmProblem,
  film: ProblemFilm,
  z: Float64Array,
  materials: readonly MaterialState[],
  weight: number,
): { matrix: Float64Array; size: number } {
  const { bands, options, perMaterial, weights } = problem;
  const state = filmState(bands, film.materials.length);
  mixFilm(weighedFilm(film, z), materials, options.amounts, state);
  const amounts = film.materials.length * perMaterial;
  const thickness = amounts + film.materials.length;
  const spreads = {
    factors: film.materials.map((material) => problem.factors[material]!.spread),
    weighing: film.weighing,
  };
  const size = thickness + 1 + film.views.length;
  const matrix = new Float64Array(size * size);
  film.views.forEach((view, v) => {
    const slopes = viewSlopes(state, viewThickness(problem, film, v, z), view.backing, options.surface, weights);
    const rows = colourRows(problem, film, state, materials, slopes, view.metric, spreads, size);
    const drawdown = thickness + 1 + v;
    for (const row of rows) {
      row[drawdown] = options.drawdownSpread * row[thickness]!;
      row[thickness]! *= options.thicknessSpread;
      addOuter(matrix, size, row, allBelow(size), weight);
    }
    const row = new Float64Array(size);
    for (let band = 0; band < bands; band++) {
      const touched: number[] = [];
      const scale = (Math.sqrt(problem.bandWeights[band]!) / options.bandNoise) * bandLightnessSlope(slopes.R[band]!);
      bandByUnknowns(slopes, band, film, state, materials, spreads, (position, derivative) => {
        row[position] = scale * derivative;
        touched.push(position);
      });
      row[thickness] = options.thicknessSpread * scale * slopes.byThickness[band]!;
      row[drawdown] = options.drawdownSpread * scale * slopes.byThickness[band]!;
      touched.push(thickness, drawdown);
      addOuter(matrix, size, row, touched, weight);
    }
  });
  for (let i = amounts; i < size; i++) matrix[i * size + i]! += 1;
  eliminateFrom(matrix, size, amounts);
  return { matrix, size };
}

/** U dLab/σ by local unknowns, and by ln thickness in the place after them. */
function colourRows(
  problem: FilmProblem,
  film: ProblemFilm,
  state: ReturnType<typeof filmState>,
  materials: readonly MaterialState[],
  slopes: ViewSlopes,
  metric: Float64Array,
  spreads: PartSpreads,
  size: number,
): Float64Array[] {
  const lab = labByUnknowns(problem.perMaterial, film, state, materials, slopes, spreads, size);
  const [u11, u12, u13, , u22, u23, , , u33] = metric;
  const noise = problem.options.colourNoise;
  const [L, a, b] = lab as [Float64Array, Float64Array, Float64Array];
  for (let i = 0; i < size; i++) {
    const dL = L[i]!;
    const da = a[i]!;
    const db = b[i]!;
    L[i] = (u11! * dL + u12! * da + u13! * db) / noise;
    a[i] = (u22! * da + u23! * db) / noise;
    b[i] = (u33! * db) / noise;
  }
  return lab;
}

/** dLab by local unknowns, and by ln thickness in the place after them: three rows of `size` numbers. */
export function labByUnknowns(
  perMaterial: number,
  film: FilmNumbers,
  state: ReturnType<typeof filmState>,
  materials: readonly MaterialState[],
  slopes: ViewSlopes,
  spreads: PartSpreads,
  size: number,
): Float64Array[] {
  const rows = [new Float64Array(size), new Float64Array(size), new Float64Array(size)];
  const thickness = film.materials.length * (perMaterial + 1);
  for (let band = 0; band < slopes.R.length; band++) {
    const [L, a, b] = slopes.lab.byBand;
    const each = [L[band]!, a[band]!, b[band]!];
    bandByUnknowns(slopes, band, film, state, materials, spreads, (position, derivative) => {
      for (let c = 0; c < 3; c++) rows[c]![position]! += each[c]! * derivative;
    });
    for (let c = 0; c < 3; c++) rows[c]![thickness]! += each[c]! * slopes.byThickness[band]!;
  }
  return rows;
}

function allBelow(size: number): number[] {
  return Array.from({ length: size }, (_, i) => i);
}

function addOuter(
  matrix: Float64Array,
  size: number,
  row: Float64Array,
  places: readonly number[],
  weight: number,
): void {
  for (const i of places) {
    const scaled = weight * row[i]!;
    if (scaled === 0) continue;
    for (const j of places) matrix[i * size + j]! += scaled * row[j]!;
  }
}

/** Removes the unknowns from `from` on by elimination (Schur complement), last first. */
function eliminateFrom(matrix: Float64Array, size: number, from: number): void {
  for (let k = size - 1; k >= from; k--) {
    const pivot = matrix[k * size + k]!;
    for (let i = 0; i < k; i++) {
      const ratio = matrix[i * size + k]! / pivot;
      if (ratio === 0) continue;
      for (let j = 0; j < k; j++) matrix[i * size + j]! -= ratio * matrix[k * size + j]!;
    }
  }
}
