import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { filesBelow } from '../../folder-tree.ts';
import { ROOT } from '../../run-cupbook.ts';
import { beam, fluxes, henyeyGreenstein, slab } from './physics/adding-doubling.ts';
import {
  colourOfHex,
  difference,
  pairDifference,
  type SeenPair,
  seenColour,
  typedHex,
  WAVELENGTHS,
} from './physics/eye.ts';
import { fresnelFromInside } from './physics/fresnel.ts';
import { layerTable } from './physics/layer-table.ts';
import { litLayer, medium, seenOver } from './physics/lit-layer.ts';
import { seenPour } from './physics/pour.ts';
import { type Quadrature, radau } from './physics/quadrature.ts';
import { absorptionOf, scatteringOf, spectrumOf } from './physics/spectra.ts';

const POINTS = 24;
const EVERY = radau(POINTS, 0, 1);
const EVENLY = henyeyGreenstein(EVERY, 0);
const NORMAL = beam(EVERY, POINTS - 1);
const DIFFUSE = new Float64Array(POINTS).fill(1);

test('the physics of the foreign bench import nothing of the book but two tables of data', () => {
  const folder = join(ROOT, 'tests/measure/foreign/physics');
  const targets = filesBelow(folder).flatMap((name) =>
    [...readFileSync(join(folder, name), 'utf8').matchAll(/^\s*(?:import|export)\b[^'";]*?from\s*'([^']+)'/gm)].map(
      ([, target]) => target!,
    ),
  );
  expect(targets.length).toBeGreaterThan(10);
  expect(new Set(targets.filter((target) => !/^\.\/[^/]+$/.test(target)))).toEqual(
    new Set(['culori/fn', '../../../../src/tables/illuminants.ts', '../../../../src/tables/observer.ts']),
  );
});

test('radau(n) integrates every power up to 2n − 2, and its last point is the end', () => {
  for (const n of [2, 4, 7]) {
    const { cosines, weights } = radau(n, 0, 1);
    expect(cosines[n - 1]).toBe(1);
    for (let power = 0; power <= 2 * n - 2; power++)
      expect(cosines.reduce((sum, x, i) => sum + weights[i]! * x ** power, 0)).toBeCloseTo(1 / (power + 1), 10);
  }
});

// Source: van de Hulst (1980), as printed in the table of Wang, Jacques & Zheng (1995) for a slab; from memory.
test('slab: albedo 0.9, asymmetry 0.75, depth 2 gives the published 0.09739 back and 0.66096 through', () => {
  const { back, through } = fluxes(EVERY, slab(EVERY, henyeyGreenstein(EVERY, 0.75), 0.9, 2), NORMAL);
  expect(back).toBeCloseTo(0.09739, 4);
  expect(through).toBeCloseTo(0.66096, 4);
});

// Source: Giovanelli, Optica Acta 2:153 (1955): 0.2600, gloss included; from memory.
test('litLayer: bottomless, albedo 0.9, even scattering, index 1.5 gives the published 0.2600', () => {
  expect(0.04 + litLayer(medium(1.5, 0, POINTS), 900, 100).own).toBeCloseTo(0.26, 3);
});

/** Ambartsumian's H at the directions of a quadrature, each step half way to what the last one gives; nothing of `slab` is in it. */
function ambartsumian({ cosines, weights }: Quadrature, albedo: number): Float64Array {
  let H = new Float64Array(cosines.length).fill(1);
  for (let step = 0; step < 300; step++)
    H = cosines.map((mu, i) => {
      const inner = cosines.reduce((sum, other, j) => sum + (weights[j]! * other * H[j]!) / (mu + other), 0);
      return (H[i]! + 1 / (Math.sqrt(1 - albedo) + (albedo / 2) * inner)) / 2;
    });
  return H;
}

test('slab: bottomless with even scattering is 1 − H √(1 − albedo), for every direction of the light', () => {
  // Chandrasekhar, Radiative Transfer (1950): H(1) = 2.9078 without absorption; from memory.
  expect(ambartsumian(EVERY, 1).at(-1)).toBeCloseTo(2.9078, 2);
  for (const albedo of [0.3, 0.9, 0.99]) {
    const H = ambartsumian(EVERY, albedo);
    const deep = slab(EVERY, EVENLY, albedo, 3000);
    for (const direction of [POINTS - 1, POINTS / 2, 3])
      expect(fluxes(EVERY, deep, beam(EVERY, direction)).back).toBeCloseTo(
        1 - H[direction]! * Math.sqrt(1 - albedo),
        3,
      );
  }
});

// Hopf: 4/3 / (depth + 2 q), q = 0.710446 (any textbook of radiative transfer; from memory).
test('slab: deep, without absorption, lets 4/3 / (depth + 1.4209) of diffuse light through', () => {
  for (const depth of [8, 40]) {
    const { through } = fluxes(EVERY, slab(EVERY, EVENLY, 1, depth), DIFFUSE);
    expect(through).toBeCloseTo(4 / 3 / (depth + 2 * 0.710446), 5);
  }
});

test('slab: of what falls on it nothing is lost without absorption, and light goes back the way that it came', () => {
  const depth = fc.double({ min: 1e-4, max: 100, noNaN: true });
  const asymmetry = fc.double({ min: 0, max: 0.8, noNaN: true });
  fc.assert(
    fc.property(depth, asymmetry, fc.nat(POINTS - 1), fc.nat(POINTS - 1), (deep, g, i, j) => {
      const layer = slab(EVERY, henyeyGreenstein(EVERY, g), 1, deep);
      const { back, through } = fluxes(EVERY, layer, beam(EVERY, i));
      expect(back + through).toBeCloseTo(1, 7);
      const { cosines, weights } = EVERY;
      const from = layer.reflection[i * POINTS + j]! / (cosines[j]! * weights[j]!);
      const to = layer.reflection[j * POINTS + i]! / (cosines[i]! * weights[i]!);
      expect(from / to).toBeCloseTo(1, 5);
    }),
    { numRuns: 30 },
  );
});

test('slab: a shallow one scatters half of what it meets back, and one that only absorbs follows Lambert', () => {
  const { back, through } = fluxes(EVERY, slab(EVERY, EVENLY, 0.8, 1e-4), NORMAL);
  expect(back / 0.4e-4).toBeCloseTo(1, 2);
  expect((1 - through) / 0.6e-4).toBeCloseTo(1, 2);
  const dark = slab(EVERY, EVENLY, 0, 1.7);
  expect(fluxes(EVERY, dark, NORMAL).through).toBeCloseTo(Math.exp(-1.7), 3);
  expect(fluxes(EVERY, dark, NORMAL).back).toBe(0);
});

test('fresnelFromInside and a layer of nothing throw diffuse light back as their integral says', () => {
  expect(fresnelFromInside(1.5, 1)).toBeCloseTo(0.04, 12);
  expect(fresnelFromInside(1.5, 0.7)).toBe(1);
  // 1 − (1 − k1) / n², k1 = 0.09178 of diffuse light from air (Duntley 1942, from memory).
  expect(litLayer(medium(1.5, 0, 40), 0, 0).underneath).toBeCloseTo(1 - (1 - 0.09178) / 1.5 ** 2, 3);
});

test('litLayer: over a perfect card, what does not absorb gives back all that its surface lets in', () => {
  const plastic = medium(1.49, 0.6, 8);
  const letIn = 1 - fresnelFromInside(1.49, 1);
  for (const scattering of [1e-4, 0.1, 3, 100])
    expect(seenOver(litLayer(plastic, scattering, 0), 1)).toBeCloseTo(letIn, 6);
});

test('the table is within 0.0001 of what it stands for, and eight directions within 0.002 of many', () => {
  const plastic = medium(1.49, 0.6, 8);
  const many = medium(1.49, 0.6, POINTS);
  const table = layerTable(plastic);
  const logarithm = (from: number, to: number): fc.Arbitrary<number> =>
    fc.double({ min: Math.log(from), max: Math.log(to), noNaN: true }).map(Math.exp);
  fc.assert(
    fc.property(
      logarithm(1e-4, 500),
      logarithm(1e-5, 100),
      fc.constantFrom(0.04, 0.86),
      (scattering, absorption, card) => {
        const exact = seenOver(litLayer(plastic, scattering, absorption), card);
        expect(Math.abs(seenOver(table(scattering, absorption), card) - exact)).toBeLessThan(1e-4);
        expect(Math.abs(seenOver(litLayer(many, scattering, absorption), card) - exact)).toBeLessThan(2e-3);
      },
    ),
    { numRuns: 60 },
  );
});

test('seenColour: grey is grey, a perfect white is 100, and a hex is that of its colour', () => {
  const white = seenColour(WAVELENGTHS.map(() => 1));
  expect(white.L).toBeCloseTo(100, 10);
  const grey = seenColour(WAVELENGTHS.map(() => 0.18418651851244416));
  expect(grey.L).toBeCloseTo(50, 6);
  expect(Math.hypot(grey.a, grey.b)).toBeCloseTo(0, 9);
  expect(difference(grey, grey)).toBe(0);
  expect(typedHex(grey)).toBe('#777777');
  expect(difference(colourOfHex('#777777'), grey)).toBeLessThan(0.2);
});

test('seenPour: more of what absorbs is darker, more of what scatters hides more, and crowded it scatters less', () => {
  const none = spectrumOf(() => 0);
  const plastic = { absorption: none, scattering: none };
  const dark = { absorption: absorptionOf([{ kind: 'floor', height: 1 }]), scattering: none };
  const cloudy = { absorption: none, scattering: scatteringOf(40, 0.8) };
  const poured = (substance: typeof dark, gramsPerMl: number): SeenPair =>
    seenPour({ plastic, contents: [{ substance, gramsPerMl }], thicknessMm: 6 });
  expect(poured(dark, 0.1).white.L).toBeLessThan(poured(dark, 0.01).white.L);
  expect(poured(cloudy, 0.05).black.L).toBeGreaterThan(poured(cloudy, 0.005).black.L);
  // Twice as much of it, in a layer half as thick, were the same but for the crowd.
  const crowded = seenPour({ plastic, contents: [{ substance: cloudy, gramsPerMl: 0.1 }], thicknessMm: 3 });
  expect(crowded.black.L).toBeLessThan(poured(cloudy, 0.05).black.L);
  expect(pairDifference(crowded, crowded)).toBe(0);
});
