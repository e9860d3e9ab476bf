import type { MeasuringCard, Place } from '../../measuring-card/measuring-card.ts';
import { CHANNELS, type Channel } from '../channels.ts';
import { PixelReducer } from '../pixel-reducer.ts';
import { type LinearRgb, lightOfPixel, type Pixels } from '../pixels.ts';
import type { CardPlaces } from './chart-patches.ts';

/** A card that was found, and the light on it. */
export interface CardBeside extends CardPlaces {
  readonly card: Pick<MeasuringCard, 'width' | 'height'>;
  readonly field: { at(place: Place): LinearRgb };
}

/** Longest side of the picture, pixels: a patch of a chart has several of them. */
const LONGEST_SIDE = 480;

/** How far from the card it is looked, by the card's own width: a chart of any size lies nearer. */
const REACH = 3;

/**
 * What lies around a card, as if seen from straight above: the cube root of each channel as a part of the paper's, which goes by even steps
 * as the eye does.
 */
export class PlanePicture {
  /** Of a cell, mm. */
  readonly cellMm: number;
  readonly left: number;
  readonly top: number;
  readonly columns: number;
  readonly rows: number;
  /** Three values a cell; not a number where the photo shows nothing, or the card. */
  readonly values: Float32Array;

  constructor(pixels: Pixels, card: CardBeside) {
    const { width, height } = card.card;
    const reducer = new PixelReducer(pixels, LONGEST_SIDE);
    reducer.add(pixels.data);
    const small = reducer.result();
    const by = small.width / pixels.width;
    const middle = { x: width / 2, y: height / 2 };
    const [from, to] = [card.toPixel(middle), card.toPixel({ x: middle.x + 1, y: middle.y })];
    this.cellMm = 1 / (by * Math.hypot(to.x - from.x, to.y - from.y));
    const edge = [0, 0.5, 1].flatMap((x) =>
      [0, 0.5, 1].map((y) => card.toPlace({ x: x * pixels.width, y: y * pixels.height })),
    );
    const reach = REACH * width;
    const clamped = (value: number, around: number): number =>
      Math.min(around + reach, Math.max(around - reach, value));
    const xs = edge.map(({ x }) => clamped(x, middle.x));
    const ys = edge.map(({ y }) => clamped(y, middle.y));
    this.left = Math.min(...xs);
    this.top = Math.min(...ys);
    this.columns = Math.ceil((Math.max(...xs) - this.left) / this.cellMm);
    this.rows = Math.ceil((Math.max(...ys) - this.top) / this.cellMm);
    this.values = new Float32Array(3 * this.columns * this.rows).fill(Number.NaN);
    const paper = card.field.at(middle);
    for (let row = 0; row < this.rows; row++)
      for (let column = 0; column < this.columns; column++) {
        const place = { x: this.left + (column + 0.5) * this.cellMm, y: this.top + (row + 0.5) * this.cellMm };
        if (place.x >= 0 && place.x < width && place.y >= 0 && place.y < height) continue;
        const pixel = card.toPixel(place);
        const light = lightAt(small, by * pixel.x, by * pixel.y);
        if (light === undefined) continue;
        const values = rootsOf(light, paper);
        this.values.set(values, 3 * (row * this.columns + column));
      }
  }

  /** Where the three values of a place begin; undefined where there are none. */
  indexAt(x: number, y: number): number | undefined {
    const column = Math.floor((x - this.left) / this.cellMm);
    const row = Math.floor((y - this.top) / this.cellMm);
    if (column < 0 || row < 0 || column >= this.columns || row >= this.rows) return undefined;
    const index = 3 * (row * this.columns + column);
    return Number.isNaN(this.values[index]!) ? undefined : index;
  }
}

/** Cube roots of the channels of a light, each as a part of the paper's. */
export function rootsOf(light: LinearRgb, paper: LinearRgb): readonly number[] {
  return CHANNELS.map((channel: Channel) => Math.cbrt(Math.max(0, light[channel]) / Math.max(1e-6, paper[channel])));
}

function lightAt(pixels: Pixels, x: number, y: number): LinearRgb | undefined {
  const [column, row] = [Math.floor(x), Math.floor(y)];
  const isInside = column >= 0 && row >= 0 && column < pixels.width && row < pixels.height;
  return isInside ? lightOfPixel(pixels, column, row) : undefined;
}
