/**
 * What a phone makes of the light on its sensor: a blurred, flared, toned, noisy and sharpened picture of 8 bits.
 *
 * @packageDocumentation
 */

import { BellNumbers } from './bell-numbers.ts';
import { blurred, type Planes } from './blurred.ts';
import { localGains } from './local-gains.ts';
import type { LinearImage } from './render-scene.ts';
import type { Scene } from './scene.ts';
import { encoded } from './screen-colour.ts';

/** Steps of the tone curve between no light and full level. */
const STEPS = 4096;

/** Rows of red, green and blue, 0 to 255. */
export interface Developed {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray;
}

/** The picture before it is packed into a JPEG. `paper` is the paper's level in the image at the card's middle. */
export function developed(image: LinearImage, paper: number, { development, grain }: Scene): Developed {
  const { width, height } = image;
  const { exposure, flare, blur, local, noise, saturation, sharpening } = development;
  const light: Planes = blurred(image, blur);
  const veil = flare * meanOf(light);
  const gains = localGains(light, width, height, local);
  const curve = toneCurve(development);
  const spread = noiseByLevel(noise);
  const random = new BellNumbers(grain);
  const factor = exposure / paper;
  const along = new Float32Array(width);
  for (let row = 0, at = 0; row < height; row++) {
    gains.alongRow(row, along);
    for (let column = 0; column < width; column++, at += 3) {
      const gain = factor * along[column]! * STEPS;
      random.draw();
      for (let channel = 0; channel < 3; channel++) {
        const clean = Math.max(0, Math.min(STEPS, (light[at + channel]! + veil) * gain));
        const level = clean + spread[clean | 0]! * random.number(channel);
        light[at + channel] = curve[Math.max(0, Math.min(STEPS, (level + 0.5) | 0))]!;
      }
      const luma = LUMA[0] * light[at]! + LUMA[1] * light[at + 1]! + LUMA[2] * light[at + 2]!;
      for (let channel = 0; channel < 3; channel++)
        light[at + channel] = luma + (1 + saturation) * (light[at + channel]! - luma);
    }
  }
  return { width, height, data: sharpened(light, width, height, sharpening) };
}

/** Deviation of the noise, in steps, at each step: shot noise grows as the root of the light, and the sensor adds a little. */
function noiseByLevel(noise: number): Float32Array {
  return Float32Array.from({ length: STEPS + 1 }, (_, step) => STEPS * noise * Math.sqrt(step / STEPS + 0.01));
}

/** Parts of red, green and blue in what a phone takes for lightness (ITU-R BT.709). */
const LUMA = [0.2126, 0.7152, 0.0722] as const;

/** File values 0..1 of linear light at even steps: the shoulder, sRGB's own curve, and an S over it. */
function toneCurve({ shoulder, curve }: Scene['development']): Float32Array {
  return Float32Array.from({ length: STEPS + 1 }, (_, step) => {
    const light = step / STEPS;
    const value = encoded((light * (1 + shoulder)) / (1 + shoulder * light));
    const bent = value * value * (3 - 2 * value);
    return value + curve * (bent - value);
  });
}

/** Edges are made stronger by the lightness alone, here by green, so that no colour comes of it. */
function sharpened(light: Planes, width: number, height: number, amount: number): Uint8ClampedArray {
  const data = new Uint8ClampedArray(light.length);
  const up = 3 * width;
  for (let row = 0; row < height; row++) {
    const isEdge = row === 0 || row === height - 1;
    for (let column = 0, at = up * row; column < width; column++, at += 3) {
      let more = 0;
      if (!isEdge && column > 0 && column < width - 1) {
        const green = at + 1;
        const around = light[green - 3]! + light[green + 3]! + light[green - up]! + light[green + up]!;
        more = (amount / 2) * (light[green]! - around / 4);
      }
      data[at] = 255 * (light[at]! + more);
      data[at + 1] = 255 * (light[at + 1]! + more);
      data[at + 2] = 255 * (light[at + 2]! + more);
    }
  }
  return data;
}

function meanOf(light: Planes): number {
  let sum = 0;
  for (let at = 0; at < light.length; at += 97) sum += light[at]!;
  return sum / Math.ceil(light.length / 97);
}
