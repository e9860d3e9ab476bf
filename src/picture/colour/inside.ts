/**
 * Cups of which one lies inside the other, or on its bottom: how much of a line of sight runs through it hangs on where it goes.
 *
 * @packageDocumentation
 */
import { discPlace } from '../../patterns/disc.ts';
import type { Run } from '../../patterns/place.ts';
import { aroundCore, bottomPart, corePart, onBottom } from '../../patterns/through.ts';
import { ColourTable, clearPixel } from './colour-table.ts';
import { metFrom, type PaintedSide, type Painter } from './painter.ts';

/** Parts of the thickness for which there are tables, at even distances. */
const PARTS = 10;

/** A core ends so near the ends of the body, as a power of the place between them: high, so that it is blunt. Looked for by eye. */
const BLUNT = 8;

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
    return corePart(share * Math.sqrt(Math.max(0, 1 - place ** BLUNT)), across[pixel]!);
  });
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
        const cell = Math.min(PARTS - 1, Math.floor(place));
        clearPixel(into, 3 * pixel);
        tables[cell]!.add(mm, cell + 1 - place, into, 3 * pixel);
        tables[cell + 1]!.add(mm, place - cell, into, 3 * pixel);
      }
    },
    runsAt: (pixel) => metFrom(side, runsOf(partOf(pixel))),
  };
}
