import type { BaitField } from '../../shapes/bait-field.ts';

const BINS = 4096;

/** How much of a bait's plastic has which value, in bins. */
export class VolumeBins {
  readonly low: number;
  readonly high: number;
  /** Part of the plastic in each bin, 1 together. */
  readonly parts = new Float64Array(BINS);

  /** @param ofPixel asked of each pixel of the bait */
  constructor({ cover, thicknessMm }: Pick<BaitField, 'cover' | 'thicknessMm'>, ofPixel: (pixel: number) => number) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    const values = new Float32Array(cover.length);
    for (let pixel = 0; pixel < cover.length; pixel++) {
      if (cover[pixel]! === 0) continue;
      const value = ofPixel(pixel);
      values[pixel] = value;
      if (value < low) low = value;
      if (value > high) high = value;
    }
    this.low = low;
    this.high = high;
    const scale = high > low ? BINS / (high - low) : 0;
    let sum = 0;
    for (let pixel = 0; pixel < cover.length; pixel++) {
      const plastic = cover[pixel]! * thicknessMm[pixel]!;
      if (plastic === 0) continue;
      this.parts[Math.min(BINS - 1, ((values[pixel]! - low) * scale) | 0)]! += plastic;
      sum += plastic;
    }
    if (sum > 0) for (let bin = 0; bin < BINS; bin++) this.parts[bin]! /= sum;
  }

  /** Value in the middle of a bin. */
  valueAt(bin: number): number {
    return this.low + ((bin + 0.5) * (this.high - this.low)) / BINS;
  }
}

/** How far a value is past a border that is so wide, 0 to 1. */
export function rampUp(value: number, border: number, soft: number): number {
  const at = (value - border) / soft + 0.5;
  return at <= 0 ? 0 : at >= 1 ? 1 : at * at * (3 - 2 * at);
}

/** The border, so wide, before which a part of the plastic lies: by halving. */
export function valueBefore(bins: VolumeBins, part: number, soft: number): number {
  let [low, high] = [bins.low - soft, bins.high + soft];
  for (let step = 0; step < 20; step++) {
    const border = (low + high) / 2;
    let past = 0;
    for (let bin = 0; bin < BINS; bin++) past += bins.parts[bin]! * rampUp(bins.valueAt(bin), border, soft);
    if (1 - past < part) low = border;
    else high = border;
  }
  return (low + high) / 2;
}
