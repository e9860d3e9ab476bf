import type { Cut } from '../../cup/cut.ts';
import { fittingCuts } from '../../cup/cut-measures.ts';

// Part of a cup's plastic that a cut may bring with it: with more the colour is another than was reckoned. Convention of this book.
const MOST_BROUGHT = 0.02;

/** The cuts by which so many grams of a bottle can go into a cup whose colour is reckoned without what they are cut with. */
export function cutsInCup(grams: number, cuts: readonly Cut[], plasticMl: number): readonly Cut[] {
  return cuts.filter((cut) => {
    const plastics = cut.plasticPerGram === undefined ? { '': plasticMl } : { [cut.with]: MOST_BROUGHT * plasticMl };
    return fittingCuts(grams, [cut], { materials: {}, plastics }).length > 0;
  });
}
