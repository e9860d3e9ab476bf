import { expect, test } from 'vitest';
import { minimize } from '../../../src/optics/fit/minimize.ts';
import { expectAllClose } from '../close.ts';

const OPTIONS = { maxIterations: 500, tolerance: 1e-14, memory: 10 };

test('minimize(objective, start) finds the end of a bent valley', () => {
  // H. H. Rosenbrock, Comput. J. 3:175 (1960): the minimum is 0 at (1, 1).
  const found = minimize(
    (x, gradient) => {
      const [a, b] = [x[0]!, x[1]!];
      gradient[0] = -400 * a * (b - a * a) - 2 * (1 - a);
      gradient[1] = 200 * (b - a * a);
      return 100 * (b - a * a) ** 2 + (1 - a) ** 2;
    },
    Float64Array.of(-1.2, 1),
    OPTIONS,
  );
  expectAllClose(found.x, [1, 1], 1e-5);
  expect(found.converged).toBe(true);
  expect(found.iterations).toBeLessThan(100);
});

test('minimize(objective, start) finds the middle of a bowl that is ten thousand times longer than wide', () => {
  const found = minimize(
    (x, gradient) => {
      let value = 0;
      for (let i = 0; i < x.length; i++) {
        const stiff = 10 ** ((4 * i) / (x.length - 1));
        gradient[i] = stiff * (x[i]! - i);
        value += (stiff * (x[i]! - i) ** 2) / 2;
      }
      return value;
    },
    new Float64Array(20),
    OPTIONS,
  );
  expect(found.value).toBeLessThan(1e-8);
});

test('minimize(objective, start) leaves the start as it was, and steps back from where the objective is no number', () => {
  const start = Float64Array.of(5);
  const found = minimize(
    (x, gradient) => {
      gradient[0] = 1 - 1 / x[0]!;
      return x[0]! - Math.log(x[0]!);
    },
    start,
    OPTIONS,
  );
  expect(start[0]).toBe(5);
  expectAllClose(found.x, [1], 1e-5);
});

test('minimize(objective, start) says when it had to stop early', () => {
  const slow = minimize(
    (x, gradient) => {
      gradient[0] = 4 * (x[0]! - 3) ** 3;
      return (x[0]! - 3) ** 4;
    },
    Float64Array.of(-50),
    { ...OPTIONS, maxIterations: 2 },
  );
  expect(slow.converged).toBe(false);
});

test('minimize(objective, start) refuses a start where the objective is no number', () => {
  expect(() => minimize(() => Number.NaN, Float64Array.of(1), OPTIONS)).toThrow(RangeError);
});
