/**
 * Cups poured together, unmixed: streaks along the bait that wander and fray, and end in its depth.
 *
 * @packageDocumentation
 */

import { sameCupBehind } from '../../optics/streaks.ts';
import type { Run } from '../../patterns/place.ts';
import { ColourTable, clearPixel } from './colour-table.ts';
import type { PaintedSide, Painter } from './painter.ts';
import { type StreakCover, streakCover } from './streak-cover.ts';

/** Each cup after the first covers its part of what those before it have; the first has the rest. So it is in the near half of the bait, and in the far one. */
export function streaksPainter({ bait, side, field, thickestMm }: PaintedSide): Painter {
  const { cover, thicknessMm } = field;
  const count = side.cups.length;
  const runs = side.cups.flatMap(({ cup }) =>
    side.cups.map(({ cup: behind }): readonly Run[] =>
      cup === behind
        ? [{ cup, part: 1 }]
        : [
            { cup, part: 0.5 },
            { cup: behind, part: 0.5 },
          ],
    ),
  );
  const tables = runs.map((stack) => new ColourTable(bait, stack, side.taught[0] ?? [], thickestMm));
  let below = side.cups[0]!.share;
  const covers = side.cups.slice(1).map(({ share }, index): StreakCover => {
    below += share;
    return streakCover(field, { seed: `${bait.seed} ${index}`, share: share / below, streakMm: bait.streakMm });
  });
  const [near, far] = [new Float64Array(count), new Float64Array(count)];
  const weights = new Float64Array(count * count);
  const weigh = (pixel: number): void => {
    partsOf(covers, 'near', pixel, near);
    partsOf(covers, 'far', pixel, far);
    joined(near, far, sameCupBehind(thicknessMm[pixel]!, bait.streakMm), weights);
  };
  return {
    paint(into) {
      for (let pixel = 0; pixel < cover.length; pixel++) {
        if (cover[pixel] === 0) continue;
        const mm = thicknessMm[pixel]!;
        const [one, behind] = [onlyCup(covers, 'near', pixel), onlyCup(covers, 'far', pixel)];
        if (one >= 0 && behind >= 0) {
          tables[one * count + behind]!.write(mm, into, 3 * pixel);
          continue;
        }
        weigh(pixel);
        clearPixel(into, 3 * pixel);
        for (let stack = 0; stack < weights.length; stack++)
          if (weights[stack]! > 0) tables[stack]!.add(mm, weights[stack]!, into, 3 * pixel);
      }
    },
    runsAt(pixel) {
      weigh(pixel);
      return runs[weights.indexOf(Math.max(...weights))]!;
    },
  };
}

/** The cup that has all of a pixel, in its near half or in its far one; −1 on a border. */
function onlyCup(covers: readonly StreakCover[], half: keyof StreakCover, pixel: number): number {
  for (let index = covers.length - 1; index >= 0; index--) {
    const own = covers[index]![half][pixel]!;
    if (own === 1) return index + 1;
    if (own !== 0) return -1;
  }
  return 0;
}

/** What part of a pixel each cup has, in its near half or in its far one. */
function partsOf(covers: readonly StreakCover[], half: keyof StreakCover, pixel: number, parts: Float64Array): void {
  let left = 1;
  for (let index = covers.length - 1; index >= 0; index--) {
    const own = covers[index]![half][pixel]!;
    parts[index + 1] = left * own;
    left *= 1 - own;
  }
  parts[0] = left;
}

/**
 * What part of a pixel has which cup before which. Where a border runs through it in both halves, as much as may be has the same in both, so
 * far as one streak goes through both; else each has its part, whatever lies before it.
 *
 * @param same as `sameCupBehind`
 */
function joined(near: Float64Array, far: Float64Array, same: number, weights: Float64Array): void {
  const count = near.length;
  let apart = 1;
  for (let cup = 0; cup < count; cup++) apart -= Math.min(near[cup]!, far[cup]!);
  for (let one = 0; one < count; one++) {
    const alike = Math.min(near[one]!, far[one]!);
    for (let other = 0; other < count; other++) {
      const left = far[other]! - Math.min(near[other]!, far[other]!);
      const together = (one === other ? alike : 0) + (apart > 1e-6 ? ((near[one]! - alike) * left) / apart : 0);
      weights[one * count + other] = same * together + (1 - same) * near[one]! * far[other]!;
    }
  }
}
