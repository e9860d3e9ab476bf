/**
 * Cards on sheets of paper that are printed on both sides.
 *
 * @packageDocumentation
 */

/** Both sides of a card; one without a back is bare behind. */
export interface TwoSided<Side> {
  readonly front: Side;
  readonly back?: Side;
}

/** A sheet: what lies in each of its places, row by row; the back as it is printed, so that it meets the front when turned on the long edge. */
export interface DuplexSheet<Side> {
  readonly fronts: readonly (Side | undefined)[];
  readonly backs: readonly (Side | undefined)[];
}

/** Two beside each other, two above each other. */
const CARDS_A_SHEET = 4;

/** The cards of something with so many sides: fronts and backs in turn. */
export function cardsOf<Side>(sides: readonly Side[]): readonly TwoSided<Side>[] {
  return Array.from({ length: Math.ceil(sides.length / 2) }, (_, card) => {
    const [front, back] = sides.slice(2 * card, 2 * card + 2);
    return { front: front!, ...(back === undefined ? {} : { back }) };
  });
}

/**
 * Lays the cards of many recipes on sheets: those of one recipe all on one sheet, on the first that has room for them.
 *
 * Shape: one list of cards for each recipe in, sheets out. Only a recipe of more cards than a sheet has places goes on over several.
 *
 * @example duplexSheets([[{ front: 'a1', back: 'a2' }], [{ front: 'b1' }]]) // [{ fronts: ['a1', 'b1', undefined, undefined], backs: [undefined, 'a2', undefined, undefined] }]
 */
export function duplexSheets<Side>(recipes: readonly (readonly TwoSided<Side>[])[]): readonly DuplexSheet<Side>[] {
  const sheets: TwoSided<Side>[][] = [];
  for (const cards of recipes) {
    const roomy = sheets.find(({ length }) => length + cards.length <= CARDS_A_SHEET);
    if (roomy) roomy.push(...cards);
    else for (let at = 0; at < cards.length; at += CARDS_A_SHEET) sheets.push(cards.slice(at, at + CARDS_A_SHEET));
  }
  return sheets.map((cards) => {
    const places = Array.from({ length: CARDS_A_SHEET }, (_, place) => cards[place]);
    return {
      fronts: places.map((card) => card?.front),
      // Left and right change places behind.
      backs: places.map((_, place) => places[place % 2 === 0 ? place + 1 : place - 1]?.back),
    };
  });
}
