/**
 * From a colour by daylight to a spectrum again: what looks have taught of a colour, carried to other lights and into water.
 *
 * @packageDocumentation
 */
import { type Lab, tristimulusFromLab } from './cielab.ts';
import { solveLinear } from './linear-system.ts';
import { BAND_COUNT, mapSpectrum, type Spectrum, WAVELENGTHS } from './spectrum.ts';
import { type Tristimulus, tristimulus } from './tristimulus.ts';

/** Where short waves end and long ones begin, nm, and how softly. Convention of this book: about where the observer's blue, green and red part. */
const [SHORT_END, LONG_START, SOFT] = [500, 580, 20];

const rising = (wavelength: number, middle: number): number => 1 / (1 + Math.exp((middle - wavelength) / SOFT));

/** Three smooth parts of the spectrum, 1 together in every band: short, middle and long waves. */
const PARTS: readonly Spectrum[] = ((): readonly Spectrum[] => {
  const short = mapSpectrum(WAVELENGTHS, (wavelength) => 1 - rising(wavelength, SHORT_END));
  const long = mapSpectrum(WAVELENGTHS, (wavelength) => rising(wavelength, LONG_START));
  return [short, mapSpectrum(short, (part, band) => 1 - part - long[band]!), long];
})();

/** Nothing changes. */
const NO_FACTOR: Spectrum = new Float64Array(BAND_COUNT).fill(1);

const STEPS = 30;
const MET = 1e-12;
// A factor of 20 either way: beyond it, a colour is no neighbour of the spectrum any more. Convention of this book.
const MOST = 3;

/**
 * The smooth factor, band by band, that gives a reflectance another colour: times it, the reflectance is of that colour under D65.
 *
 * It is e to a sum of three smooth parts of the spectrum, and so never below 0; that of the reflectance's own colour is 1. A colour that
 * no such factor reaches (black asked of white, a hue of which there is no light at all) is met as nearly as it goes.
 * Shape: 36 bands.
 */
export function colourFactor(reflectance: Spectrum, lab: Lab): Spectrum {
  const wanted = tristimulusFromLab(lab);
  const powers = new Float64Array(3);
  let factor = NO_FACTOR;
  let off = offBy(reflectance, factor, wanted);
  for (let step = 0; step < STEPS && size(off) > MET; step++) {
    const slopes = new Float64Array(9);
    for (const [part, share] of PARTS.entries()) {
      const { X, Y, Z } = tristimulus(mapSpectrum(share, (each, band) => each * factor[band]! * reflectance[band]!));
      for (const [row, slope] of [X, Y, Z].entries()) slopes[3 * row + part] = slope;
    }
    const move = off.slice();
    if (!solveLinear(slopes, move)) break;
    const next = bestAlong(reflectance, powers, move, wanted, size(off));
    if (!next) break;
    powers.set(next.powers);
    ({ factor, off } = next);
  }
  return factor;
}

/** The farthest of ever shorter steps that comes nearer. */
function bestAlong(
  reflectance: Spectrum,
  powers: Float64Array,
  move: Float64Array,
  wanted: Tristimulus,
  before: number,
): { readonly powers: Float64Array; readonly factor: Spectrum; readonly off: Float64Array } | undefined {
  for (let part = 1; part > 1e-3; part /= 2) {
    const next = powers.map((power, index) => Math.max(-MOST, Math.min(MOST, power + part * move[index]!)));
    const factor = mapSpectrum(NO_FACTOR, (_, band) =>
      Math.exp(next[0]! * PARTS[0]![band]! + next[1]! * PARTS[1]![band]! + next[2]! * PARTS[2]![band]!),
    );
    const off = offBy(reflectance, factor, wanted);
    if (size(off) < before) return { powers: next, factor, off };
  }
  return undefined;
}

/** What is missing of the colour, X, Y and Z. */
function offBy(reflectance: Spectrum, factor: Spectrum, wanted: Tristimulus): Float64Array {
  const { X, Y, Z } = tristimulus(mapSpectrum(reflectance, (R, band) => R * factor[band]!));
  return Float64Array.of(wanted.X - X, wanted.Y - Y, wanted.Z - Z);
}

const size = (off: Float64Array): number => Math.hypot(...off);
