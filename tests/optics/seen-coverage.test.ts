import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { appearance } from '../../src/optics/appearance.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { flakeArea, flakeCoverage, flakesPerMm, type SpreadFlake } from '../../src/optics/flake.ts';
import { flakeReflectance } from '../../src/optics/flake-colour.ts';
import { reflectancesInfinite } from '../../src/optics/kubelka-munk.ts';
import { NO_PATH, USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { plasticConstants } from '../../src/optics/plastic.ts';
import { flakeSight, LEAST_CONTRAST, type SeenFlake, seenCoverage, seenShare } from '../../src/optics/seen-coverage.ts';
import { constantSpectrum, mapSpectrum } from '../../src/optics/spectrum.ts';
import { alongPath, type Body, type Layer } from '../../src/optics/stack.ts';
import { expectClose } from './close.ts';
import { firstMet, type Plates, sequence } from './random-plates.ts';

const COPPER = flakeReflectance('#b8693a');
const BLACK = flakeReflectance('#1d1c1b');

/** A body that is darker at one end of the spectrum. */
function sloped(K: number, S: number): Body {
  return {
    absorption: mapSpectrum(constantSpectrum(K), (value, band) => value * (1.6 - band / 30)),
    scattering: constantSpectrum(S),
  };
}

/** What a flake at a depth counts for, by the appearances of the book: ΔE00 from the body over the card where that is more. */
function countsFor(body: Body, thickness: number, reflectance: ArrayLike<number>): (depth: number) => number {
  const met = alongPath([{ ...body, thickness }], USUAL_OPTICS.path)[0]!;
  const { overWhite, overBlack } = appearance([{ ...body, thickness }], { optics: USUAL_OPTICS });
  const face = Array.from(reflectance);
  const apart = (depth: number): number => {
    const flake = appearance([{ ...met, thickness: depth }], {
      optics: { ...USUAL_OPTICS, backings: { white: [...face], black: [...face] }, path: NO_PATH },
    });
    return Math.max(deltaE00(flake.overWhite.lab, overWhite.lab), deltaE00(flake.overWhite.lab, overBlack.lab));
  };
  const atFace = Math.max(apart(0), LEAST_CONTRAST);
  return (depth) => Math.min(1, apart(depth) / atFace);
}

const seenOf = (layers: readonly Layer[]): readonly SeenFlake[] => seenCoverage(layers, USUAL_OPTICS).flat();
const together = (layers: readonly Layer[]): number => seenOf(layers).reduce((sum, { coverage }) => sum + coverage, 0);

describe('seenCoverage(layers)', () => {
  test('is what an eye finds among random plates, the first one met weighed by how it stands out there, within three standard errors', () => {
    const random = sequence(20_261_130);
    const [thickness, lines, steps] = [7, 20_000, 700];
    const body = sloped(0.09, 0.25);
    const kinds: readonly (Plates & { readonly reflectance: Float64Array })[] = [
      { shape: 'hex', size: 1.4, perMl: 70, reflectance: COPPER },
      { shape: 'square', size: 0.9, perMl: 150, reflectance: BLACK },
    ];
    const tables = kinds.map(({ reflectance }) => {
      const counts = countsFor(body, thickness, reflectance);
      return Array.from({ length: steps + 1 }, (_, step) => counts((step * thickness) / steps));
    });
    const sums = kinds.map(() => ({ sum: 0, squares: 0 }));
    for (let line = 0; line < lines; line++) {
      const { depth, kind } = firstMet(kinds, thickness, random);
      if (kind < 0) continue;
      const counts = tables[kind]![Math.round((depth * steps) / thickness)]!;
      sums[kind]!.sum += counts;
      sums[kind]!.squares += counts * counts;
    }
    const flakes = kinds.map(
      ({ shape, size, perMl, reflectance }): SpreadFlake => ({
        perMm: ((perMl / 1000) * flakeArea(shape, size)) / 2,
        reflectance,
      }),
    );
    for (const [index, { coverage }] of seenOf([{ ...body, thickness, flakes }]).entries()) {
      const mean = sums[index]!.sum / lines;
      const error = Math.sqrt((sums[index]!.squares / lines - mean * mean) / lines);
      expect(error).toBeLessThan(0.004);
      expectClose(mean, coverage, 3 * error, `kind ${index}`);
    }
  });

  test('is the sum over thin slices of a layer, to 1e-3', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2.5, max: 0.8, noNaN: true }),
        fc.double({ min: -2.5, max: 0.8, noNaN: true }),
        fc.double({ min: 0.005, max: 1, noNaN: true }),
        fc.constantFrom(COPPER, BLACK, constantSpectrum(0.6)),
        (K, S, perMm, reflectance) => {
          const [body, thickness, slices] = [sloped(10 ** K, 10 ** S), 8, 2000];
          const counts = countsFor(body, thickness, reflectance);
          let sum = 0;
          for (let slice = 0; slice < slices; slice++) {
            const depth = ((slice + 0.5) * thickness) / slices;
            sum += ((perMm * thickness) / slices) * Math.exp(-perMm * depth) * counts(depth);
          }
          const found = together([{ ...body, thickness, flakes: [{ perMm, reflectance }] }]);
          expectClose(found, sum, 1e-3);
        },
      ),
      { numRuns: 12 },
    );
  });

  test('is the true coverage, or nearly, where the body is clear', () => {
    const flakes = [{ perMm: flakesPerMm(1.2 / 120, { shape: 'hex', sizeMm: 1.016 }), reflectance: COPPER }];
    const seen = together([{ ...plasticConstants('clear'), thickness: 11, flakes }]);
    const all = flakeCoverage(flakes, 11);
    expect(seen).toBeLessThanOrEqual(all);
    expect(seen).toBeGreaterThan(0.95 * all);
  });

  test('takes no flake for more than it is, kind by kind, and all kinds together for no more than the whole', () => {
    const amount = fc.double({ min: 0, max: 3, noNaN: true });
    fc.assert(
      fc.property(amount, amount, amount, amount, fc.double({ min: 0.5, max: 30, noNaN: true }), (K, S, a, b, X) => {
        const flakes = [
          { perMm: a, reflectance: COPPER },
          { perMm: b, reflectance: BLACK },
        ];
        const seen = seenOf([{ ...sloped(K, S), thickness: X, flakes }]);
        const all = flakeCoverage(flakes, X);
        for (const [index, { coverage }] of seen.entries())
          expect(coverage).toBeLessThanOrEqual((a + b === 0 ? 0 : (all * flakes[index]!.perMm) / (a + b)) + 1e-3);
      }),
      { numRuns: 40 },
    );
  });

  test('doesn’t mind a kind that is given as two halves, nor a layer as two', () => {
    const body = sloped(0.2, 0.4);
    const half = { perMm: 0.06, reflectance: COPPER };
    const black = { perMm: 0.05, reflectance: BLACK };
    const whole = together([{ ...body, thickness: 6, flakes: [{ ...half, perMm: 0.12 }, black] }]);
    expectClose(together([{ ...body, thickness: 6, flakes: [half, black, half] }]), whole, 1e-9);
    const part = { ...body, flakes: [half, half, black] };
    expectClose(
      together([
        { ...part, thickness: 1.5 },
        { ...part, thickness: 4.5 },
      ]),
      whole,
      1e-3,
    );
  });

  test('grows with the flake that is put in, wherever a deeper flake stands out less', () => {
    const amount = fc.double({ min: 0.01, max: 2, noNaN: true });
    fc.assert(
      fc.property(amount, amount, fc.constantFrom(COPPER, BLACK), (K, S, reflectance) => {
        const sight = flakeSight([{ ...sloped(K, S), thickness: 8 }], 0, reflectance, 4, USUAL_OPTICS);
        fc.pre(sight.steps.every(({ counts }, step) => step === 0 || counts <= sight.steps[step - 1]!.counts));
        let before = 0;
        for (const perMm of [0.01, 0.03, 0.1, 0.3, 1, 3]) {
          const seen = seenShare(sight, perMm);
          expect(seen).toBeGreaterThan(before);
          before = seen;
        }
      }),
      { numRuns: 30 },
    );
  });

  test('is nothing without flake, and the whole face where flake lies upon flake', () => {
    const body = sloped(0.3, 0.5);
    expect(seenCoverage([{ ...body, thickness: 6 }], USUAL_OPTICS)).toEqual([[]]);
    expect(together([{ ...body, thickness: 6, flakes: [{ perMm: 0, reflectance: COPPER }] }])).toBe(0);
    expectClose(together([{ ...body, thickness: 6, flakes: [{ perMm: 1e4, reflectance: COPPER }] }]), 1, 1e-2);
  });

  test('is next to nothing for a flake of the plastic’s own colour', () => {
    const body = sloped(1, 2);
    const met = alongPath([{ ...body, thickness: 12 }], USUAL_OPTICS.path)[0]!;
    const own = reflectancesInfinite(met.absorption, met.scattering);
    const [seen] = seenOf([{ ...body, thickness: 12, flakes: [{ perMm: 0.3, reflectance: own }] }]);
    expect(seen!.contrast).toBeLessThan(0.05);
    expect(seen!.coverage).toBeLessThan(0.03);
  });

  test('looks through what lies in front: less flake of the far cup, and none past a solid one', () => {
    const flakes = [{ perMm: 0.1, reflectance: COPPER }];
    const far = { ...sloped(0.05, 0.1), thickness: 4, flakes };
    const front = (S: number): number => together([{ ...sloped(0.4, S), thickness: 4 }, far]);
    expect(front(0.02)).toBeGreaterThan(front(0.2));
    expect(front(4)).toBeLessThan(0.001);
  });
});
