import { describe, expect, test } from 'vitest';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromLinear } from '../../src/optics/display.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { FACE_AND_VEIL, FlakeColours, writeFlake } from '../../src/picture/flake/flake-colours.ts';
import { flakeLayer } from '../../src/picture/flake/flake-layer.ts';
import { flakeOutline } from '../../src/picture/flake/flake-outline.ts';
import { shineOf } from '../../src/picture/flake/shine.ts';
import type { PicturedBait, PicturedCup, PicturedFlake } from '../../src/picture/pictured-bait.ts';
import { flatField } from './flat-field.ts';

const bands = (value: (band: number) => number): readonly number[] =>
  Array.from({ length: 36 }, (_, band) => value(band));

const CLEAR: PicturedCup = { absorption: bands(() => 0.002), scattering: bands(() => 0.004), flakes: [] };
const PEARLY: PicturedCup = {
  absorption: bands((band) => 0.02 + 0.2 / (1 + band / 6)),
  scattering: bands(() => 0.3),
  flakes: [],
};
const DARK: PicturedCup = { absorption: bands((band) => 0.1 + band / 30), scattering: bands(() => 0.05), flakes: [] };

const HEXAGON: PicturedFlake = {
  outline: 'hexagon',
  acrossMm: 0.6,
  finish: 'metallic',
  reflectance: bands((band) => 0.1 + 0.015 * band),
  transmittance: 0,
  perMl: 60,
};

function baitOf(cups: readonly PicturedCup[], seed = 'a bait'): PicturedBait {
  return {
    seed,
    mold: { shape: 'stick', cavityMl: 6, bodyMm: 6, thinMm: 3 },
    optics: USUAL_OPTICS,
    cups,
    streakMm: 3,
    near: {
      pattern: 'layered',
      cups: cups.map((_, cup) => ({ cup, share: 1 / cups.length })),
      from: 'near',
      taught: [],
    },
  };
}

const whole = [{ cup: 0, part: 1 }];
const lab = (linear: ArrayLike<number>, at = 0) =>
  labFromLinear({ r: linear[at]!, g: linear[at + 1]!, b: linear[at + 2]! });

/** Means of a layer's four numbers, well inside a picture. */
function meanInside(rgba: Float32Array, columns: number, rows: number, margin: number): readonly number[] {
  const sums = [0, 0, 0, 0];
  let count = 0;
  for (let y = margin; y < rows - margin; y++) {
    for (let x = margin; x < columns - margin; x++, count++)
      for (let i = 0; i < 4; i++) sums[i]! += rgba[4 * (y * columns + x) + i]!;
  }
  return sums.map((sum) => sum / count);
}

describe('the flake of a bait', () => {
  const kinds: readonly (readonly [string, PicturedFlake])[] = [
    ['hexagons', { ...HEXAGON, perMl: 200 }],
    ['fine hexagons', { ...HEXAGON, acrossMm: 0.2, perMl: 900 }],
    ['squares', { ...HEXAGON, outline: 'square', acrossMm: 1, perMl: 150 }],
    ['discs', { ...HEXAGON, outline: 'round', perMl: 200 }],
    ['strips', { ...HEXAGON, outline: 'strip', acrossMm: 0.4, longMm: 2.4, perMl: 150 }],
  ];

  test.each(kinds)('covers what %s of that number cover', (_, flake) => {
    const thickMm = 6;
    const field = flatField(thickMm);
    const covers = Array.from({ length: 24 }, (_, seed) => {
      const bait = baitOf([{ ...CLEAR, flakes: [flake] }], `seed ${seed}`);
      const layer = flakeLayer({ bait, field, runsAt: () => whole, from: 'near' });
      return meanInside(layer!.rgba, field.columns, field.rows, 15)[3]!;
    });
    const mean = covers.reduce((sum, cover) => sum + cover, 0) / covers.length;
    const variance = covers.reduce((sum, cover) => sum + (cover - mean) ** 2, 0) / (covers.length - 1);
    const standardError = Math.sqrt(variance / covers.length);
    // Cauchy: of a plate that is turned any way half of its face is seen.
    const area = flakeOutline(flake).areaMm2;
    const expected = -Math.expm1((-flake.perMl / 1000) * (area / 2) * thickMm);
    expect(Math.abs(mean - expected)).toBeLessThan(3 * standardError);
    expect(Math.abs(mean / expected - 1)).toBeLessThan(0.02);
  });

  test('is the same twice, and another with another seed', () => {
    const field = flatField(5);
    const draw = (seed: string): Float32Array => {
      const bait = baitOf([{ ...CLEAR, flakes: [HEXAGON] }], seed);
      return flakeLayer({ bait, field, runsAt: () => whole, from: 'near' })!.rgba.slice();
    };
    const first = draw('one');
    expect(draw('two')).not.toEqual(first);
    expect(draw('one')).toEqual(first);
  });

  test('lies where its cup is, and nowhere else', () => {
    const field = flatField(5);
    const bait = baitOf([CLEAR, { ...CLEAR, flakes: [HEXAGON] }]);
    const isLeft = (pixel: number): boolean => pixel % field.columns < 150;
    const layer = flakeLayer({
      bait,
      field,
      runsAt: (pixel) => [{ cup: isLeft(pixel) ? 0 : 1, part: 1 }],
      from: 'near',
    });
    const reach = Math.ceil(HEXAGON.acrossMm * field.pixelsPerMm);
    let [left, right] = [0, 0];
    for (let pixel = 0; pixel < field.cover.length; pixel++) {
      const x = pixel % field.columns;
      if (x < 150 - reach) left += layer!.rgba[4 * pixel + 3]!;
      else right += layer!.rgba[4 * pixel + 3]!;
    }
    expect(left).toBe(0);
    expect(right).toBeGreaterThan(100);
  });

  test('stays inside the bait', () => {
    const field = flatField(5, { border: 20 });
    const bait = baitOf([{ ...CLEAR, flakes: [{ ...HEXAGON, acrossMm: 2 }] }]);
    const { rgba } = flakeLayer({ bait, field, runsAt: () => whole, from: 'near' })!;
    let outside = 0;
    for (let pixel = 0; pixel < field.cover.length; pixel++)
      if (field.cover[pixel] === 0) outside += rgba[4 * pixel + 3]!;
    expect(outside).toBe(0);
  });

  test('is not there where no cup has any', () => {
    expect(
      flakeLayer({ bait: baitOf([CLEAR]), field: flatField(5), runsAt: () => whole, from: 'near' }),
    ).toBeUndefined();
  });

  test('of a crowd has the colour that is stated of it', () => {
    const thickMm = 4;
    const field = flatField(thickMm, { columns: 400, rows: 300 });
    const none = { ...CLEAR, absorption: bands(() => 0), scattering: bands(() => 0) };
    for (const finish of ['metallic', 'matte', 'pearl', 'hologram']) {
      const flake = { ...HEXAGON, finish, acrossMm: 0.5, perMl: 1500 };
      const bait = baitOf([{ ...none, flakes: [flake] }]);
      const layer = flakeLayer({ bait, field, runsAt: () => whole, from: 'near' });
      const mean = meanInside(layer!.rgba, field.columns, field.rows, 15);
      const stated = new Float64Array(FACE_AND_VEIL);
      writeFlake(bait, flake.reflectance, { runs: whole, run: 0, mm: 0, inRun: 0 }, stated, 0);
      const shown = mean.slice(0, 3).map((part) => part / mean[3]!);
      expect(deltaE00(lab(shown), lab(stated)), finish).toBeLessThan(1);
    }
  });
});

describe('the colour of a flake', () => {
  const stacks = {
    'in one cup': [{ cup: 1, part: 1 }],
    'under a clear layer': [
      { cup: 0, part: 0.4 },
      { cup: 1, part: 0.6 },
    ],
    'under a pearl': [
      { cup: 1, part: 0.3 },
      { cup: 2, part: 0.7 },
    ],
    'in a core': [
      { cup: 1, part: 0.21 },
      { cup: 2, part: 0.58 },
      { cup: 1, part: 0.21 },
    ],
  };

  test.each(Object.entries(stacks))('%s is that of the light through all that is above it', (_, runs) => {
    const bait = baitOf([CLEAR, PEARLY, DARK]);
    const colours = new FlakeColours(bait, HEXAGON.reflectance, 12);
    const [looked, direct] = [new Float64Array(FACE_AND_VEIL), new Float64Array(FACE_AND_VEIL)];
    for (const mm of [0.3, 1, 2.7, 6.1, 11]) {
      let before = 0;
      for (const [run, { part }] of runs.entries()) {
        for (const inRun of [0.03, 0.2, 0.55, 0.97]) {
          colours.write(runs, run, mm, before + part * inRun, looked);
          writeFlake(bait, HEXAGON.reflectance, { runs, run, mm, inRun }, direct, 0);
          expect(deltaE00(lab(looked), lab(direct)), `${mm} mm, ${inRun} of run ${run}`).toBeLessThan(1.5);
          expect(deltaE00(lab(looked, 3), lab(direct, 3)), `${mm} mm, ${inRun} of run ${run}`).toBeLessThan(1.5);
        }
        before += part;
      }
    }
  });
});

describe('what flashes', () => {
  test.each(['metallic', 'hologram', 'pearl', 'matte', 'translucent', 'fluorescent', 'another'])(
    'in a crowd of %s flake makes it no lighter and no darker',
    (finish) => {
      for (const lightest of [0.05, 0.4, 0.9]) {
        const shine = shineOf(finish, lightest);
        for (const flattest of [0, 0.35, 0.8]) {
          // By chance, as faces are drawn: each counted by what is seen of it.
          let [sum, seen] = [0, 0];
          const steps = 120;
          for (let i = 0; i < steps; i++) {
            for (let j = 0; j < steps; j++) {
              const nz = flattest + ((1 - flattest) * (i + 0.37)) / steps;
              const angle = (2 * Math.PI * (j + 0.61)) / steps;
              const mirrored = 2 * nz * Math.sqrt(1 - nz * nz);
              const flash = shine.flash(mirrored * Math.cos(angle), mirrored * Math.sin(angle));
              const factor = shine.factor(flash, shine.crowd(flattest));
              sum += nz * factor;
              seen += nz;
            }
          }
          expect(Math.abs(sum / seen - 1)).toBeLessThan(0.02);
        }
      }
    },
  );
});
