import type { LinearLook } from './linear-views.ts';
import { lookNoise } from './look-covariance.ts';
import type { SharedVariance } from './shared-memo.ts';

/** A view of one of several looks. */
export interface SeenSide {
  /** Place of its look among them. */
  readonly look: number;
  /** 0 over white, 1 over black. */
  readonly side: 0 | 1;
}

/** The views that looks have. */
export function seenSides(looks: readonly Pick<LinearLook, 'white' | 'black'>[]): readonly SeenSide[] {
  return looks.flatMap(({ white, black }, look): SeenSide[] => [
    ...(white ? [{ look, side: 0 } as const] : []),
    ...(black ? [{ look, side: 1 } as const] : []),
  ]);
}

/** A look that is not believed at all is as vague as this: it moves nothing. */
const LEAST_WEIGHT = 1e-9;

/** By how many times a look of this weight is vaguer than noted: a look of weight w errs as one that is 1/w times as vague. */
export function vaguer(weight: number): number {
  return 1 / Math.max(LEAST_WEIGHT, weight);
}

/** Covariance of what views of looks are off by, along each axis: the lower triangle, row by row. */
export function seenCovariance(
  looks: readonly LinearLook[],
  sides: readonly SeenSide[],
  shared: SharedVariance,
): Float64Array {
  const n = sides.length;
  const C = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      const [one, other] = [sides[i]!, sides[j]!];
      const look = looks[one.look]!;
      const sameView = one.side === other.side;
      let sum = sameView ? shared(look, looks[other.look]!) : 0;
      if (one.look === other.look) sum = (sum + lookNoise(look.errors, sameView)) * vaguer(look.weight);
      C[i * n + j] = sum;
    }
  }
  return C;
}
