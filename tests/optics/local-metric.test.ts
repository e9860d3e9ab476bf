import fc from 'fast-check';
import { expect, test } from 'vitest';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { appliedMetric, inverseMetric, localMetric } from '../../src/optics/local-metric.ts';
import { expectClose } from './close.ts';

const labs = fc.record({
  L: fc.double({ min: 5, max: 95, noNaN: true }),
  a: fc.double({ min: -60, max: 60, noNaN: true }),
  b: fc.double({ min: -60, max: 60, noNaN: true }),
});
const steps = fc.tuple(...[0, 1, 2].map(() => fc.double({ min: -1, max: 1, noNaN: true })));

test('localMetric(lab) measures a small step as deltaE00 does', () => {
  fc.assert(
    fc.property(labs, steps, (lab, [dL, da, db]) => {
      const size = 0.3;
      const step = [dL! * size, da! * size, db! * size];
      const length = Math.hypot(...appliedMetric(localMetric(lab), step[0]!, step[1]!, step[2]!));
      const straight = deltaE00(lab, { L: lab.L + step[0]!, a: lab.a + step[1]!, b: lab.b + step[2]! });
      expectClose(length, straight, 0.03 * straight + 0.005, `at ${JSON.stringify(lab)}`);
    }),
  );
});

test('localMetric(lab) counts a step of lightness in mid grey as it is', () => {
  expectClose(localMetric({ L: 50, a: 0, b: 0 })[0]!, 1, 1e-4);
  expect(localMetric({ L: 50, a: 0, b: 0 }).length).toBe(9);
});

test('inverseMetric is what appliedMetric undoes', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 3, maxLength: 3 }), (x) => {
      const M = localMetric({ L: 40, a: 10, b: -45 });
      const back = inverseMetric(M);
      const step = [0, 1, 2].map((i) => x.reduce((sum, value, j) => sum + back[3 * i + j]! * value, 0));
      for (const [i, value] of appliedMetric(M, step[0]!, step[1]!, step[2]!).entries())
        expectClose(value, x[i]!, 1e-9);
    }),
  );
});

test('localMetric(lab) is the limit of deltaE00', () => {
  fc.assert(
    fc.property(labs, steps, (lab, [dL, da, db]) => {
      const size = 1e-3;
      const length = Math.hypot(...appliedMetric(localMetric(lab), dL!, da!, db!));
      const [forth, back] = [1, -1].map((sign) =>
        deltaE00(lab, { L: lab.L + sign * size * dL!, a: lab.a + sign * size * da!, b: lab.b + sign * size * db! }),
      );
      expectClose(
        Math.hypot(forth!, back!) / Math.SQRT2 / size,
        length,
        1e-3 * length + 1e-4,
        `at ${JSON.stringify(lab)}`,
      );
    }),
  );
});
