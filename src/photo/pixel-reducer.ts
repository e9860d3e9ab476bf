/**
 * A photo made smaller: what no phone's photo of 12 million pixels needs, and one of 48 does, since browsers draw no larger picture.
 *
 * One way for all: two browsers and a decoder that each reduce by a filter of their own would measure one photo differently.
 *
 * @packageDocumentation
 */
import { modeLrgb, modeRgb, useMode } from 'culori/fn';
import { LIGHT_OF_BYTE, type Pixels } from './pixels.ts';

useMode(modeRgb);
const linearFrom = useMode(modeLrgb);

/** Longest side of what is measured, pixels. Some phones' browsers draw at most 4096 × 4096. */
export const LONGEST_SIDE = 4096;

const CHANNELS = 3;
const BYTES = 4;

/** Steps of light that a byte is looked up by: some twenty of them are between the darkest bytes, which lie closest. */
const STEPS = 65_535;

/**
 * Makes a photo smaller as its rows come: each pixel is the mean, in linear light, of the area that it covers. One that is small enough
 * comes out as it was.
 *
 * @example new PixelReducer({ width: 8064, height: 6048 }).size // { width: 4096, height: 3072 }
 */
export class PixelReducer {
  readonly size: { readonly width: number; readonly height: number };
  private readonly from: Omit<Pixels, 'data'>;
  private readonly data: Uint8ClampedArray<ArrayBuffer>;
  /** Sums of the row that is being made. */
  private readonly sums: Float64Array;
  private readonly narrowed: Float64Array;
  private rowsSeen = 0;

  /** @param longest what the longer side may have at most, pixels */
  constructor(from: Omit<Pixels, 'data'>, longest = LONGEST_SIDE) {
    const by = Math.max(1, Math.max(from.width, from.height) / longest);
    this.from = from;
    this.size = {
      width: Math.max(1, Math.round(from.width / by)),
      height: Math.max(1, Math.round(from.height / by)),
    };
    this.data = new Uint8ClampedArray(BYTES * this.size.width * this.size.height).fill(255);
    this.sums = new Float64Array(CHANNELS * this.size.width);
    this.narrowed = new Float64Array(CHANNELS * this.size.width);
  }

  /**
   * Takes the next rows.
   *
   * @param rows whole rows, four bytes a pixel
   * Throws: RangeError if they are no whole rows, or more than the photo has.
   */
  add(rows: ArrayLike<number>): void {
    const { width, height } = this.from;
    const count = rows.length / (BYTES * width);
    if (!Number.isInteger(count)) throw new RangeError(`${rows.length} bytes are no whole rows of ${width} pixels`);
    if (this.rowsSeen + count > height) throw new RangeError(`More than the ${height} rows of the photo were given`);
    if (this.size.width === width && this.size.height === height) {
      this.data.set(rows, BYTES * width * this.rowsSeen);
      this.rowsSeen += count;
      return;
    }
    for (let row = 0; row < count; row++) {
      this.narrow(rows, BYTES * width * row);
      this.spread(this.rowsSeen++);
    }
  }

  /** The smaller photo. Throws: RangeError if rows are missing. */
  result(): Pixels {
    const { height, space } = this.from;
    if (this.rowsSeen < height) throw new RangeError(`Only ${this.rowsSeen} of ${height} rows were given; give all`);
    return { data: this.data, ...this.size, ...(space === undefined ? {} : { space }) };
  }

  /** One row, its pixels joined along it: light, times the part of a pixel that it fills. */
  private narrow(rows: ArrayLike<number>, start: number): void {
    const by = this.from.width / this.size.width;
    const { narrowed } = this;
    narrowed.fill(0);
    for (let column = 0; column < this.from.width; column++) {
      const first = Math.min(this.size.width - 1, Math.floor(column / by));
      const inFirst = Math.min(1, Math.max(0, (first + 1) * by - column));
      for (let channel = 0; channel < CHANNELS; channel++) {
        const light = LIGHT_OF_BYTE[rows[start + BYTES * column + channel]!]!;
        narrowed[CHANNELS * first + channel]! += (light * inFirst) / by;
        if (inFirst < 1 && first + 1 < this.size.width)
          narrowed[CHANNELS * (first + 1) + channel]! += (light * (1 - inFirst)) / by;
      }
    }
  }

  /** Adds the joined row to the one or two that it lies in, and writes those that are whole. */
  private spread(row: number): void {
    const by = this.from.height / this.size.height;
    const first = Math.min(this.size.height - 1, Math.floor(row / by));
    const inFirst = Math.min(1, Math.max(0, (first + 1) * by - row));
    const { sums, narrowed } = this;
    for (let i = 0; i < sums.length; i++) sums[i]! += (narrowed[i]! * inFirst) / by;
    const isWhole = row + 1 === this.from.height || Math.floor((row + 1) / by) > first;
    if (!isWhole) return;
    this.write(first);
    for (let i = 0; i < sums.length; i++) sums[i] = (narrowed[i]! * (1 - inFirst)) / by;
  }

  private write(row: number): void {
    const { width } = this.size;
    for (let column = 0; column < width; column++)
      for (let channel = 0; channel < CHANNELS; channel++) {
        const step = Math.round(STEPS * Math.min(1, this.sums[CHANNELS * column + channel]!));
        this.data[BYTES * (width * row + column) + channel] = BYTE_OF_STEP[step]!;
      }
  }
}

/** The byte nearest to a light, in the file's own steps. */
const BYTE_OF_STEP = Uint8Array.from({ length: STEPS + 1 }, () => 255);
for (let byte = 0, step = 0; byte < 255; byte++) {
  const next = linearFrom({ mode: 'rgb', r: (byte + 0.5) / 255, g: 0, b: 0 }).r;
  for (; step <= STEPS && step / STEPS < next; step++) BYTE_OF_STEP[step] = byte;
}
