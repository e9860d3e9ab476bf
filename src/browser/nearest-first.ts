import { deltaE00 } from '../optics/delta-e00.ts';
import { labFromHex } from '../optics/display.ts';
import type { FoundThing } from '../render/find-view.ts';
import type { NearColour } from '../render/near-colours.ts';
import { differenceText } from '../render/words.ts';

/** Colours with the nearest to `#rrggbb` first, each with, and in the colours of, what of it is that near. */
export function nearestFirst(colours: readonly NearColour[], hex: string): readonly FoundThing[] {
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
      return { deltaE, thing: { ...thing, about: `${where}, ${differenceText(deltaE)}`, white, black } };
    })
    .sort((one, other) => one.deltaE - other.deltaE || one.thing.title.localeCompare(other.thing.title))
    .map(({ thing }) => thing);
}
