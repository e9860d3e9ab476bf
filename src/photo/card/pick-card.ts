import { CARDS, cardOfMarks, type Mark, type MeasuringCard, type Place } from '../../measuring-card/measuring-card.ts';
import type { CardRefused } from './card-read.ts';
import type { SeenMark } from './find-marks.ts';
import { type Homography, homographyOf, inverse, mapped } from './homography.ts';

/** With two marks a card is off by up to 5 mm, and nothing tells. */
const LEAST_MARKS = 3;

/** How far corners of the same card may be off before their edges are looked for, mm: further, and they are of two cards. */
const ONE_CARD_MM = 2;

/** All ids that marks of cards have. */
export const MARK_IDS: readonly number[] = Object.values(CARDS).flatMap(({ marks }) => marks.map(({ id }) => id));

/** A card in a photo, as its marks show it. */
export interface PickedCard {
  readonly card: MeasuringCard;
  /** From mm to pixels. */
  readonly H: Homography;
}

type Pair = readonly [place: Place, seen: Place];

/**
 * The card that marks are of. Of several equal ones, as on a sheet that was not cut, it is the one that is largest in the photo.
 */
export function pickCard(seen: readonly SeenMark[]): PickedCard | CardRefused {
  const ids = [...new Set(seen.map(({ id }) => id))];
  const card = cardOfMarks(ids);
  if (card === undefined && ids.length > 0) return { kind: 'refused', reason: 'two-kinds', found: ids.length };
  if (card === undefined || ids.length < LEAST_MARKS)
    return { kind: 'refused', reason: 'too-few-marks', found: ids.length };
  const choices = choicesOf(
    card.marks.map((mark) => seen.filter(({ id }) => id === mark.id).map((each) => pairsOf(mark, each))),
  );
  const fitting = choices.flatMap((pairs) => {
    const H = homographyOf(pairs);
    return H === undefined || rmsMm(H, pairs) > ONE_CARD_MM ? [] : [{ H, size: sizeOf(pairs) }];
  });
  if (fitting.length === 0) return { kind: 'refused', reason: 'too-few-marks', found: ids.length };
  return { card, H: fitting.reduce((most, each) => (each.size > most.size ? each : most)).H };
}

/** Every way to take one mark of each id that was seen. */
function choicesOf(byMark: readonly (readonly (readonly Pair[])[])[]): readonly (readonly Pair[])[] {
  return byMark.reduce<readonly (readonly Pair[])[]>(
    (choices, marks) =>
      marks.length === 0 ? choices : choices.flatMap((choice) => marks.map((pairs) => [...choice, ...pairs])),
    [[]],
  );
}

function pairsOf({ x, y, width, height }: Mark, { corners }: SeenMark): readonly Pair[] {
  const own = [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
  return own.map((place, i) => [place, corners[i]!]);
}

function rmsMm(H: Homography, pairs: readonly Pair[]): number {
  const back = inverse(H);
  const squares = pairs.map(([place, seen]) => {
    const { x, y } = mapped(back, seen);
    return (x - place.x) ** 2 + (y - place.y) ** 2;
  });
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length);
}

/** Pixels that a mm takes, by the sides of the marks. */
function sizeOf(pairs: readonly Pair[]): number {
  const sides = pairs.flatMap(([place, seen], i) => {
    if (i % 4 === 3) return [];
    const [next, nextSeen] = pairs[i + 1]!;
    return Math.hypot(nextSeen.x - seen.x, nextSeen.y - seen.y) / Math.hypot(next.x - place.x, next.y - place.y);
  });
  return sides.reduce((sum, side) => sum + side, 0) / sides.length;
}
