import { modeLab65, modeOklch, useMode } from 'culori/fn';
import type { LabD65 } from './cielab.ts';

useMode(modeLab65);
const oklchFrom = useMode(modeOklch);

/**
 * Hue of a colour in OKLab, in degrees from 0 up to 360: about 29 for red, 110 for yellow, 142 for green, 264 for blue. Of a grey it means nothing.
 *
 * CIELAB's own angle runs from blue into purple while people still see blue; this one was fitted so that it does not.
 *
 * Source: B. Ottosson, "A perceptual color space for image processing" (2020).
 */
export function oklabHue({ L, a, b }: Pick<LabD65, 'L' | 'a' | 'b'>): number {
  const { h = 0 } = oklchFrom({ mode: 'lab65', l: L, a, b });
  return ((h % 360) + 360) % 360;
}
