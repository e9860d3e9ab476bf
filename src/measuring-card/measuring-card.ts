/**
 * The card that is printed, laid under a bait and photographed: what lies where on it. Its sizes are a convention of
 * this book; nothing here knows of colours.
 *
 * @packageDocumentation
 */
import type { CardKind, MeasuringCard } from './card.ts';
import { type CardSizes, laidOut } from './laid-out.ts';

export type { Box, Place } from './box.ts';
export { type CardKind, GREY_VALUES, type Grey, type Mark, type MeasuringCard, SCALE_MM } from './card.ts';

/** 136 × 96 mm is a quarter of A4 and of Letter, with room for what a printer leaves bare. */
const SMALL: CardSizes = {
  kind: 'small',
  ids: [4, 27, 101, 200],
  width: 136,
  height: 96,
  mark: 14,
  window: [100, 28],
  grey: [15, 9, 3, 5],
  scaleBelow: 19,
  wordsAbove: [5, 86, 9],
  address: 11,
  spotPitch: 2.75,
};

/** 268 × 198 mm lies on A4 and on Letter, its marks at least 10 mm from the paper's edge. */
const LARGE: CardSizes = {
  kind: 'large',
  ids: [9, 50, 120, 222],
  width: 268,
  height: 198,
  mark: 20,
  window: [200, 45],
  grey: [27, 14, 5, 10],
  scaleBelow: 40,
  wordsAbove: [7, 180, 22],
  address: 18,
  spotPitch: 6.5,
};

/** The cards that a book prints. */
export const CARDS: Readonly<Record<CardKind, MeasuringCard>> = { small: laidOut(SMALL), large: laidOut(LARGE) };

/** The card that marks with these ids are of; undefined where there is none, or where they are of two kinds. */
export function cardOfMarks(ids: readonly number[]): MeasuringCard | undefined {
  const seen = Object.values(CARDS).filter(({ marks }) => marks.some(({ id }) => ids.includes(id)));
  return seen.length === 1 ? seen[0] : undefined;
}
