/**
 * Lights under which photos are taken: of daylight, white LEDs and incandescent lamps, each of its own spectrum.
 *
 * @packageDocumentation
 */
import { ILLUMINANTS } from '../../../src/tables/illuminants.ts';
import { COLOUR_MATCHING_FUNCTIONS } from '../../../src/tables/observer.ts';
import { WAVELENGTHS } from '../../measure/foreign/physics/eye.ts';
import { type Spectrum, spectrumOf } from '../../measure/foreign/physics/spectra.ts';
import type { Chance } from '../../measure/foreign/world/chance.ts';

/** A light: relative power at `WAVELENGTHS`, and how much ultraviolet it has, 1 for daylight. */
export interface Light {
  readonly kind: 'daylight' | 'LED' | 'incandescent';
  readonly kelvin: number;
  readonly power: Spectrum;
  readonly ultraviolet: number;
}

const valueAt = (rows: readonly (readonly [number, ...number[]])[], nm: number, column: number): number =>
  rows.find(([at]) => at === nm)?.[column] ?? 0;

/** D65 as it is tabulated. */
export const D65: Spectrum = spectrumOf((nm) => valueAt(ILLUMINANTS, nm, 1));

/** Curves of the standard observer, x, y and z. */
export const OBSERVER: readonly [Spectrum, Spectrum, Spectrum] = [
  spectrumOf((nm) => valueAt(COLOUR_MATCHING_FUNCTIONS, nm, 1)),
  spectrumOf((nm) => valueAt(COLOUR_MATCHING_FUNCTIONS, nm, 2)),
  spectrumOf((nm) => valueAt(COLOUR_MATCHING_FUNCTIONS, nm, 3)),
];

/** Planck's law, relative to 560 nm; c2 = 1.4388e7 nm K (CODATA). */
function planck(kelvin: number): Spectrum {
  const at = (nm: number): number => nm ** -5 / Math.expm1(1.4388e7 / (nm * kelvin));
  return spectrumOf((nm) => at(nm) / at(560));
}

/** Daylight: D65 made warmer or colder as a glowing body would be. Near CIE's series, without its tables. */
export function daylight(kelvin: number): Light {
  const [wanted, usual] = [planck(kelvin), planck(6504)];
  const power = D65.map((each, band) => (each * wanted[band]!) / usual[band]!);
  return { kind: 'daylight', kelvin, power, ultraviolet: 1 };
}

/** A lamp with a filament. */
export function incandescent(kelvin: number): Light {
  return { kind: 'incandescent', kelvin, power: planck(kelvin), ultraviolet: 0.15 };
}

/** A white LED: a blue peak and a phosphor, so much of either that blue to green is as of a glowing body of that heat. */
export function whiteLed(kelvin: number, chance: Chance): Light {
  const [blueAt, blueWidth] = [450 + chance.normal(5), 9 + 3 * chance.uniform()];
  const glowAt = 603 - (45 * (kelvin - 2700)) / 3800 + chance.normal(5);
  const glowWidth = 52 + 14 * chance.uniform();
  const red = 0.35 * chance.uniform();
  const mixed = (share: number): Spectrum =>
    spectrumOf(
      (nm) =>
        share * bell(nm, blueAt, blueWidth) +
        (1 - share) * (bell(nm, glowAt, glowWidth) + red * bell(nm, 635, 20) + 0.05),
    );
  const wanted = blueToGreen(planck(kelvin));
  let [low, high] = [0, 1];
  for (let round = 0; round < 30; round++) {
    const middle = (low + high) / 2;
    if (blueToGreen(mixed(middle)) < wanted) low = middle;
    else high = middle;
  }
  return { kind: 'LED', kelvin, power: mixed(low), ultraviolet: 0 };
}

/** Any of the lights in which makers take photos. */
export function someLight(chance: Chance): Light {
  const kind = chance.uniform();
  if (kind < 0.45) return daylight(4500 + 3000 * chance.uniform());
  if (kind < 0.85) return whiteLed(2700 + 3800 * chance.uniform(), chance);
  return incandescent(2700 + 500 * chance.uniform());
}

function bell(nm: number, at: number, width: number): number {
  return Math.exp(-(((nm - at) / width) ** 2) / 2);
}

function blueToGreen(power: Spectrum): number {
  const [, y, z] = OBSERVER;
  return sumOf(power, z) / sumOf(power, y);
}

function sumOf(power: Spectrum, curve: Spectrum): number {
  return WAVELENGTHS.reduce((sum, _, band) => sum + power[band]! * curve[band]!, 0);
}
