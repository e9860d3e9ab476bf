import { ColourTable, clearPixel } from './colour-table.ts';
import type { PaintedSide, Painter } from './painter.ts';
import { rampUp, VolumeBins, valueBefore } from './volume-bins.ts';

/** Over so much of the length one cup runs into the next. Looked for by eye. */
const SOFT = 0.035;

/** In the middle of the section a border lies further on by so many half heights: there the plastic runs on. Looked for by eye. */
const BULGE = 0.35;

/** Cups behind one another along the bait, each with its share of the plastic. */
export function endsPainter({ bait, side, field, thickestMm }: PaintedSide): Painter {
  const { cover, alongMm, across, halfMm, thicknessMm } = field;
  const placeOf = (pixel: number): number => alongMm[pixel]! - BULGE * halfMm[pixel]! * (1 - across[pixel]! ** 2);
  const bins = new VolumeBins(field, placeOf);
  const soft = SOFT * (bins.high - bins.low);
  const tables = side.cups.map(
    ({ cup }, index) => new ColourTable(bait, [{ cup, part: 1 }], side.taught[index] ?? [], thickestMm),
  );
  let before = 0;
  const borders = side.cups.slice(0, -1).map(({ share }) => {
    before += share;
    return valueBefore(bins, before, soft);
  });
  /** How much of a pixel belongs to cups behind a border. */
  const behind = (index: number, place: number): number =>
    index < 0 ? 1 : index >= borders.length ? 0 : rampUp(place, borders[index]!, soft);
  return {
    paint(into) {
      for (let pixel = 0; pixel < cover.length; pixel++) {
        if (cover[pixel] === 0) continue;
        const place = placeOf(pixel);
        clearPixel(into, 3 * pixel);
        for (let cup = 0; cup < tables.length; cup++) {
          const weight = behind(cup - 1, place) - behind(cup, place);
          if (weight > 0) tables[cup]!.add(thicknessMm[pixel]!, weight, into, 3 * pixel);
        }
      }
    },
    runsAt(pixel) {
      const place = placeOf(pixel);
      const index = borders.filter((border) => border < place).length;
      return [{ cup: side.cups[index]!.cup, part: 1 }];
    },
  };
}
