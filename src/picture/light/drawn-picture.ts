/**
 * A bait's picture: its computed colour and flake, with light, gloss and shadow drawn over them.
 *
 * @packageDocumentation
 */
import type { Backings } from '../../optics/optical-model.ts';
import type { BaitField } from '../../shapes/bait-field.ts';
import type { ComputedColour } from '../colour/computed-colour.ts';
import type { FlakeLayer } from '../flake/flake-layer.ts';
import { keptFloats } from '../kept-arrays.ts';
import type { Raster } from '../raster.ts';
import { type CardLight, cardLight } from './card-shadow.ts';
import { type Card, cardsOf } from './cards.ts';
import { type FieldLight, fieldLight } from './field-light.ts';
import { srgbByte } from './srgb-bytes.ts';

/** What is drawn of a bait. */
export interface ToDraw {
  readonly field: BaitField;
  readonly colour: ComputedColour;
  readonly flake?: FlakeLayer | undefined;
  /** How much of the colour is of pearl, which changes with the angle: 0 to 1. */
  readonly pearl?: number;
  /** The cards over which the colour was computed. */
  readonly backings: Backings;
  /** Turned round, left for right, as a bait is whose other side is looked at. Unset: as it lies in its field. */
  readonly turned?: boolean;
}

/** A bait over white and over black. */
export interface BaitPicture {
  readonly overWhite: Raster;
  readonly overBlack: Raster;
}

/** How much of what comes back from the far side of clear plastic gets to the eye. */
const INNER = 0.5;

/** Flake takes the shade of the body for this part: for the rest its faces have a light of their own. */
const FLAKE_SHADED = 0.6;

/** Of gloss, this part is lost on what is white already: so it stays a shape on pale plastic. */
const LOST_ON_WHITE = 0.6;

/**
 * Draws light on a bait: gloss, shading, what glows from within, and its shadow on the card. What is computed is only read.
 *
 * Same bytes for the same numbers.
 */
export function drawnPicture(drawn: ToDraw): BaitPicture {
  const { field, colour, backings, turned = false } = drawn;
  const { columns, rows } = field;
  const cards = cardsOf(backings);
  const light = fieldLight(field, turned);
  const clear = clearness(colour, light, cards);
  const shadow = cardLight(field, light, clear, turned);
  const rasters = [cards.white, cards.black].map((card) => bareCard(columns, rows, card));
  const [white, black] = rasters as [Uint8ClampedArray, Uint8ClampedArray];
  const onCard = keptFloats('card row', 3 * columns);
  for (let row = 0; row < rows; row++) {
    const shaded = onCardRow(shadow, row, field, onCard);
    for (let x = shaded.first; x < shaded.last; x++) {
      if (field.cover[row * columns + x]! > 0) continue;
      const to = 3 * (row * columns + (turned ? columns - 1 - x : x));
      for (let channel = 0; channel < 3; channel++) {
        white[to + channel] = srgbByte(cards.white.bare[channel]! * onCard[3 * x + channel]!);
        black[to + channel] = srgbByte(cards.black.bare[channel]! * onCard[3 * x + channel]!);
      }
    }
    drawRow(row, { ...drawn, turned, light, clear, onCard, cards, white, black });
  }
  return { overWhite: { columns, rows, rgb: white }, overBlack: { columns, rows, rgb: black } };
}

interface RowParts extends ToDraw {
  readonly turned: boolean;
  readonly light: FieldLight;
  readonly clear: Float32Array;
  readonly onCard: Float32Array;
  readonly cards: { readonly white: Card; readonly black: Card };
  readonly white: Uint8ClampedArray;
  readonly black: Uint8ClampedArray;
}

/** Draws the bait in a row of pixels. */
function drawRow(row: number, parts: RowParts): void {
  const { field, colour, flake, pearl = 0, turned, light, clear, onCard, cards, white, black } = parts;
  const { columns, cover } = field;
  const { inside, rowStart, hiding, clear: glow, past, gloss, mirror, inner, pearl: pearls } = light;
  const { white: overWhite, black: overBlack } = colour;
  const rgba = flake?.rgba;
  const [bareWhite, bareBlack] = [cards.white.bare, cards.black.bare];
  const from = row * columns;
  for (let i = rowStart[row]!, end = rowStart[row + 1]!; i < end; i++) {
    const at = inside[i]!;
    const whole = cover[at]!;
    const shade = hiding[i]!;
    const gain = glow[i]! - shade;
    const flaked = rgba === undefined ? 0 : rgba[4 * at + 3]!;
    const under = past[i]! * (1 - flaked);
    const sheen = pearl * pearls[i]!;
    const back = INNER * inner[i]! * (1 - flaked);
    const piece = past[i]! * (1 - FLAKE_SHADED + FLAKE_SHADED * shade);
    const to = 3 * (turned ? from + columns - 1 - (at - from) : at);
    for (let channel = 0; channel < 3; channel++) {
      const k = 3 * at + channel;
      const seen = clear[3 * i + channel]!;
      // What is seen through plastic has no sheen of it.
      const lit = (shade + seen * gain) * under * (1 + sheen * (1 - seen));
      const added = seen * back + (flaked > 0 ? rgba![4 * at + channel]! * piece : 0);
      let w = glossed(overWhite[k]! * lit + added, gloss[i]! + mirror[i]! * bareWhite[channel]!);
      let b = glossed(overBlack[k]! * lit + added, gloss[i]! + mirror[i]! * bareBlack[channel]!);
      if (whole < 1) {
        const rest = (1 - whole) * onCard[k - 3 * from]!;
        w = whole * w + rest * bareWhite[channel]!;
        b = whole * b + rest * bareBlack[channel]!;
      }
      white[to + channel] = srgbByte(w);
      black[to + channel] = srgbByte(b);
    }
  }
}

function glossed(colour: number, gloss: number): number {
  return colour + gloss * (1 - LOST_ON_WHITE * (colour <= 0 ? 0 : Math.min(colour, 1)));
}

function bareCard(columns: number, rows: number, { bare }: Card): Uint8ClampedArray {
  const rgb = new Uint8ClampedArray(3 * columns * rows);
  rgb.set(Array.from(bare, srgbByte));
  for (let done = 3; done < rgb.length; done *= 2) rgb.copyWithin(done, 0, Math.min(done, rgb.length - done));
  return rgb;
}

/** What of the card is seen through the bait at each pixel inside and in each channel: 0 where it hides, 1 where it is not there. */
function clearness(
  { white, black }: ComputedColour,
  { inside }: FieldLight,
  cards: { readonly white: Card; readonly black: Card },
): Float32Array {
  const clear = keptFloats('clear', 3 * inside.length);
  const gaps = Array.from(cards.white.below, (light, channel) => 1 / (light - cards.black.below[channel]!));
  for (let i = 0; i < inside.length; i++) {
    for (let channel = 0; channel < 3; channel++) {
      const at = 3 * inside[i]! + channel;
      const seen = (white[at]! - black[at]!) * gaps[channel]!;
      clear[3 * i + channel] = seen <= 0 ? 0 : Math.min(seen, 1);
    }
  }
  return clear;
}

/** Writes the light on the card along a row of pixels, three numbers each, where some of the card is seen; returns where it may be other than 1. */
function onCardRow(
  { cell, columns, rows, light, reach }: CardLight,
  row: number,
  { columns: pixels, cover }: BaitField,
  out: Float32Array,
): { readonly first: number; readonly last: number } {
  out.fill(1);
  const down = Math.max(0, (row + 0.5) / cell - 0.5);
  const upper = Math.min(rows - 2, Math.floor(down));
  if (upper + 1 < reach.top || upper > reach.bottom) return { first: 0, last: 0 };
  const fy = down - upper;
  const size = columns * rows;
  const first = Math.max(0, (reach.left - 1) * cell);
  const last = Math.min(pixels, (reach.right + 2) * cell);
  for (let x = first; x < last; x++) {
    if (cover[row * pixels + x]! >= 1) continue;
    const across = Math.max(0, (x + 0.5) / cell - 0.5);
    const left = across | 0;
    const fx = across - left;
    let at = upper * columns + left;
    for (let channel = 0; channel < 3; channel++, at += size) {
      const above = light[at]! + fx * (light[at + 1]! - light[at]!);
      const below = light[at + columns]! + fx * (light[at + columns + 1]! - light[at + columns]!);
      out[3 * x + channel] = above + fy * (below - above);
    }
  }
  return { first, last };
}
