import fc from 'fast-check';
import { expect, test } from 'vitest';
import { baseOfCup } from '../../src/matching/mix/cup-model.ts';
import { correctModel, NO_CORRECTION, type Observation } from '../../src/matching/rounds/correct-model.ts';
import { type MatchMaterial, withStrengths } from '../../src/matching/shelf/match-material.ts';
import type { Lab } from '../../src/optics/cielab.ts';
import { bodyViews } from '../../src/optics/cup-body.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { expectClose } from '../optics/close.ts';
import { CLEAR, SHELF } from './sample-shelf.ts';

const shelf = new Map([CLEAR, ...SHELF].map((material) => [material.id, material]));
const byName = (name: string): MatchMaterial => shelf.get(name)!;

/** What is seen of a cup whose materials have other strengths. */
function observed(
  materials: Readonly<Record<string, number>>,
  strengths: Readonly<Record<string, number>>,
): Observation {
  const cup = { plastics: { clear: 100 }, materials };
  const real = withStrengths(shelf, strengths);
  return {
    cup,
    thicknessMm: 6,
    seen: bodyViews(baseOfCup(cup, (name) => real.get(name)!, USUAL_OPTICS).mix, 6, USUAL_OPTICS),
  };
}

const strength = fc.double({ min: 0.75, max: 1.3, noNaN: true });

test('correctModel(rounds) learns the strengths that the materials have', () => {
  fc.assert(
    fc.property(strength, strength, (brown, pearl) => {
      const truth = { 'brown-dye': brown, 'white-pearl': pearl };
      const rounds = [
        observed({ 'brown-dye': 0.2, 'white-pearl': 0.3 }, truth),
        observed({ 'brown-dye': 0.4, 'white-pearl': 0.3 }, truth),
      ];
      const found = correctModel(rounds, byName, USUAL_OPTICS);
      expectClose(found.strengths['brown-dye']!, brown, 0.06, 'brown');
      expectClose(found.strengths['white-pearl']!, pearl, 0.08, 'pearl');
      expect(found.after).toBeLessThan(0.5);
      expect(found.after).toBeLessThanOrEqual(found.before + 1e-6);
    }),
    { numRuns: 30 },
  );
});

test('correctModel(rounds) of rounds that were as predicted changes nothing', () => {
  const found = correctModel([observed({ ochre: 0.2, 'green-dye': 0.3 }, {})], byName, USUAL_OPTICS);
  for (const value of Object.values(found.strengths)) expectClose(value, 1, 1e-3);
  expectClose(found.offWhite.L, 0, 0.01);
  expectClose(found.before, 0, 1e-6);
});

test('correctModel(rounds) stays within half and one and a half times a strength, whatever was seen', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 100, noNaN: true }), fc.double({ min: -80, max: 80, noNaN: true }), (L, a) => {
      const round = observed({ 'brown-dye': 0.2, white: 0.3 }, {});
      const found = correctModel([{ ...round, seen: { overWhite: { L, a, b: 0 } } }], byName, USUAL_OPTICS);
      for (const value of Object.values(found.strengths)) {
        expect(value).toBeGreaterThanOrEqual(0.5 - 1e-9);
        expect(value).toBeLessThanOrEqual(1.5 + 1e-9);
      }
      expect(Number.isFinite(found.offWhite.L + found.offWhite.a + found.offBlack.L)).toBe(true);
    }),
    { numRuns: 50 },
  );
});

test('correctModel(rounds) leaves the view over black alone where nothing was seen over black', () => {
  const round = observed({ 'brown-dye': 0.2 }, { 'brown-dye': 1.2 });
  const { offBlack } = correctModel([{ ...round, seen: { overWhite: round.seen.overWhite! } }], byName, USUAL_OPTICS);
  expectClose(Math.hypot(offBlack.L, offBlack.a, offBlack.b), 0, 1e-9);
});

test('correctModel(rounds) makes of the last cup what was seen of it, as nearly as one can see', () => {
  const lab = fc.record({
    L: fc.double({ min: -4, max: 4, noNaN: true }),
    a: fc.double({ min: -3, max: 3, noNaN: true }),
  });
  fc.assert(
    fc.property(lab, lab, ({ L, a }, last) => {
      const shown = (materials: Readonly<Record<string, number>>, by: { L: number; a: number }): Observation => {
        const round = observed(materials, {});
        const moved = (view: Lab): Lab => ({ L: view.L + by.L, a: view.a + by.a, b: view.b });
        const { overWhite, overBlack } = round.seen;
        return { ...round, seen: { overWhite: moved(overWhite!), overBlack: moved(overBlack!) } };
      };
      const rounds = [
        shown({ 'brown-dye': 0.05, 'white-pearl': 0.8 }, { L, a }),
        shown({ 'brown-dye': 0.1, 'white-pearl': 0.8 }, last),
      ];
      const coarse = (name: string): MatchMaterial => ({ ...byName(name), expectedDeltaE: 12 });
      expect(correctModel(rounds, coarse, USUAL_OPTICS).miss).toBeLessThan(1.4);
    }),
    { numRuns: 40 },
  );
});

test('correctModel(rounds) is off by no more than the shelf is expected to be, and says what that misses', () => {
  const round = observed({ 'brown-dye': 0.2, white: 0.3 }, {});
  const found = correctModel([{ ...round, seen: { overWhite: { L: 20, a: 60, b: -40 } } }], byName, USUAL_OPTICS);
  // The shelf's materials are expected to be off by 2.
  expect(Math.abs(found.offWhite.L)).toBeLessThanOrEqual(2 + 1e-9);
  expect(Math.abs(found.offWhite.a)).toBeLessThanOrEqual(3 + 1e-9);
  expect(Math.abs(found.offWhite.b)).toBeLessThanOrEqual(3 + 1e-9);
  expect(found.miss).toBeGreaterThan(10);
});

test('correctModel([]) is no correction', () => {
  expect(correctModel([], byName, USUAL_OPTICS)).toBe(NO_CORRECTION);
  expect(correctModel([{ ...observed({}, {}), seen: {} }], byName, USUAL_OPTICS)).toBe(NO_CORRECTION);
});
