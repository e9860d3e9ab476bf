/**
 * A printed card's paper and ink as they came out of somebody's printer. All spreads are assumptions, no measured source.
 *
 * @packageDocumentation
 */
import { type Spectrum, spectrumOf } from '../../measure/foreign/physics/spectra.ts';
import type { Chance } from '../../measure/foreign/world/chance.ts';
import { decoded } from './screen-colour.ts';

/** Of a value of the picture's file (0 black to 255 paper), what the print throws back in a light. */
export interface Print {
  /** How large the print came out: 1 as designed. */
  readonly scale: number;
  reflectance(fileValue: number, ultraviolet: number): Spectrum;
}

/** A print: dot gain of 14 % in the exponent, a cast of 4 % in the greys, black of 0.025 to 0.085, paper with brightener. */
export function somePrint(chance: Chance): Print {
  const gain = Math.exp(chance.normal(0.14));
  const cast = chance.normal(0.04);
  const black = 0.025 + 0.06 * chance.uniform();
  const white = Math.min(0.94, 0.87 + chance.normal(0.03));
  const yellow = 0.05 * chance.uniform();
  const brightener = 0.12 * chance.uniform();
  const scale = 1 + chance.normal(0.006);
  const paper = spectrumOf((nm) => white * (1 - yellow * slope(nm) - 0.3 * Math.exp((390 - nm) / 12)));
  const glow = spectrumOf((nm) => brightener * Math.exp(-(((nm - 442) / 22) ** 2) / 2));
  return {
    scale,
    reflectance: (fileValue, ultraviolet) => {
      // What is left of the paper's light: from 1 for bare paper down to that of full ink.
      const bare = decoded(fileValue / 255) ** gain;
      const left = black + (1 - black) * bare;
      const tint = 4 * cast * bare * (1 - bare);
      // Ink lies over the glow as well, once for the ultraviolet and once for what comes back.
      return paper.map((each, band) => left * (each * (1 + tint * tilt(band)) + left * ultraviolet * glow[band]!));
    },
  };
}

/** From 1 at the blue end to 0 in the yellow. */
function slope(nm: number): number {
  return Math.max(0, Math.min(1, (560 - nm) / 160));
}

/** From -1 at the blue end to 1 at the red one. */
function tilt(band: number): number {
  return Math.max(-1, Math.min(1, (band - 18) / 15));
}
