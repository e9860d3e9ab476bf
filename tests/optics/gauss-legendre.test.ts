import { expect, test } from 'vitest';
import { GAUSS_NODES, GAUSS_WEIGHTS } from '../../src/optics/gauss-legendre.ts';
import { expectClose } from './close.ts';

/** Legendre's polynomials by their recurrence: P6 and its derivative. */
function legendre6(x: number): { value: number; slope: number } {
  let before = 1;
  let value = x;
  for (let n = 1; n < 6; n++) [before, value] = [value, ((2 * n + 1) * x * value - n * before) / (n + 1)];
  return { value, slope: (6 * (x * value - before)) / (x * x - 1) };
}

test('GAUSS_NODES are the roots of P6, and GAUSS_WEIGHTS are 2 / ((1 − x²) P6′²)', () => {
  expect(GAUSS_NODES).toHaveLength(6);
  GAUSS_NODES.forEach((x, i) => {
    const { value, slope } = legendre6(x);
    expectClose(value, 0, 1e-14, `P6(${x})`);
    expectClose(GAUSS_WEIGHTS[i]!, 2 / ((1 - x * x) * slope * slope), 1e-14, `weight ${i}`);
  });
});

test.each(Array.from({ length: 12 }, (_, power) => power))('the rule integrates x^%i exactly', (power) => {
  const sum = GAUSS_NODES.reduce((total, x, i) => total + GAUSS_WEIGHTS[i]! * x ** power, 0);
  expectClose(sum, power % 2 === 0 ? 2 / (power + 1) : 0, 1e-15);
});
