import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { markCells } from '../../src/measuring-card/mark-cells.ts';
import { CARDS } from '../../src/measuring-card/measuring-card.ts';
import { spectrumOf } from '../measure/foreign/physics/spectra.ts';
import { Chance } from '../measure/foreign/world/chance.ts';
import { someWorm } from './simulated/bait-shape.ts';
import { BaitSurface } from './simulated/bait-surface.ts';
import { idealCamera } from './simulated/cameras.ts';
import { acrossByArea, coveredPart, someFlakeKind, thrownFlakes } from './simulated/flakes.ts';
import { filmPlastics, somePlastic } from './simulated/layers.ts';
import { Lens } from './simulated/lens.ts';
import { daylight, OBSERVER, whiteLed } from './simulated/lights.ts';
import { paintedSamples } from './simulated/painted-samples.ts';
import { printedCard } from './simulated/printed-card.ts';
import { measuredFilms, NO_REFERENCE } from './simulated/reference-spectra.ts';
import { screenColour } from './simulated/screen-colour.ts';
import { takePhoto } from './simulated/simulated-photo.ts';

const FOLDER = join(process.cwd(), 'tests/photo/simulated');

test('the simulator asks src/ for tables and for the card as it is printed, and for nothing that measures', () => {
  const asked = readdirSync(FOLDER).flatMap((name) =>
    [...readFileSync(join(FOLDER, name), 'utf8').matchAll(/from '(?:\.\.\/)+src\/([^']+)'/g)].map(([, path]) => path),
  );
  expect(asked.length).toBeGreaterThan(0);
  for (const path of asked) expect(path).toMatch(/^(tables\/|measuring-card\/measuring-card|render\/measuring-card\/)/);
});

describe('Lens', () => {
  const pose = fc.record({
    width: fc.constant(1600),
    height: fc.constant(1200),
    focal: fc.double({ min: 900, max: 2500, noNaN: true }),
    tilt: fc.double({ min: 0, max: 0.61, noNaN: true }),
    towards: fc.double({ min: 0, max: 6.28, noNaN: true }),
    turn: fc.double({ min: 0, max: 6.28, noNaN: true }),
    at: fc.tuple(fc.double({ min: 50, max: 80, noNaN: true }), fc.double({ min: 30, max: 60, noNaN: true })),
    distance: fc.double({ min: 200, max: 500, noNaN: true }),
    radial: fc.double({ min: -0.015, max: 0.015, noNaN: true }),
  });

  test('a place that is looked at through its own pixel is that place, at its own height', () => {
    const inside = fc.double({ min: 0, max: 100, noNaN: true });
    fc.assert(
      fc.property(pose, inside, inside, fc.double({ min: 0, max: 9, noNaN: true }), (taken, x, y, height) => {
        const lens = new Lens(taken);
        const sight = { x: 0, y: 0, leanX: 0, leanY: 0, axis: 1 };
        const [u, v] = lens.toPixel(x, y, height);
        lens.look(u, v, sight);
        expect(sight.x + height * sight.leanX).toBeCloseTo(x, 6);
        expect(sight.y + height * sight.leanY).toBeCloseTo(y, 6);
      }),
    );
  });

  test('from straight above the table lies in the photo as it is: not mirrored, focal / distance pixels to a mm', () => {
    const straight = { width: 1600, height: 1200, focal: 1200, tilt: 0, towards: 1, turn: 0, distance: 240, radial: 0 };
    const lens = new Lens({ ...straight, at: [68, 48] });
    expect(lens.toPixel(68, 48)).toEqual([800, 600]);
    const [u, v] = lens.toPixel(78, 53);
    expect([u, v].map((each) => Math.round(1e6 * each) / 1e6)).toEqual([850, 625]);
  });
});

describe('layers', () => {
  test('a plastic twice as thick is that plastic upon itself', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.double({ min: 0.1, max: 2, noNaN: true }), (seed, thickness) => {
        const plastic = somePlastic(new Chance(seed));
        const backing = spectrumOf((nm) => (nm - 300) / 500);
        const twice = plastic.over(plastic.over(backing, thickness), thickness);
        plastic.over(backing, 2 * thickness).forEach((each, band) => {
          expect(each).toBeCloseTo(twice[band]!, 6);
        });
      }),
      { numRuns: 30 },
    );
  });

  test.skipIf(NO_REFERENCE)(
    `one layer over its own cards is the film as it was measured${NO_REFERENCE ? ` (skipped: ${NO_REFERENCE})` : ''}`,
    () => {
      const plastics = filmPlastics();
      let held = 0;
      for (const [at, film] of measuredFilms().entries()) {
        const off = film.onWhite.map((each, band) => Math.abs(each - film.onBlack[band]!));
        // Where the film on white is darker than that on black no layer can be both.
        if (film.onWhite.some((each, band) => each < film.onBlack[band]! - 0.002) || Math.max(...off) < 0.05) continue;
        const plastic = plastics[at]!;
        const close = (one: Float64Array, other: Float64Array): number =>
          Math.max(...one.map((each, band) => Math.abs(each - other[band]!)));
        expect(close(plastic.over(film.bareWhite, 1), film.onWhite)).toBeLessThan(0.012);
        expect(close(plastic.over(film.bareBlack, 1), film.onBlack)).toBeLessThan(0.012);
        held += 1;
      }
      expect(held).toBeGreaterThan(9);
    },
  );
});

test("the observer's own eyes see painted cards in daylight as the observer does, but for the cast of the photo", () => {
  const camera = idealCamera(new Chance(3)).in(daylight(6504));
  const cast = camera(spectrumOf(() => 1));
  for (const sample of paintedSamples()) {
    const wanted = screenColour(sample);
    camera(sample).forEach((each, channel) => {
      expect(Math.abs(each / cast[channel]! - wanted[channel]!)).toBeLessThan(0.004);
    });
  }
});

test('an LED has as much blue for its green as what glows at its temperature', () => {
  // CIE 1931 z/y of a Planckian radiator at 4000 K: x 0.3805, y 0.3768, so (1 - x - y)/y = 0.6441.
  const { power } = whiteLed(4000, new Chance(2));
  const [, y, z] = observedBy(power);
  expect(z / y).toBeCloseTo(0.644, 2);
});

function observedBy(power: Float64Array): readonly [number, number, number] {
  const sum = (curve: Float64Array): number => curve.reduce((all, each, band) => all + each * power[band]!, 0);
  return [sum(OBSERVER[0]), sum(OBSERVER[1]), sum(OBSERVER[2])];
}

test('flake covers what it is to cover, and a flake by itself is as large as it is said to be', () => {
  const chance = new Chance(8);
  const shape = someWorm(chance, [68, 48], 100);
  const covered = Array.from({ length: 12 }, () => {
    const kind = someFlakeKind(chance);
    return coveredPart(thrownFlakes(kind, shape, chance), () => true) / kind.wanted;
  });
  expect(covered.reduce((sum, each) => sum + each, 0) / covered.length).toBeCloseTo(1, 1);
  const alone = { ...someFlakeKind(chance), across: 1, wanted: 1e-3, glitter: 0 };
  const map = thrownFlakes(alone, { ...shape, length: 60, halfWidth: () => 8 }, chance);
  const area = coveredPart(map, () => true) * map.columns * map.rows * map.pitch ** 2;
  expect(area).toBeCloseTo((Math.PI / 4) * acrossByArea(alone) ** 2, 1);
});

test('seen from straight above, a bait is as high as its shape is', () => {
  const shape = someWorm(new Chance(5), [68, 48], 100);
  const surface = new BaitSurface(shape);
  const hit = { along: 0, across: 0, height: 0 };
  expect(surface.meets({ x: 68, y: 48, leanX: 0, leanY: 0, axis: 1 }, hit)).toBe(true);
  expect(hit.height).toBeCloseTo(shape.height(hit.along, hit.across), 1);
  expect(surface.meets({ x: 68, y: 70, leanX: 0, leanY: 0, axis: 1 }, hit)).toBe(false);
});

describe('a photo', () => {
  test('is the same for the same seeds, and another for others', async () => {
    const card = await printedCard();
    const [one, again, other] = await Promise.all([3, 3, 4].map((seed) => takePhoto('small', card, seed)));
    expect(one!.jpeg.equals(again!.jpeg)).toBe(true);
    expect(one!.jpeg.equals(other!.jpeg)).toBe(false);
  });

  test('shows the printed card where it says that it lies: each cell of each mark, and ten greys in their order', async () => {
    const photo = await takePhoto('a2', await printedCard(), 7);
    const { data, width } = photo.pixels;
    const greenAt = (x: number, y: number): number => {
      const [u, v] = photo.toPixel(x, y);
      return data[4 * (Math.floor(v) * width + Math.floor(u)) + 1]!;
    };
    const { marks, greys } = CARDS.small;
    for (const { id, x, y, width: side } of marks) {
      const cells = markCells(id);
      const cell = side / (cells.length + 2);
      for (const [row, line] of cells.entries())
        for (const [column, isWhite] of line.entries())
          expect(greenAt(x + (column + 1.5) * cell, y + (row + 1.5) * cell) > 128).toBe(isWhite);
    }
    for (const row of ['above', 'below']) {
      const levels = greys
        .filter((grey) => grey.row === row)
        .sort((one, next) => one.step - next.step)
        .map(({ x, y, width: wide, height }) => greenAt(x + wide / 2, y + height / 2));
      expect(levels).toEqual([...levels].sort((one, next) => next - one));
    }
  });
});
