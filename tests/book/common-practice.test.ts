/**
 * Where makers' figures lie, and whether this book's tables and the materials of the demo book lie there too.
 *
 * Source of every range: common practice, no source, from memory. The supplier's sheet says what holds of a material.
 */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { usualFlakeBulk, usualFlakeLoad } from '../../src/book/shelf/flake-usual.ts';
import { LEAST_POURING, POURING } from '../../src/cup/heat-limit.ts';
import { usualMost } from '../../src/matching/shelf/together.ts';
import { appearance } from '../../src/optics/appearance.ts';
import { cupBody, type OpticalMaterial } from '../../src/optics/cup-body.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { isOpticalFault } from '../../src/optics/fault.ts';
import { flakeMass } from '../../src/optics/flake.ts';
import { fromColourAndKind } from '../../src/optics/from-colour-and-kind.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { FLAKE_FILM_DENSITY } from '../../src/tables/flake-film.ts';
import { DROP_ML, POWDER_BULK, SOLID_ADDITIVE_BULK, WHITE_LIQUID_DENSITY } from '../../src/tables/material-defaults.ts';
import { STREAK_THICKNESS, SWIRL_SHOWS } from '../../src/tables/patterns.ts';
import { defined } from '../../src/values/defined.ts';
import { required } from '../../src/values/required.ts';
import { WHOLE_DEMO_BOOK } from '../render/demo-book.ts';
import { bookWith } from './sample.ts';

const INCH = 25.4;
/** ml */
const FOUR_FL_OZ = 4 * 29.5735295625;

const { molds, recipes } = WHOLE_DEMO_BOOK;
/** The shelf as its files have it: what looks have taught is of this maker's own bottles. */
const materials = WHOLE_DEMO_BOOK.materials.map((material) => ({
  ...material,
  ...(material.label ? { constants: material.label } : {}),
}));
const SUPPLE = required(materials, 'supple');

/** Of clear plastic with so much of a material, g/ml. */
function looks(material: OpticalMaterial, gramsPerMl: number, thickness: number): ReturnType<typeof appearance> {
  const shelf = { supple: SUPPLE, it: material } as Readonly<Record<string, OpticalMaterial>>;
  const body = cupBody(
    { plastics: [{ material: 'supple', fraction: 1 }], contents: [{ material: 'it', gramsPerMl }] },
    (id) => shelf[id]!,
    USUAL_OPTICS,
  );
  return appearance(body, { thickness, optics: USUAL_OPTICS });
}
/** Of so many drops in 4 fl oz. */
function dropped(id: string, drops: number, thickness = 10): ReturnType<typeof appearance> {
  const material = required(materials, id);
  return looks(material, (drops * material.gramsPerDrop!) / FOUR_FL_OZ, thickness);
}
/** Of so much by mass of the plastic. */
const percent = (id: string, mass: number, thickness: number): ReturnType<typeof appearance> =>
  looks(required(materials, id), (mass / 100) * SUPPLE.density, thickness);

const within = (value: number, [least, most]: readonly [number, number]): void => {
  expect(value).toBeGreaterThanOrEqual(least);
  expect(value).toBeLessThanOrEqual(most);
};

describe('what a maker’s dose does', () => {
  test.each(['frost-pearl', 'ivory-pearl'])('0.3 percent of %s half hides what is behind a body of 11 mm', (id) => {
    within(percent(id, 0.3, 11).contrastRatio, [0.45, 0.7]);
  });
  test.each(['frost-pearl', 'ivory-pearl'])('1 percent of %s is solid there', (id) => {
    expect(percent(id, 1, 11).contrastRatio).toBeGreaterThan(0.75);
  });
  test('a pearl of which one colour is known hides as the measured and photographed ones do', () => {
    const known = fromColourAndKind({
      optics: USUAL_OPTICS,
      colour: '#dcdcd1',
      kind: 'pearl',
      dose: 0.01 * SUPPLE.density,
    });
    if (isOpticalFault(known)) throw new Error(known.message);
    for (const load of [0.15, 0.3, 0.6]) {
      const table = looks(known, (load / 100) * SUPPLE.density, 11).contrastRatio;
      for (const id of ['frost-pearl', 'ivory-pearl'])
        within(percent(id, load, 11).contrastRatio, [table - 0.1, table + 0.1]);
    }
  });
  // Mica flakes are about half a micrometre thick; each returns 0.15 to 0.3 of the light, and one lying any way shows half of its face.
  test('a pearl scatters as thin mica lying any way does', () => {
    const facesPerMm = (thicknessMm: number): number => (0.01 * SUPPLE.density) / 2.8 / 2 / thicknessMm;
    const scattering = 0.01 * SUPPLE.density * required(materials, 'frost-pearl').constants!.scattering[17]!;
    within(scattering, [0.15 * facesPerMm(0.0008), 0.3 * facesPerMm(0.0004)]);
  });

  test('5 drops of white are nearly solid at 10 mm, and one is milk', () => {
    within(dropped('chalk', 5).contrastRatio, [0.8, 0.95]);
    within(dropped('chalk', 1).contrastRatio, [0.3, 0.65]);
  });
  test('1 to 3 drops of black are smoke, and 10 to 25 solid', () => {
    within(dropped('lamp-black', 1).overWhite.lab.L, [55, 80]);
    within(dropped('lamp-black', 3).overWhite.lab.L, [30, 60]);
    expect(dropped('lamp-black', 10).overWhite.lab.L).toBeLessThan(25);
  });
  // Peat is known from films, which are cloudy: in clear plastic it absorbs less.
  const DYES = [
    ['straw', 8],
    ['sedge', 8],
    ['rowan', 8],
    ['mill-blue', 8],
    ['sloe', 8],
    ['peat', 5],
  ] as const;
  test.each(DYES)('3 to 20 drops of %s are a colour, and no mud', (id, least) => {
    const plain = dropped(id, 0).overWhite.lab;
    expect(deltaE00(plain, dropped(id, 3).overWhite.lab)).toBeGreaterThan(least);
    expect(dropped(id, 20).overWhite.lab.L).toBeGreaterThan(20);
  });
  test('0.2 to 0.8 % of a fluorescent powder is bright', () => {
    for (const id of ['flood-yellow', 'mallow-pink']) {
      const { a, b } = percent(id, 0.4, 10).overWhite.lab;
      expect(Math.hypot(a, b)).toBeGreaterThan(40);
    }
  });
  test('20 % of ground salt is a fog in a chip of 2.5 mm', () => {
    within(percent('fine-salt', 20, 2.5).contrastRatio, [0.2, 0.4]);
  });
});

describe('the demo book’s recipes', () => {
  /** Per cent of the plastic's mass. */
  const load = (recipe: string, name: string, ...wanted: readonly string[]): number => {
    const { contents, plastics } = required(recipes, recipe).cups.find((cup) => cup.name === name)!;
    const { density } = required(materials, plastics[0]!.material);
    return contents
      .filter(({ material }) => wanted.includes(material))
      .reduce((sum, { gramsPerMl }) => sum + (100 * gramsPerMl) / density, 0);
  };

  test.each([
    ['weir-foam', 'belly', ['ivory-pearl', 'frost-pearl'], [0.15, 0.6]],
    ['alder-smoke', 'belly', ['ivory-pearl', 'frost-pearl'], [0.15, 0.6]],
    ['eel-bridge', 'belly', ['ivory-pearl', 'frost-pearl'], [0.15, 0.6]],
    ['rowan-week', 'body', ['heat-guard'], [0.3, 1]],
    ['borrowed-waders', 'body', ['softener'], [5, 8]],
    ['treasurers-gloves', 'body', ['flood-yellow'], [0.2, 1]],
    ['duckweed-sunday', 'body', ['kelp-scent'], [0.99, 3]],
  ] as const)('%s: the %s holds a usual dose of %s', (recipe, cup, wanted, range) => {
    within(load(recipe, cup, ...wanted), range);
  });
  test.each([
    ['minnow-3', [3, 7]],
    ['stick-4', [5, 8]],
    ['ribbon-worm-6', [5, 9]],
    ['grub-2', [1.5, 3]],
  ] as const)('a bait of %s weighs what such baits weigh, g', (id, range) => {
    within(required(molds, id).cavityMl * SUPPLE.density, range);
  });
  test.each([
    ['supple', [1, 1.1]],
    ['stout', [1.05, 1.12]],
    ['lifter', [0.85, 0.97]],
  ] as const)('%s is as dense as such plastic, g/ml', (id, range) => {
    within(required(materials, id).density, range);
  });
});

describe('temperatures, °C', () => {
  test('of pouring, where few plastics are poured and where none is', () => {
    // Soft 150 to 177, firm 160 to 182; highest 180 to 193; nothing is poured above 205 or below 120.
    expect(POURING.least).toBe(120);
    within(POURING.cool, [POURING.least, 150]);
    within(POURING.warm, [180, 193]);
    expect(POURING.most).toBe(205);
    within(LEAST_POURING, [149, 165]);
  });
});

describe('what is taken where a file says nothing', () => {
  test('how far a drop and a level spoonful vary', () => {
    const { dropSpread, spoonSpread } = bookWith({}).settings;
    within(dropSpread, [0.05, 0.08]);
    within(spoonSpread, [0.1, 0.15]);
  });
  test('a streak, mm, and from which difference it shows', () => {
    within(STREAK_THICKNESS, [2, 5]);
    within(SWIRL_SHOWS, [12, 15]);
  });
  test('a drop, ml, and how many make a millilitre', () => {
    within(DROP_ML, [0.025, 0.06]);
    within(1 / DROP_ML, [20, 35]);
  });
  test('a level millilitre of salt, g', () => within(SOLID_ADDITIVE_BULK, [1.1, 1.3]));
  test.each([
    [0.008, [0.5, 0.65]],
    [0.04, [0.4, 0.5]],
    [0.125, [0.25, 0.4]],
  ] as const)('a level millilitre of flake of %f in, g', (inches, range) => {
    within(usualFlakeBulk(inches * INCH), range);
  });
  test('larger flake lies looser', () => {
    const inches = fc.double({ min: 0.002, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(inches, inches, (one, other) => {
        const [small, large] = [Math.min(one, other), Math.max(one, other)];
        expect(usualFlakeBulk(large * INCH)).toBeLessThanOrEqual(usualFlakeBulk(small * INCH));
        within(usualFlakeBulk(one * INCH), [0.25, 0.65]);
      }),
    );
  });
  test.each([
    ['pearl', [0.2, 0.35]],
    ['white', [0.5, 0.9]],
    ['pigment', [0.35, 0.5]],
  ] as const)('a level millilitre of %s powder, g', (kind, range) => {
    within(POWDER_BULK[kind], range);
  });
  test('a white colorant, g/ml', () => within(WHITE_LIQUID_DENSITY, [1.3, 1.9]));
  const TSP = 4.92892159375;
  test.each([
    [0.04, [1 / 8, 1 / 2]],
    [0.015, [1 / 16, 1 / 4]],
  ] as const)('an ordinary load of flake of %f in, tsp in 4 fl oz', (inches, range) => {
    const bulk = usualFlakeBulk(inches * INCH);
    within((usualFlakeLoad(inches * INCH, bulk) * FOUR_FL_OZ) / bulk / TSP, range);
  });
  test.each([
    ['colorant', undefined, [2, 3]],
    ['powder', undefined, [1, 2]],
    ['flake', undefined, [2, 5]],
    ['additive', 'salt', [30, 40]],
    ['additive', 'softener', [15, 20]],
    ['additive', 'stabiliser', [1, 2]],
    ['additive', 'scent', [3, 3]],
  ] as const)('the most of %s (%s), per cent', (kind, use, range) => {
    const most = usualMost({ kind, density: 1, ...defined({ use }) }, 1);
    within(Math.round(1e6 * most) / 1e4, range);
  });
  test('flakes in a gram of .040 hexagon, 2 mil', () => {
    const cut = { shape: 'hex', sizeMm: 0.04 * INCH, filmMm: 0.002 * INCH, density: FLAKE_FILM_DENSITY } as const;
    within(1 / flakeMass(cut), [14_000, 17_000]);
  });
});
