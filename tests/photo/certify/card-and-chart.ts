/**
 * Photos of a card with a colour chart beside it, both flat on a table.
 */
import { CARDS, type Place } from '../../../src/measuring-card/measuring-card.ts';
import type { Pixels } from '../../../src/photo/pixels.ts';
import { COLOUR_CHART } from '../../../src/tables/colour-chart.ts';
import { type Look, photoOfCard } from '../card/seen-card.ts';
import { linearOf } from './chart-light.ts';

/** How a chart lies: the middle of its first patch, mm of the card, and the way from patch to patch along a row. */
export interface LyingChart {
  readonly at: Place;
  readonly pitch: number;
  /** Degrees. */
  readonly turn: number;
}

/** What a patch is wide, in parts of the way to the next, and the frame around all. */
const PATCH = 0.85;
const FRAME = 0.75;

/** What the paper of the card throws back, and its black. */
export const PAPER = [0.86, 0.85, 0.8] as const;
const FRAME_BLACK = 0.03;

/** Middles of the chart's corner patches, mm of the card. */
export function chartCorners({ at, pitch, turn }: LyingChart): readonly Place[] {
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  return [
    [0, 0],
    [5, 0],
    [5, 3],
    [0, 3],
  ].map(([column, row]) => ({
    x: at.x + pitch * (cos * column! - sin * row!),
    y: at.y + pitch * (sin * column! + cos * row!),
  }));
}

/** How light falls on both. */
export interface LitBoth {
  /** Of white at a place, linear: 0.75 if left out. */
  readonly light?: (place: Place) => number;
}

/** How the light is coloured, and the ink of the card as a part of its paper. */
const TINT = [1.05, 1, 0.85] as const;
export const INK = 0.045;

/** Takes the photo: without a chart, of the card alone. */
export function photoOfBoth(
  look: Look,
  chart: LyingChart | undefined,
  { light = () => 0.75 }: LitBoth = {},
): Promise<Pixels> {
  const reflects = (place: Place): readonly number[] => (chart && onChart(place, chart)) ?? PAPER;
  return photoOfCard(CARDS.small, look, {
    ink: INK,
    covered: (place) => (chart && onChart(place, chart) ? 1 : undefined),
    light: (place) => reflects(place).map((R, i) => R * light(place) * TINT[i]!) as unknown as [number, number, number],
  });
}

function onChart({ x, y }: Place, { at, pitch, turn }: LyingChart): readonly number[] | undefined {
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const [u, v] = [(cos * (x - at.x) + sin * (y - at.y)) / pitch, (cos * (y - at.y) - sin * (x - at.x)) / pitch];
  if (u < -FRAME || u > 5 + FRAME || v < -FRAME || v > 3 + FRAME) return undefined;
  const [column, row] = [Math.round(u), Math.round(v)];
  const isPatch = Math.max(Math.abs(u - column), Math.abs(v - row)) < PATCH / 2;
  return isPatch ? CHART[6 * row + column]! : [FRAME_BLACK, FRAME_BLACK, FRAME_BLACK];
}

const CHART = COLOUR_CHART.map(linearOf);
