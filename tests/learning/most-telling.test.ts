import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seededRandom, standardNormal } from '../../src/cup/random.ts';
import type { ColourSlopes } from '../../src/learning/colour-slopes.ts';
import { gainOfEach, mostTelling, type TellingQuestion } from '../../src/learning/most-telling.ts';

type Matrix = readonly (readonly number[])[];

const N = 9;
const mul = (A: Matrix, B: Matrix): Matrix =>
  A.map((row) => B[0]!.map((_, j) => row.reduce((sum, value, k) => sum + value * B[k]![j]!, 0)));
const tr = (A: Matrix): Matrix => A[0]!.map((_, j) => A.map((row) => row[j]!));
const add = (A: Matrix, B: Matrix, times = 1): Matrix =>
  A.map((row, i) => row.map((value, j) => value + times * B[i]![j]!));
const trace = (A: Matrix): number => A.reduce((sum, row, i) => sum + row[i]!, 0);

/** By Gauss and Jordan. */
function inverse(A: Matrix): Matrix {
  const n = A.length;
  const M = A.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let i = 0; i < n; i++) {
    const pivot = M.slice(i).reduce((best, row, k) => (Math.abs(row[i]!) > Math.abs(M[best]![i]!) ? i + k : best), i);
    [M[i], M[pivot]] = [M[pivot]!, M[i]!];
    const by = M[i]![i]!;
    M[i] = M[i]!.map((value) => value / by);
    for (let k = 0; k < n; k++) if (k !== i) M[k] = M[k]!.map((value, j) => value - M[k]![i]! * M[i]![j]!);
  }
  return M.map((row) => row.slice(n));
}

/** Slopes with some of the unknowns, and the same with all of them. */
function someSlopes(random: () => number): { readonly sparse: ColourSlopes; readonly dense: Matrix } {
  const columns = Array.from({ length: N }, (_, i) => i).filter(() => random() < 0.6);
  const dense = Array.from({ length: 6 }, () =>
    Array.from({ length: N }, (_, i) => (columns.includes(i) ? standardNormal(random) : 0)),
  );
  return {
    sparse: {
      columns: Int32Array.from(columns),
      slopes: Float64Array.from(dense.flatMap((row) => columns.map((i) => row[i]!))),
    },
    dense,
  };
}

function someQuestion(seed: number): {
  readonly question: TellingQuestion;
  readonly sigma: Matrix;
  readonly noise: Matrix;
  readonly looks: readonly Matrix[];
  readonly mixtures: readonly Matrix[];
} {
  const random = seededRandom(seed);
  const square = (n: number): Matrix => {
    const F = Array.from({ length: n }, () => Array.from({ length: n }, () => standardNormal(random)));
    return add(
      mul(F, tr(F)),
      F.map((row, i) => row.map((_, j) => (i === j ? 0.3 : 0))),
    );
  };
  const [sigma, noise] = [square(N), square(6)];
  const looks = Array.from({ length: 5 }, () => someSlopes(random));
  const mixtures = Array.from({ length: 4 }, () => someSlopes(random));
  return {
    question: {
      covariance: Float64Array.from(sigma.flat()),
      candidates: looks.map(({ sparse }) => sparse),
      mixtures: mixtures.map(({ sparse }) => sparse),
      watched: [mixtures[1]!.sparse],
      noise: Float64Array.from(noise.flat()),
    },
    sigma,
    noise,
    looks: looks.map(({ dense }) => dense),
    mixtures: mixtures.map(({ dense }) => dense),
  };
}

/** By the information that a look adds: (Σ⁻¹ + Jᵀ N⁻¹ J)⁻¹, which the looked-for formula is another form of. */
const leftBy = (sigma: Matrix, J: Matrix, noise: Matrix): Matrix =>
  inverse(add(inverse(sigma), mul(tr(J), mul(inverse(noise), J))));
const left = (sigma: Matrix, mixtures: readonly Matrix[]): number =>
  mixtures.reduce((sum, A) => sum + trace(mul(A, mul(sigma, tr(A)))), 0) / mixtures.length;

describe('mostTelling()', () => {
  test('chooses as the information of each look says, one after another, and says what each gains', () => {
    fc.assert(
      fc.property(fc.nat(1e6), (seed) => {
        const { question, sigma, noise, looks, mixtures } = someQuestion(seed);
        let believed = sigma;
        const open = new Set(looks.keys());
        const chosen = mostTelling(question, looks.length, 0);
        expect(chosen).toHaveLength(looks.length);
        for (const { candidate, gain, after: doubts } of chosen) {
          const now = left(believed, mixtures);
          const gains = [...open].map((each) => now - left(leftBy(believed, looks[each]!, noise), mixtures));
          expect(gain).toBeCloseTo(Math.max(...gains), 6);
          expect(gain).toBeCloseTo(gains[[...open].indexOf(candidate)]!, 6);
          open.delete(candidate);
          believed = leftBy(believed, looks[candidate]!, noise);
          expect(doubts.watched[0]).toBe(doubts.mixtures[1]);
          for (const [at, A] of mixtures.entries()) {
            const C = mul(A, mul(believed, tr(A)));
            const view = (from: number): number => C[from]![from]! + C[from + 1]![from + 1]! + C[from + 2]![from + 2]!;
            expect(doubts.mixtures[at]).toBeCloseTo(Math.max(view(0), view(3)), 6);
          }
        }
      }),
      { numRuns: 25 },
    );
  });

  test('says what each look gains by itself', () => {
    fc.assert(
      fc.property(fc.nat(1e6), (seed) => {
        const { question, sigma, noise, looks, mixtures } = someQuestion(seed);
        const gains = gainOfEach(question);
        expect(gains).toHaveLength(looks.length);
        for (const [at, J] of looks.entries())
          expect(gains[at]).toBeCloseTo(left(sigma, mixtures) - left(leftBy(sigma, J, noise), mixtures), 6);
      }),
      { numRuns: 25 },
    );
  });

  test('stops where the next one gains too little, and leaves what it was asked with as it was', () => {
    const { question } = someQuestion(7);
    const before = question.covariance.slice();
    const all = mostTelling(question, 5, 0);
    const least = (all[1]!.gain + all[2]!.gain) / 2;
    expect(all.map(({ gain }) => gain)).toEqual([...all].map(({ gain }) => gain).sort((one, other) => other - one));
    expect(mostTelling(question, 5, least)).toEqual(all.slice(0, 2));
    expect(question.covariance).toEqual(before);
  });

  test('asks for nothing where nothing is in doubt, or nothing is wanted', () => {
    const { question } = someQuestion(3);
    expect(mostTelling({ ...question, covariance: new Float64Array(N * N) }, 3, 1)).toEqual([]);
    expect(mostTelling({ ...question, mixtures: [] }, 3, 1)).toEqual([]);
  });
});
