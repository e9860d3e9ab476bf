/**
 * Cameras whose eyes are not ours: three bell-shaped sensitivities with some crosstalk, and a matrix that brings paints nearest to what
 * a standard observer sees. How wide such curves are: by eye from published curves of phones, from memory.
 *
 * @packageDocumentation
 */
import { type Spectrum, spectrumOf } from '../../measure/foreign/physics/spectra.ts';
import type { Chance } from '../../measure/foreign/world/chance.ts';
import { leastSquares3 } from './least-squares.ts';
import { daylight, incandescent, type Light, OBSERVER } from './lights.ts';
import { paintedSamples } from './painted-samples.ts';
import type { Rgb } from './rgb.ts';
import { screenColour } from './screen-colour.ts';

/** What a camera makes of a reflectance in a light: linear sRGB as it believes it to be, a perfect diffuser near 1. */
export interface Camera {
  /** Its answers in a light, to which it has balanced itself but for the cast. */
  in(light: Light): (reflectance: Spectrum) => Rgb;
}

/** A phone's camera. Its white balance leaves a cast, the same in every light of one photo. */
export function someCamera(chance: Chance): Camera {
  const curve = (at: number, width: number, leak: number, leakAt: number): Spectrum =>
    spectrumOf((nm) => bell(nm, at, width) + leak * bell(nm, leakAt, 40));
  const eyes = [
    curve(600 + chance.normal(7), 34 + 8 * chance.uniform(), 0.08 + 0.1 * chance.uniform(), 540),
    curve(535 + chance.normal(7), 38 + 8 * chance.uniform(), 0.04 + 0.08 * chance.uniform(), 610),
    curve(460 + chance.normal(6), 25 + 8 * chance.uniform(), 0.06 + 0.1 * chance.uniform(), 535),
  ];
  return cameraWith(eyes, someCast(chance));
}

/** A camera with the standard observer's own eyes, and a cast as others have it. */
export function idealCamera(chance: Chance): Camera {
  return cameraWith(OBSERVER, someCast(chance));
}

/** What is left of the light's colour after a phone has balanced it: 5 and 6 % in red and blue. An assumption. */
function someCast(chance: Chance): Rgb {
  return [Math.exp(chance.normal(0.05)), 1, Math.exp(chance.normal(0.06))];
}

function cameraWith(eyes: readonly Spectrum[], cast: Rgb): Camera {
  return {
    in(light) {
      const matrix = matrixFor(eyes, referenceLight(light));
      const white = eyes.map((eye) => answer(eye, light.power));
      const weights = eyes.map((eye, at) => eye.map((each, band) => (each * light.power[band]!) / white[at]!));
      return (reflectance) => {
        const raw = weights.map((weight) => answer(weight, reflectance));
        const [r = 0, g = 0, b = 0] = matrix.map((row) => row.reduce((sum, each, at) => sum + each * raw[at]!, 0));
        return [r * cast[0], g * cast[1], b * cast[2]];
      };
    },
  };
}

/** The light that a maker of phones has fitted the matrix in: a daylight or a filament, whichever is nearer. */
function referenceLight({ kelvin }: Light): Light {
  return kelvin > 4000 ? daylight(6504) : incandescent(2856);
}

function matrixFor(eyes: readonly Spectrum[], light: Light): readonly Rgb[] {
  const white = eyes.map((eye) => answer(eye, light.power));
  const samples = paintedSamples();
  const seen = samples.map((sample): Rgb => {
    const [r = 0, g = 0, b = 0] = eyes.map(
      (eye, at) => eye.reduce((sum, each, band) => sum + each * light.power[band]! * sample[band]!, 0) / white[at]!,
    );
    return [r, g, b];
  });
  const wanted = samples.map(screenColour);
  // White counts as much as all paints together: a phone shows it white.
  const one: Rgb = [1, 1, 1];
  const weights = [...samples.map(() => 1), 4 * samples.length];
  return [0, 1, 2].map((row) => leastSquares3([...seen, one], [...wanted.map((each) => each[row]!), 1], weights));
}

function answer(eye: Spectrum, power: Spectrum): number {
  return eye.reduce((sum, each, band) => sum + each * power[band]!, 0);
}

function bell(nm: number, at: number, width: number): number {
  return Math.exp(-(((nm - at) / width) ** 2) / 2);
}
