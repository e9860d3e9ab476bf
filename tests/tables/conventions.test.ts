import { describe, expect, test } from 'vitest';
import { BLACK_BACKING, WHITE_BACKING } from '../../src/tables/backings.ts';
import { COLOURING_KINDS, DARKEST_BODY, EXPECTED_DELTA_E } from '../../src/tables/colouring-kinds.ts';
import { FLAKE_FILM_DENSITY, FLAKE_FILM_THICKNESS } from '../../src/tables/flake-film.ts';
import { BOTTLE_SD, CAMERA_SD, MATERIAL_PRIORS, OPTICS_SD, PLASTIC_SD } from '../../src/tables/material-priors.ts';
import { LAMINATE_SHINES_THROUGH, STREAK_THICKNESS, SWIRL_SHOWS } from '../../src/tables/patterns.ts';
import { PLASTIC_LOOKS } from '../../src/tables/plastics.ts';
import { SURFACE_K1, SURFACE_K2 } from '../../src/tables/surface.ts';

describe('figures of this book keep the order that gives them sense', () => {
  test('white and black backings are reflectances far apart', () => {
    expect(WHITE_BACKING).toBeGreaterThan(0.8);
    expect(WHITE_BACKING).toBeLessThan(1);
    expect(BLACK_BACKING).toBeGreaterThan(0);
    expect(BLACK_BACKING).toBeLessThan(0.05);
  });

  test('kinds scatter, gram for gram, in the order clear, dye, pearl, pigment, white', () => {
    const scattering = (['clear', 'dye', 'pearl', 'pigment', 'white'] as const).map(
      (kind) => COLOURING_KINDS[kind].scattering / COLOURING_KINDS[kind].dose,
    );
    expect(scattering).toEqual([...scattering].sort((x, y) => x - y));
  });

  test('tiers are worse the less they rest on', () => {
    expect(EXPECTED_DELTA_E.measured).toBeLessThan(EXPECTED_DELTA_E.photographed);
    expect(EXPECTED_DELTA_E.photographed).toBeLessThan(EXPECTED_DELTA_E.estimated);
  });

  test('plastics scatter more from clear to milky', () => {
    expect(PLASTIC_LOOKS.clear.scattering).toBeLessThan(PLASTIC_LOOKS.milky.scattering);
  });

  test('the darkest body has K/S of about 100', () => {
    expect((1 - DARKEST_BODY) ** 2 / (2 * DARKEST_BODY)).toBeCloseTo(99, 0);
  });

  test('flake film is polyester of one thousandth of an inch', () => {
    expect(FLAKE_FILM_THICKNESS).toBe(0.001 * 25.4);
    expect(FLAKE_FILM_DENSITY).toBeGreaterThanOrEqual(1.38);
    expect(FLAKE_FILM_DENSITY).toBeLessThanOrEqual(1.4);
  });

  test('surface and pattern figures are in the ranges of what they measure', () => {
    expect(SURFACE_K1).toBeCloseTo(((1.5 - 1) / (1.5 + 1)) ** 2, 15);
    expect(SURFACE_K2).toBeGreaterThan(0.4);
    expect(SURFACE_K2).toBeLessThanOrEqual(0.6);
    expect(LAMINATE_SHINES_THROUGH).toBeLessThan(1);
    expect(SWIRL_SHOWS).toBeGreaterThan(1);
    expect(STREAK_THICKNESS).toBeGreaterThan(0);
  });

  test('what is believed of a kind scatters in the order of the kinds, and is vaguer than a bottle, a plastic or a card', () => {
    const { dye, pigment, pearl, white, unknown } = MATERIAL_PRIORS;
    const kinds = [dye, pigment, pearl, white];
    const scattering = kinds.map((prior) => prior.scattering.median);
    expect(scattering).toEqual([...scattering].sort((x, y) => x - y));
    for (const { absorption, scattering } of [...kinds, unknown]) {
      expect(absorption.levelSd).toBeGreaterThan(Math.max(BOTTLE_SD, PLASTIC_SD.absorption));
      expect(scattering.levelSd).toBeGreaterThan(Math.max(BOTTLE_SD, PLASTIC_SD.scattering, OPTICS_SD.black));
    }
    expect(OPTICS_SD.white).toBeLessThan(1 - WHITE_BACKING);
    expect(CAMERA_SD).toBeGreaterThan(0);
  });

  test('a material of no known kind may be any of them', () => {
    const { unknown, ...kinds } = MATERIAL_PRIORS;
    for (const { absorption, scattering } of Object.values(kinds)) {
      expect(Math.abs(Math.log(absorption.median / unknown.absorption.median))).toBeLessThan(
        2 * unknown.absorption.levelSd,
      );
      expect(Math.abs(Math.log(scattering.median / unknown.scattering.median))).toBeLessThan(
        2 * unknown.scattering.levelSd,
      );
    }
  });
});
