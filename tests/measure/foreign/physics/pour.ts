import { type SeenPair, seenColour } from './eye.ts';
import { layerTable } from './layer-table.ts';
import { medium, seenOver } from './lit-layer.ts';
import { type Spectrum, spectrumOf } from './spectra.ts';

/** Absorption and reduced scattering at each of `WAVELENGTHS`: of plastic per mm, of a material per mm and g/ml. */
export interface Substance {
  readonly absorption: Spectrum;
  readonly scattering: Spectrum;
}

/** What is poured: plastic with so much of each substance in it, g per ml of plastic. */
export interface Poured {
  readonly plastic: Substance;
  readonly contents: readonly { readonly substance: Substance; readonly gramsPerMl: number }[];
  readonly thicknessMm: number;
}

/** Cards of this world: a white that is not quite white, a little yellow, and a black. */
const WHITE_CARD = spectrumOf((nm) => 0.86 * (1 - 0.06 * Math.exp((400 - nm) / 60)));
const BLACK_CARD = 0.04;

/** Refractive index of the plastic; how far what is in it throws light onward; directions in which light is followed. */
const INDEX = 1.49;
const ASYMMETRY = 0.6;
const DIRECTIONS = 8;

/** Particles near one another scatter less: at so many g/ml half as much. */
const CROWDED = 0.2;

let layers: ReturnType<typeof layerTable> | undefined;

/** What is seen of a pour over both cards, without the gloss. */
export function seenPour({ plastic, contents, thicknessMm }: Poured): SeenPair {
  layers ??= layerTable(medium(INDEX, ASYMMETRY, DIRECTIONS));
  const load = contents.reduce((sum, { gramsPerMl }) => sum + gramsPerMl, 0);
  const apart = 1 / (1 + load / CROWDED);
  const white = plastic.absorption.slice();
  const black = plastic.absorption.slice();
  for (let at = 0; at < white.length; at++) {
    let absorption = plastic.absorption[at]!;
    let scattering = plastic.scattering[at]!;
    for (const { substance, gramsPerMl } of contents) {
      absorption += gramsPerMl * substance.absorption[at]!;
      scattering += gramsPerMl * substance.scattering[at]! * apart;
    }
    const layer = layers(scattering * thicknessMm, absorption * thicknessMm);
    white[at] = seenOver(layer, WHITE_CARD[at]!);
    black[at] = seenOver(layer, BLACK_CARD);
  }
  return { white: seenColour(white), black: seenColour(black) };
}
