import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CompositionPoint } from '../../src/learning/composition-point.ts';
import { factorizeDense } from '../../src/learning/dense-cholesky.ts';
import { inverseDense } from '../../src/learning/dense-inverse.ts';
import { JointKriging } from '../../src/learning/joint-kriging.ts';
import type { LinearLook, Placed, ThetaSlopes } from '../../src/learning/linear-views.ts';
import { sharedVariance } from '../../src/learning/look-covariance.ts';
import type { SharedVariance } from '../../src/learning/shared-memo.ts';
import { expectClose } from '../optics/close.ts';
import { normals } from './normals.ts';

const shared: SharedVariance = (one, other) => sharedVariance(one.errors, other.errors);

type Rows = number[][];
const transposed = (A: Rows): Rows => A[0]!.map((_, j) => A.map((row) => row[j]!));
const times = (A: Rows, B: Rows): Rows =>
  A.map((row) => B[0]!.map((_, j) => row.reduce((sum, value, k) => sum + value * B[k]![j]!, 0)));
const plus = (A: Rows, B: Rows, sign = 1): Rows => A.map((row, i) => row.map((value, j) => value + sign * B[i]![j]!));

/** Gauss and Jordan, without exchange of rows: for covariances. */
function inverted(A: Rows): Rows {
  const n = A.length;
  const M = A.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let i = 0; i < n; i++) {
    const pivot = M[i]![i]!;
    M[i] = M[i]!.map((value) => value / pivot);
    for (let k = 0; k < n; k++) {
      if (k === i) continue;
      const factor = M[k]![i]!;
      M[k] = M[k]!.map((value, j) => value - factor * M[i]![j]!);
    }
  }
  return M.map((row) => row.slice(n));
}

const UNKNOWNS = 7;

interface Problem {
  readonly looks: LinearLook[];
  readonly asked: (Placed & ThetaSlopes)[];
  /** What was seen, were the model nought at theta 0. */
  readonly seen: number[][];
}

/** Looks and compositions with points, slopes and residuals at random. */
function problem(seed: number, count: number, asked: number, cups: readonly string[]): Problem {
  const normal = normals(seed);
  const point = (): CompositionPoint => ({
    keys: Int32Array.of(0, 1),
    values: Float64Array.of(normal(), normal()),
  });
  const slopes = (): ThetaSlopes => {
    const columns = Int32Array.of(0, 2, 3, 5 + (seed % 2));
    return { columns, slopes: Float64Array.from({ length: 24 }, normal) };
  };
  const looks = Array.from({ length: count }, (_, i): LinearLook => {
    const own = slopes();
    const [white, black] = [i % 4 !== 1, i % 4 !== 2];
    for (let row = 0; row < 6; row++) if (row < 3 ? !white : !black) own.slopes.fill(0, row * 4, row * 4 + 4);
    return {
      ...own,
      errors: {
        point: point(),
        cup: cups[i % cups.length]!,
        means: i % 3 ? 'screen' : 'instrument',
        axisSd: 0.3 + Math.abs(normal()),
      },
      place: i,
      white,
      black,
      residual: new Float64Array(6),
      weight: i % 5 === 3 ? 0.2 : 1,
    };
  });
  return {
    looks,
    asked: Array.from({ length: asked }, (_, i) => ({
      ...slopes(),
      errors: { point: point(), means: 'instrument', ...(i % 2 ? {} : { cup: cups[0]! }) },
    })),
    seen: looks.map(() => Array.from({ length: 6 }, normal)),
  };
}

const row = ({ columns, slopes }: ThetaSlopes, axis: number): number[] => {
  const full = new Array<number>(UNKNOWNS).fill(0);
  for (const [c, column] of columns.entries()) full[column] = slopes[axis * columns.length + c]!;
  return full;
};

/** The textbook: theta and the field are one Gaussian with all that was seen, and what is asked is that given the other. */
function textbook({ looks, asked, seen }: Problem): { mean: number[]; covariance: Rows; H: Rows; theta: number[] } {
  const axes = [0, 1, 2, 3, 4, 5];
  const rows = looks.flatMap((look, i) =>
    axes.filter((axis) => (axis < 3 ? look.white : look.black)).map((axis) => ({ look, i, axis })),
  );
  const wanted = asked.flatMap((each) => axes.map((axis) => ({ each, axis })));
  const alike = (one: number, other: number): boolean => one === other;
  const rho = { instrument: 0, screen: 0.64 };
  const C = rows.map((one) =>
    rows.map((other) => {
      const field = alike(one.axis, other.axis) ? shared(one.look, other.look) : 0;
      if (one.i !== other.i) return field;
      const noise = one.look.errors.axisSd ** 2;
      const photo = one.axis % 3 === other.axis % 3 ? rho[one.look.errors.means] * noise : 0;
      return (field + (one.axis === other.axis ? noise : photo)) / one.look.weight;
    }),
  );
  const J = rows.map(({ look, axis }) => row(look, axis));
  const Jw = wanted.map(({ each, axis }) => row(each, axis));
  const k = wanted.map(({ each, axis }) => rows.map((one) => (alike(axis, one.axis) ? shared(each, one.look) : 0)));
  const own = wanted.map((one) =>
    wanted.map((other) => (alike(one.axis, other.axis) ? shared(one.each, other.each) : 0)),
  );
  const y = rows.map(({ i, axis }) => [seen[i]![axis]!]);
  const all = inverted(plus(times(J, transposed(J)), C));
  const towards = plus(times(Jw, transposed(J)), k);
  const unit = unitRows();
  const JtC = times(transposed(J), inverted(C));
  const H = plus(unit, times(JtC, J));
  return {
    mean: times(times(towards, all), y).map(([value]) => value!),
    covariance: plus(plus(times(Jw, transposed(Jw)), own), times(times(towards, all), transposed(towards)), -1),
    H,
    theta: times(times(inverted(H), JtC), y).map(([value]) => value!),
  };
}

/** Kriging of the problem about the theta that is most probable. */
function kriged(given: Problem, H: Rows, theta: readonly number[]): { mean: number[]; covariance: Float64Array } {
  const looks = given.looks.map((look, i) => ({
    ...look,
    residual: Float64Array.from({ length: 6 }, (_, axis) => {
      if (axis < 3 ? !look.white : !look.black) return 0;
      return given.seen[i]![axis]! - row(look, axis).reduce((sum, slope, j) => sum + slope * theta[j]!, 0);
    }),
  }));
  const kriging = new JointKriging(looks, given.asked, shared);
  const factor = Float64Array.from(H.flat());
  factorizeDense(factor, UNKNOWNS);
  const model = given.asked.flatMap((each) =>
    [0, 1, 2, 3, 4, 5].map((axis) => row(each, axis).reduce((sum, slope, j) => sum + slope * theta[j]!, 0)),
  );
  return {
    mean: model.map((value, i) => value + kriging.offset[i]!),
    covariance: kriging.covariance(given.asked, { inverse: inverseDense(factor, UNKNOWNS), count: UNKNOWNS }),
  };
}

test.each([
  [1, ['a']],
  [2, ['a', 'b', 'c']],
  [3, ['a', 'a', 'b']],
])('JointKriging is one Gaussian of theta, field and looks, given what was seen (%s)', (seed, cups) => {
  const given = problem(seed, 9, 3, cups);
  const { mean, covariance, H, theta } = textbook(given);
  const found = kriged(given, H, theta);
  for (const [i, value] of mean.entries()) expectClose(found.mean[i]!, value, 1e-8, `mean ${i}`);
  for (const [i, value] of covariance.flat().entries())
    expectClose(found.covariance[i]!, value, 1e-8, `covariance ${i}`);
});

describe('one look, theta known', () => {
  const point: CompositionPoint = { keys: Int32Array.of(0), values: Float64Array.of(1) };
  const look: LinearLook = {
    errors: { point, cup: 'a', means: 'instrument', axisSd: 0.4 },
    place: 0,
    columns: new Int32Array(0),
    slopes: new Float64Array(0),
    white: true,
    black: true,
    residual: Float64Array.of(2, 0, 0, 0, 0, -1),
    weight: 1,
  };
  const nothing = { columns: new Int32Array(0), slopes: new Float64Array(0) };
  const known = { inverse: new Float64Array(0), count: 0 };
  const asked = (at: number, cup?: string): JointKriging =>
    new JointKriging(
      [look],
      [
        {
          errors: {
            point: { keys: point.keys, values: Float64Array.of(at) },
            means: 'instrument',
            ...(cup ? { cup } : {}),
          },
        },
      ],
      shared,
    );

  test('the mean goes towards the look by the share of what it has seen that stays', () => {
    const [theory, doses, noise] = [0.65 ** 2, 0.35 ** 2, 0.4 ** 2];
    const share = (theory + doses) / (theory + doses + noise);
    expectClose(asked(1, 'a').offset[0]!, 2 * share, 1e-12, 'its own cup');
    expectClose(asked(1, 'a').offset[5]!, -share, 1e-12, 'its own cup, over black');
    expectClose(asked(1).offset[0]!, (2 * theory) / (theory + doses + noise), 1e-12, 'the same doses, poured anew');
    const half = Math.exp(-1 / (2 * 1.3 ** 2));
    expectClose(asked(2).offset[0]!, (2 * half * theory) / (theory + doses + noise), 1e-12, 'one off');
  });

  test('far from it the theory errs as much as it does, and nothing is added', () => {
    const far = asked(40);
    expect(Math.max(...far.offset.map(Math.abs))).toBeLessThan(1e-12);
    const covariance = far.covariance([nothing], known);
    for (let i = 0; i < 36; i++) expectClose(covariance[i]!, i % 7 === 0 ? 0.65 ** 2 : 0, 1e-12);
  });
});

describe('laws', () => {
  test('a covariance is one: no direction has less than nothing', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 0, max: 12 }), (seed, count) => {
        const given = problem(seed, count, 2, ['a', 'b']);
        const { H, theta } =
          count > 0 ? textbook(given) : { H: unitRows(), theta: new Array<number>(UNKNOWNS).fill(0) };
        const { covariance } = kriged(given, H, theta);
        const normal = normals(seed);
        for (let direction = 0; direction < 5; direction++) {
          const x = Array.from({ length: 12 }, normal);
          let square = 0;
          for (let i = 0; i < 12; i++) for (let j = 0; j < 12; j++) square += x[i]! * covariance[12 * i + j]! * x[j]!;
          expect(square).toBeGreaterThan(-1e-9);
        }
      }),
    );
  });

  test('the same look once more never widens anything', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 1, max: 6 }), (seed, count) => {
        const given = problem(seed, count, 1, ['a', 'b']);
        const again = {
          ...given,
          looks: [...given.looks, { ...given.looks[0]!, place: count }],
          seen: [...given.seen, given.seen[0]!],
        };
        const [one, two] = [given, again].map((each) => {
          const { H, theta } = textbook(each);
          return kriged(each, H, theta).covariance;
        });
        for (let i = 0; i < 6; i++) expect(two![7 * i]!).toBeLessThanOrEqual(one![7 * i]! + 1e-9);
      }),
    );
  });
});

function unitRows(): Rows {
  return Array.from({ length: UNKNOWNS }, (_, i) => Array.from({ length: UNKNOWNS }, (_u, j) => (i === j ? 1 : 0)));
}
