import { deltaE00 } from '../optics/delta-e00.ts';
import { labFromHex } from '../optics/display.ts';
import type { FoundThing } from '../render/find-view.ts';
import type { NearColour } from '../render/near-colours.ts';
import { differenceText } from '../render/words.ts';

/** A colour as it is found near to another, by ΔE00. */
export interface NearThing extends FoundThing {
  readonly deltaE: number;
}

/** What is farther off is another colour to anybody, ΔE00. Convention of this book. */
export const CLOSE = 12;

/** Where few are close, so many of the nearest are shown all the same. */
const AT_LEAST = 3;

/** How many of some colours, the nearest first, are worth showing before more are asked for. */
export function closeEnough(things: readonly NearThing[]): number {
  return Math.min(things.length, Math.max(AT_LEAST, things.filter(({ deltaE }) => deltaE <= CLOSE).length));
}

/** Colours with the nearest to `#rrggbb` first, each with, and in the colours of, what of it is that near. */
export function nearestFirst(colours: readonly NearColour[], hex: string): readonly NearThing[] {
  const wanted = labFromHex(hex);
  return colours
    .map(({ seen, ...thing }) => {
      const looks = seen.flatMap(([part, white, black]) =>
        [
          { hex: white, where: `${part} over white` },
          { hex: black, where: `${part} over black` },
        ].flatMap(({ hex: look, where }) =>
          look === null
            ? []
            : [{ deltaE: deltaE00(wanted, labFromHex(look)), where, white: white ?? look, black: black ?? look }],
        ),
      );
      const { deltaE, where, white, black } = looks.reduce((best, each) => (each.deltaE < best.deltaE ? each : best));
      return { ...thing, deltaE, about: `${where}, ${differenceText(deltaE)}`, white, black };
    })
    .sort((one, other) => one.deltaE - other.deltaE || one.title.localeCompare(other.title));
}
