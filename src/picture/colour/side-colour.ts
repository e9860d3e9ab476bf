import type { Pattern } from '../../patterns/patterns.ts';
import type { Run } from '../../patterns/place.ts';
import type { BaitField } from '../../shapes/bait-field.ts';
import type { PicturedBait, PicturedSide } from '../pictured-bait.ts';
import { thickestOf } from '../thickest.ts';
import { ColourTable } from './colour-table.ts';
import type { ComputedColour } from './computed-colour.ts';
import { endsPainter } from './ends.ts';
import { corePainter, stripePainter } from './inside.ts';
import { layersPainter } from './layers.ts';
import type { PaintedSide, Painter } from './painter.ts';
import { streaksPainter } from './streaks.ts';

const PAINTERS: Readonly<Record<Pattern, (painted: PaintedSide) => Painter>> = {
  solid: layersPainter,
  laminate: layersPainter,
  layered: layersPainter,
  core: corePainter,
  striped: stripePainter,
  tipped: endsPainter,
  swirl: streaksPainter,
};

/** The plastic of a side: its colour pixel by pixel, and which cups lie where, for the flake in them. */
export interface SideColour {
  readonly colour: ComputedColour;
  readonly runsAt: Painter['runsAt'];
}

/**
 * Computes a side of a bait, in the field's orientation whichever side it is: who turns a bait round turns the picture.
 *
 * @param into arrays of three numbers a pixel to write into, wherever there is bait; unset: new ones
 */
export function sideColour(
  bait: PicturedBait,
  side: PicturedSide,
  field: BaitField,
  into?: ComputedColour,
): SideColour {
  const painted = { bait, side, field, thickestMm: Math.max(bait.mold.bodyMm, thickestOf(field)) };
  const painter = withThinCup(PAINTERS[side.pattern](painted), painted);
  const numbers = 3 * field.cover.length;
  const colour = into ?? { white: new Float32Array(numbers), black: new Float32Array(numbers) };
  painter.paint(colour);
  return { colour, runsAt: painter.runsAt };
}

/** The same, but for thin parts that are of one cup alone. */
function withThinCup(
  painter: Painter,
  { bait, side, field: { cover, part, thicknessMm }, thickestMm }: PaintedSide,
): Painter {
  if (side.thinCup === undefined) return painter;
  const runs: readonly Run[] = [{ cup: side.thinCup, part: 1 }];
  const table = new ColourTable(bait, runs, side.taught[1] ?? [], thickestMm);
  return {
    paint(into) {
      painter.paint(into);
      for (let pixel = 0; pixel < part.length; pixel++)
        if (part[pixel] === 1 && cover[pixel]! > 0) table.write(thicknessMm[pixel]!, into, 3 * pixel);
    },
    runsAt: (pixel) => (part[pixel] === 1 ? runs : painter.runsAt(pixel)),
  };
}
