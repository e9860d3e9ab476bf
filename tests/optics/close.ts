import { expect } from 'vitest';

/** Fails unless two numbers agree within a tolerance, and then shows both and how far they are apart. */
export function expectClose(actual: number, expected: number, tolerance: number, what = 'value'): void {
  const apart = Math.abs(actual - expected);
  if (!(apart <= tolerance)) {
    expect.fail(`${what}: expected ${expected}, got ${actual}, apart by ${apart}, more than ${tolerance}`);
  }
}

/** `expectClose` for every number of two lists. */
export function expectAllClose(
  actual: ArrayLike<number>,
  expected: ArrayLike<number>,
  tolerance: number,
  what = 'value',
): void {
  expect(actual.length, `${what}: length`).toBe(expected.length);
  for (let i = 0; i < expected.length; i++) expectClose(actual[i]!, expected[i]!, tolerance, `${what} ${i}`);
}

/** Half a unit of the last digit that is printed in a decimal number. */
export function halfLastDigit(printed: string): number {
  const decimals = printed.split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** -decimals;
}
