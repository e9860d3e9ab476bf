/**
 * Cups of which one lies inside the other, or on its bottom: how much of a line of sight runs through it hangs on where it goes.
 *
 * @packageDocumentation
 */
import { discPlace } from '../../patterns/disc.ts';
import type { Run } from '../../patterns/place.ts';
import { aroundCore, bottomPart, corePart, onBottom } from '../../patterns/through.ts';
import { ColourTable } from './colour-table.ts';
import { metFrom, type PaintedSide, type Painter } from './painter.ts';

/** Parts of the thickness for which there are tables, at even distances. */
const PARTS = 10;

/** The second cup in the middle of the first, in the body alone: what is shot into the middle does not get into a tail. */
export function corePainter(painted: PaintedSide): Painter {
  const { cover, part, alongMm, across } = painted.field;
  const [, { share } = { share: 0 }] = painted.side.cups;
  let [nose, end] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let pixel = 0; pixel < cover.length; pixel++) {
    if (cover[pixel] === 0 || part[pixel] !== 0) continue;
    nose = Math.min(nose, alongMm[pixel]!);
    end = Math.max(end, alongMm[pixel]!);
  }
  return partPainter(painted, aroundCore, (pixel) => {
    const place = (2 * alongMm[pixel]! - nose - end) / (end - nose);
    return corePart(share * blunt(place), across[pixel]!);
  });
}

/** How wide a core is at a place between the ends of the body, −1 to 1: it ends near them, bluntly, by the eighth power. Looked for by eye. */
function blunt(place: number): number {
  const square = place * place;
  const fourth = square * square;
  return fourth >= 1 ? 0 : Math.sqrt(1 - fourth * fourth);
}

/** The second cup at the far side of the body, as it lies level in the bottom of a mold. */
export function stripePainter(painted: PaintedSide): Painter {
  const { across } = painted.field;
  const [, { share } = { share: 0 }] = painted.side.cups;
  const level = discPlace(1 - share);
  return partPainter(painted, onBottom, (pixel) => bottomPart(level, across[pixel]!));
}

/** Paints by the part of the thickness that the second cup takes. */
function partPainter(
  { bait, side, field: { cover, thicknessMm }, thickestMm }: PaintedSide,
  runsOf: (part: number) => readonly Run[],
  partOf: (pixel: number) => number,
): Painter {
  const tables = Array.from(
    { length: PARTS + 1 },
    (_, index) => new ColourTable(bait, metFrom(side, runsOf(index / PARTS)), side.taught[0] ?? [], thickestMm),
  );
  return {
    paint(into) {
      for (let pixel = 0; pixel < cover.length; pixel++) {
        if (cover[pixel] === 0) continue;
        const mm = thicknessMm[pixel]!;
        const place = PARTS * partOf(pixel);
        const cell = Math.min(PARTS - 1, place | 0);
        if (place === cell) tables[cell]!.write(mm, into, 3 * pixel);
        else tables[cell]!.writeBetween(tables[cell + 1]!, place - cell, mm, into, 3 * pixel);
      }
    },
    runsAt: (pixel) => metFrom(side, runsOf(partOf(pixel))),
  };
}
