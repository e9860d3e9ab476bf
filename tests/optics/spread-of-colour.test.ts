import { expect, test } from 'vitest';
import { colourSpread } from '../../src/optics/spread-of-colour.ts';
import { expectClose } from './close.ts';

/** Standard normal numbers, the same each time: a linear congruential generator, then Box & Muller. */
function normals(count: number): Float64Array {
  let state = 12345;
  const uniform = (): number => {
    state = (Math.imul(1664525, state) + 1013904223) >>> 0;
    return (state + 0.5) / 4294967296;
  };
  return Float64Array.from(
    { length: count },
    () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform()),
  );
}

test.each([
  ['a ball', [1, 1, 1]],
  ['a disc', [1, 1, 0.01]],
  ['a needle', [4, 0.01, 0.01]],
  ['an egg', [3, 1, 0.3]],
])('colourSpread(covariance) agrees with counting for %s', (_, variances) => {
  const [x, y, z] = variances as [number, number, number];
  const draws = normals(60_000);
  const lengths = Float64Array.from({ length: 20_000 }, (_unused, i) =>
    Math.hypot(Math.sqrt(x) * draws[3 * i]!, Math.sqrt(y) * draws[3 * i + 1]!, Math.sqrt(z) * draws[3 * i + 2]!),
  ).sort();
  const { expected, median, bound90 } = colourSpread([x, 0, 0, 0, y, 0, 0, 0, z]);
  const mean = lengths.reduce((sum, length) => sum + length, 0) / lengths.length;
  expectClose(expected, mean, 0.03 * mean, 'expected');
  expectClose(median, lengths[10_000]!, 0.04 * median, 'median');
  expectClose(bound90, lengths[18_000]!, 0.03 * bound90, 'bound90');
});

test('colourSpread(covariance) does not depend on the axes, and is 0 for none', () => {
  const turned = colourSpread([1, 1, 0, 1, 1, 0, 0, 0, 0]);
  const straight = colourSpread([2, 0, 0, 0, 0, 0, 0, 0, 0]);
  expectClose(turned.bound90, straight.bound90, 1e-9);
  expect(colourSpread(new Float64Array(9))).toEqual({ expected: 0, median: 0, bound90: 0 });
});
