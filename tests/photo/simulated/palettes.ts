/**
 * What a camera makes of everything in a scene, worked out once for each tone, thickness and flake instead of for each pixel.
 *
 * Colours are six numbers: red, green and blue in the main light, then in the second.
 *
 * @packageDocumentation
 */
import type { Spectrum } from '../../measure/foreign/physics/spectra.ts';
import type { Scene } from './scene.ts';

/** Colours by a step of something, six numbers each. */
export type Palette = Float32Array;

/** Steps of a card's tones, and of a bait's thickness. */
export const TONE_STEPS = 1024;
/** See `TONE_STEPS`. */
export const THICKNESS_STEPS = 48;

/** All of a scene's colours. */
export interface Palettes {
  /** Tone of each file value: 0 full ink, 1 bare paper. */
  readonly toneOfValue: Float32Array;
  readonly card: Palette;
  /** By thickness, over the card's bare paper and over its black. */
  readonly overPaper: Palette;
  readonly overBlack: Palette;
  readonly thickest: number;
  readonly flake: Palette | undefined;
}

/** Part of a light's ultraviolet that gets through a bait to the paper below. An assumption. */
const ULTRAVIOLET_BELOW = 0.3;

/** The colours of a scene. */
export function palettesOf({ camera, print, lighting, bait }: Scene): Palettes {
  const lights = [lighting.main, lighting.second];
  const eyes = lights.map((light) => camera.in(light));
  const six = (spectrumIn: (ultraviolet: number) => Spectrum): readonly number[] =>
    eyes.flatMap((eye, at) => eye(spectrumIn(lights[at]!.ultraviolet)));
  const printed = Array.from({ length: 256 }, (_, value) =>
    six((ultraviolet) => print.reflectance(value, ultraviolet)),
  );
  const [ink, paper] = [printed[0]![1]!, printed[255]![1]!];
  const toneOfValue = Float32Array.from(printed, (colour) => (colour[1]! - ink) / (paper - ink));
  const thickest = bait.shape.top;
  const over = (value: number): Palette => {
    const backings = lights.map(({ ultraviolet }) => print.reflectance(value, ULTRAVIOLET_BELOW * ultraviolet));
    return Float32Array.from(
      Array.from({ length: THICKNESS_STEPS }, (_, step) => {
        const units = bait.unitsPerMm * thickest * (step / (THICKNESS_STEPS - 1)) ** 2;
        return eyes.flatMap((eye, at) => eye(bait.plastic.over(backings[at]!, units)));
      }).flat(),
    );
  };
  return {
    toneOfValue,
    card: byTone(printed, toneOfValue),
    overPaper: over(255),
    overBlack: over(0),
    thickest,
    flake: bait.flakes ? Float32Array.from(six(() => bait.flakes!.kind.reflectance)) : undefined,
  };
}

/** Colours at even steps of the tone, between those of the file's values. */
function byTone(printed: readonly (readonly number[])[], toneOfValue: Float32Array): Palette {
  const palette = new Float32Array(6 * TONE_STEPS);
  let value = 0;
  for (let step = 0; step < TONE_STEPS; step++) {
    const tone = step / (TONE_STEPS - 1);
    while (value < 254 && toneOfValue[value + 1]! < tone) value++;
    const [from, to] = [toneOfValue[value]!, toneOfValue[value + 1]!];
    const part = to > from ? Math.min(1, (tone - from) / (to - from)) : 0;
    for (let at = 0; at < 6; at++) {
      const [low, high] = [printed[value]![at]!, printed[value + 1]![at]!];
      palette[6 * step + at] = low + part * (high - low);
    }
  }
  return palette;
}
