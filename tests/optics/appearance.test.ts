import { describe, expect, test } from 'vitest';
import { type AppearanceOptions, appearance, colourOf, swirlAppearance } from '../../src/optics/appearance.ts';
import { labOf } from '../../src/optics/cielab.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { hexOf } from '../../src/optics/display.ts';
import { flakeReflectance } from '../../src/optics/flake-colour.ts';
import { contrastRatio } from '../../src/optics/opacity.ts';
import { NO_PATH, USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { plasticConstants } from '../../src/optics/plastic.ts';
import { constantSpectrum } from '../../src/optics/spectrum.ts';
import { stackReflectance } from '../../src/optics/stack.ts';
import { BESIDE_GLOSS, IN_AIR, IN_WATER, surfaceOutwardSpectrum } from '../../src/optics/surface.ts';
import { tristimulus } from '../../src/optics/tristimulus.ts';
import { BLACK_BACKING, WHITE_BACKING } from '../../src/tables/backings.ts';
import { expectAllClose, expectClose } from './close.ts';

const { path } = USUAL_OPTICS;
const clear = plasticConstants('clear');
const peat = {
  absorption: Float64Array.from({ length: 36 }, (_, band) => 0.5 * Math.exp(-band / 9)),
  scattering: constantSpectrum(0.04),
};

describe('appearance', () => {
  test('appearance of a body is its stack over the book’s backings, beside the gloss, under D65', () => {
    const {
      overWhite,
      overBlack,
      contrastRatio: ratio,
      body,
    } = appearance(peat, { thickness: 8, optics: USUAL_OPTICS });
    const layers = [{ ...peat, thickness: 8 }];
    const white = stackReflectance(layers, WHITE_BACKING, BESIDE_GLOSS, path);
    expectAllClose(overWhite.spectrum, white, 0);
    expect(overWhite.lab).toEqual(labOf(white));
    expect(overWhite.hex).toBe(hexOf(white).hex);
    expect(overWhite.tristimulus).toEqual(tristimulus(white));
    expectAllClose(overBlack.spectrum, stackReflectance(layers, BLACK_BACKING, BESIDE_GLOSS, path), 0);
    expectClose(ratio, contrastRatio(overBlack.spectrum, overWhite.spectrum), 0);
    expect(body).toBeUndefined();
  });

  test('appearance of layers is that of the body that they make up', () => {
    const whole = appearance(peat, { thickness: 8, optics: USUAL_OPTICS });
    const halves = appearance(
      [
        { ...peat, thickness: 3 },
        { ...peat, thickness: 5 },
      ],
      { optics: USUAL_OPTICS },
    );
    expectAllClose(halves.overWhite.spectrum, whole.overWhite.spectrum, 1e-12);
    expectClose(halves.contrastRatio, whole.contrastRatio, 1e-12);
  });

  test('appearance over one’s own backings, under another light, through another surface', () => {
    const options = {
      thickness: 8,
      light: 'A',
      surface: IN_AIR,
      optics: { backings: { white: 1, black: [...constantSpectrum(0)] }, path: NO_PATH, crowding: 0 },
    } as const;
    const { overWhite } = appearance(peat, options);
    const spectrum = surfaceOutwardSpectrum(stackReflectance([{ ...peat, thickness: 8 }], 1));
    expectAllClose(overWhite.spectrum, spectrum, 0);
    expect(overWhite.lab).toEqual(labOf(spectrum, 'A'));
    expect(overWhite.hex).toBe(hexOf(spectrum, 'A').hex);
  });

  test('appearance in water is not that in air: more light gets out', () => {
    const air = appearance(peat, { thickness: 8, optics: USUAL_OPTICS });
    const water = appearance(peat, { optics: USUAL_OPTICS, thickness: 8, surface: IN_WATER });
    expect(water.overWhite.lab.L).toBeGreaterThan(air.overWhite.lab.L);
  });

  test('appearance with flake tells the body from the whole, and how much of the face has flake in view', () => {
    const copper = { perMm: 0.08, reflectance: flakeReflectance('#b87333') };
    const with_ = appearance({ ...peat, flakes: [copper] }, { thickness: 8, optics: USUAL_OPTICS });
    const without = appearance(peat, { optics: USUAL_OPTICS, thickness: 8 });
    expectClose(with_.flakeCoverage, 1 - Math.exp(-0.64), 1e-15);
    expect(with_.body!.overBlack.hex).toBe(without.overBlack.hex);
    expect(deltaE00(with_.overBlack.lab, without.overBlack.lab)).toBeGreaterThan(3);
    expect(with_.contrastRatio).toBeGreaterThan(without.contrastRatio);
    expect(without.flakeCoverage).toBe(0);
  });

  test('appearance of flake just under the surface of clear plastic is the colour that the maker wrote down', () => {
    const dense = [{ perMm: 1e5, reflectance: flakeReflectance('#b87333') }];
    expect(appearance({ ...clear, flakes: dense }, { thickness: 5, optics: USUAL_OPTICS }).overBlack.hex).toBe(
      '#b87333',
    );
  });

  test('appearance adds up the flake of layers', () => {
    const flakes = [{ perMm: 0.1, reflectance: constantSpectrum(0.5) }];
    const { flakeCoverage } = appearance(
      [
        { ...clear, flakes, thickness: 4 },
        { ...clear, thickness: 4 },
        { ...clear, flakes, thickness: 2 },
      ],
      { optics: USUAL_OPTICS },
    );
    expectClose(flakeCoverage, 1 - Math.exp(-0.6), 1e-15);
  });

  test('appearance refuses a body without thickness', () => {
    expect(() => appearance(peat, { optics: USUAL_OPTICS } as AppearanceOptions)).toThrow(/thickness NaN mm/);
  });
});

describe('swirlAppearance', () => {
  const cups = [
    { ...peat, share: 1 },
    { ...clear, share: 3 },
  ];

  test('swirlAppearance of streaks far wider than the bait is the mean of its cups by area, and shows each of them', () => {
    const { overWhite, extremes } = swirlAppearance(cups, { optics: USUAL_OPTICS, thickness: 8, streak: 1e17 });
    const [dark, light] = [
      appearance(peat, { thickness: 8, optics: USUAL_OPTICS }),
      appearance(clear, { optics: USUAL_OPTICS, thickness: 8 }),
    ];
    expect(extremes.map((each) => each.overWhite.hex)).toEqual([dark.overWhite.hex, light.overWhite.hex]);
    const { Y } = overWhite.tristimulus;
    expectClose(Y, (dark.overWhite.tristimulus.Y + 3 * light.overWhite.tristimulus.Y) / 4, 1e-14);
  });

  test('swirlAppearance of streaks of no width has each cup behind each, as often as their shares say', () => {
    const { overBlack } = swirlAppearance(cups, { optics: USUAL_OPTICS, thickness: 8, streak: 1e-9 });
    const [one, other] = [peat, clear].map((body) => ({ ...body, thickness: 4 }));
    const seen = ([near, far]: readonly (typeof one)[]): number =>
      appearance([near!, far!], { optics: USUAL_OPTICS }).overBlack.tristimulus.Y;
    const { Y } = overBlack.tristimulus;
    const mixed = 3 * (seen([one, other]) + seen([other, one]));
    expectClose(Y, (seen([one, one]) + mixed + 9 * seen([other, other])) / 16, 1e-12);
  });

  test('swirlAppearance goes from the one to the other as the bait gets deeper', () => {
    const alike = (thickness: number): number => {
      const { overWhite } = swirlAppearance(cups, { optics: USUAL_OPTICS, thickness });
      const beside = swirlAppearance(cups, { optics: USUAL_OPTICS, thickness, streak: 1e17 });
      return deltaE00(overWhite.lab, beside.overWhite.lab);
    };
    expect(alike(0.2)).toBeLessThan(0.5);
    expect(alike(8)).toBeGreaterThan(1);
  });

  test('swirlAppearance of a cup with itself is that cup', () => {
    const { overBlack, contrastRatio: ratio } = swirlAppearance([cups[0]!, cups[0]!], {
      optics: USUAL_OPTICS,
      thickness: 8,
    });
    const alone = appearance(peat, { thickness: 8, optics: USUAL_OPTICS });
    expect(overBlack.hex).toBe(alone.overBlack.hex);
    expectClose(ratio, alone.contrastRatio, 1e-12);
  });
});

test('seen says when the screen can’t show a colour', () => {
  const green = constantSpectrum(0.01).map((low, band) => (band >= 12 && band <= 15 ? 0.99 : low));
  expect(colourOf(green).mapped).toBe(true);
  expect(colourOf(constantSpectrum(0.5)).mapped).toBe(false);
});
