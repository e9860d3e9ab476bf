import fc from 'fast-check';
import { expect, test } from 'vitest';
import { SPOT_MM } from '../../src/measuring-card/bare-spots.ts';
import {
  type Box,
  CARDS,
  cardOfMarks,
  GREY_VALUES,
  type Grey,
  type Mark,
  type MeasuringCard,
  type Place,
  SCALE_MM,
} from '../../src/measuring-card/measuring-card.ts';

const cards: readonly MeasuringCard[] = Object.values(CARDS);

/** How far apart two boxes are, mm; negative where they overlap. */
function gap(one: Box, other: Box): number {
  const across = Math.max(one.x - (other.x + other.width), other.x - (one.x + one.width));
  const down = Math.max(one.y - (other.y + other.height), other.y - (one.y + one.height));
  return Math.max(across, down);
}

function printedOf({ marks, greys, window, scale, words, address }: MeasuringCard): readonly Box[] {
  return [...marks, ...greys, window, scale, ...words, address];
}

/** A mark is six cells of its code across, and one of its border on each side. */
const cellOf = ({ width }: Mark): number => width / 8;

const spot = ({ x, y }: Place): Box => ({
  x: x - SPOT_MM / 2,
  y: y - SPOT_MM / 2,
  width: SPOT_MM,
  height: SPOT_MM,
});

test.each(cards)('the $kind card has everything within its edges, and nothing on something else', (card) => {
  const printed = printedOf(card);
  for (const [index, one] of printed.entries()) {
    expect(Math.min(one.x, one.y, card.width - one.x - one.width, card.height - one.y - one.height)).toBeGreaterThan(3);
    for (const other of printed.slice(index + 1)) expect(gap(one, other)).toBeGreaterThanOrEqual(0);
  }
});

test('four small cards fit A4 and Letter, and one large one on its side', () => {
  const [a4, letter] = [
    { width: 210, height: 297 },
    { width: 215.9, height: 279.4 },
  ];
  for (const paper of [a4, letter]) {
    expect(2 * CARDS.small.height).toBeLessThan(paper.width);
    expect(2 * CARDS.small.width).toBeLessThan(paper.height);
    const marks = CARDS.large.marks[0]!;
    const bare = Math.min(paper.width - CARDS.large.height, paper.height - CARDS.large.width) / 2 + marks.x;
    expect(bare).toBeGreaterThan(10);
  }
});

test.each(cards)('around a mark of the $kind card there is white for a cell and more', ({ marks, ...card }) => {
  for (const mark of marks) {
    const cell = cellOf(mark);
    expect(mark.width).toBe(mark.height);
    for (const other of printedOf({ ...card, marks: [] })) expect(gap(mark, other)).toBeGreaterThan(2 * cell);
    expect(mark.x).toBeGreaterThanOrEqual(2 * cell);
  }
});

test.each(cards)(
  'the greys of the $kind card lie in opposed order, the same ones above each other from both ends',
  ({ greys, seamX }) => {
    const stepsOf = (row: Grey['row']): readonly number[] =>
      greys
        .filter((grey) => grey.row === row)
        .sort((one, other) => one.x - other.x)
        .map(({ step }) => step);
    expect(stepsOf('above')).toEqual([0, 1, 2, 3, 4]);
    expect(stepsOf('below')).toEqual([4, 3, 2, 1, 0]);
    for (const step of GREY_VALUES.keys()) {
      const both = greys.filter((grey) => grey.step === step);
      const middle = both.reduce((sum, { x, width }) => sum + x + width / 2, 0) / both.length;
      expect(middle).toBeCloseTo(seamX, 9);
    }
  },
);

test.each(cards)('a spot of paper of the $kind card meets nothing that is printed, nor a bait', (card) => {
  const { paperSpots, window, height } = card;
  expect(paperSpots.length).toBeGreaterThan(250);
  const bait: Box = { x: 0, y: height / 2 - window.height / 4, width: card.width, height: window.height / 2 };
  for (const place of paperSpots) {
    for (const other of [...printedOf(card), bait]) expect(gap(spot(place), other)).toBeGreaterThan(0.5);
  }
});

test.each(cards)('paper of the $kind card is read all over it, also between the greys and the window', (card) => {
  const { paperSpots, greys, window, width, height } = card;
  const under = Math.max(...greys.filter(({ row }) => row === 'above').map((grey) => grey.y + grey.height));
  const beside = ({ x }: Place): boolean => Math.abs(x - card.seamX) < window.width / 2 - 10;
  expect(paperSpots.filter((place) => place.y > under && place.y < window.y && beside(place)).length).toBeGreaterThan(
    15,
  );
  for (const across of [0, 1, 2]) {
    for (const down of [0, 1, 2]) {
      if (across === 1 && down === 1) continue;
      const there = paperSpots.filter(
        ({ x, y }) => Math.floor((3 * x) / width) === across && Math.floor((3 * y) / height) === down,
      );
      expect(there.length, `${across}, ${down}`).toBeGreaterThan(8);
    }
  }
});

test.each(cards)(
  'a spot of black of the $kind card lies within the black half, and beside a bait',
  ({ blackSpots, window, seamX, height }) => {
    expect(blackSpots.length).toBeGreaterThan(15);
    for (const { x, y } of blackSpots) {
      expect(x - seamX).toBeGreaterThan(2.5);
      expect(window.x + window.width - x).toBeGreaterThan(2);
      expect(y - window.y > SPOT_MM / 2 && window.y + window.height - y > SPOT_MM / 2).toBe(true);
      expect(Math.abs(y - height / 2)).toBeGreaterThan(window.height / 4 + SPOT_MM / 2);
    }
  },
);

test.each(cards)(
  'beside every edge of the $kind card there is dark at the right hand and paper at the left',
  (card) => {
    const { edges, marks, greys, window, seamX } = card;
    const black: Box = { ...window, x: seamX, width: window.width / 2 };
    const dark = [...marks, ...greys, black];
    const inDark = (x: number, y: number) => dark.some((box) => gap({ x, y, width: 0, height: 0 }, box) < 0);
    expect(edges.length).toBeGreaterThan(45);
    for (const [from, to] of edges) {
      const length = Math.hypot(to.x - from.x, to.y - from.y);
      const [right, down] = [-(to.y - from.y) / length, (to.x - from.x) / length];
      for (const part of [0, 0.5, 1]) {
        const [x, y] = [from.x + part * (to.x - from.x), from.y + part * (to.y - from.y)];
        expect(inDark(x + 0.9 * right, y + 0.9 * down)).toBe(true);
        expect(inDark(x - 0.9 * right, y - 0.9 * down)).toBe(false);
      }
    }
  },
);

test('the scale is as long as it says', () => {
  for (const { scale } of cards) expect(scale.width).toBe(SCALE_MM);
});

test('cardOfMarks(ids) is the card of any of its marks, and of no marks or of two cards none', () => {
  const all = cards.flatMap(({ marks }) => marks.map(({ id }) => id));
  expect(new Set(all).size).toBe(8);
  fc.assert(
    fc.property(fc.subarray(all), fc.array(fc.nat(249)), (ids, others) => {
      const strange = others.filter((id) => !all.includes(id));
      const of = cards.filter(({ marks }) => marks.some(({ id }) => ids.includes(id)));
      expect(cardOfMarks([...strange, ...ids])).toBe(of.length === 1 ? of[0] : undefined);
    }),
  );
});
