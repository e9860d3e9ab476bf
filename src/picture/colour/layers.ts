import { MIDDLE } from '../../patterns/place.ts';
import { inLayers } from '../../patterns/through.ts';
import { ColourTable } from './colour-table.ts';
import { metFrom, type PaintedSide, type Painter } from './painter.ts';

/** One cup, or cups over one another, each as thick as its share wherever one looks. */
export function layersPainter({ bait, side, field, thickestMm }: PaintedSide): Painter {
  const { cover, thicknessMm } = field;
  const runs = metFrom(
    side,
    inLayers(
      side.cups.map(({ share }) => share),
      MIDDLE,
    ),
  );
  const table = new ColourTable(bait, runs, side.taught[0] ?? [], thickestMm);
  return {
    paint(into) {
      for (let pixel = 0; pixel < cover.length; pixel++)
        if (cover[pixel]! > 0) table.write(thicknessMm[pixel]!, into, 3 * pixel);
    },
    runsAt: () => runs,
  };
}
