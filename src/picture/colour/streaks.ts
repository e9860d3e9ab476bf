/**
 * Cups poured together, unmixed: streaks along the bait that wander, fork and fray.
 *
 * @packageDocumentation
 */
import type { BaitField } from '../../shapes/bait-field.ts';
import { ColourTable } from './colour-table.ts';
import type { PaintedSide, Painter } from './painter.ts';
import { noiseOf, seedOf } from './streak-noise.ts';
import { rampUp, VolumeBins, valueBefore } from './volume-bins.ts';

/** Width over which two streaks run into each other, mm. Looked for by eye. */
const SOFT_MM = 0.3;

/** Each cup after the first covers its part of what those before it have; the first has the rest. */
export function streaksPainter({ bait, side, field, thickestMm }: PaintedSide): Painter {
  const { thicknessMm } = field;
  const tables = side.cups.map(
    ({ cup }) => new ColourTable(bait, [{ cup, part: 1 }], side.taught[0] ?? [], thickestMm),
  );
  let below = side.cups[0]!.share;
  const covers = side.cups.slice(1).map(({ share }, index) => {
    below += share;
    return streakCover(field, `${bait.seed} ${index}`, share / below, bait.streakMm);
  });
  const weightsAt = (pixel: number, weights: Float64Array): void => {
    let left = 1;
    for (let index = covers.length - 1; index >= 0; index--) {
      const own = covers[index]![pixel]!;
      weights[index + 1] = left * own;
      left *= 1 - own;
    }
    weights[0] = left;
  };
  const weights = new Float64Array(side.cups.length);
  return {
    add(pixel, sums) {
      weightsAt(pixel, weights);
      for (let cup = 0; cup < weights.length; cup++)
        if (weights[cup]! > 0) tables[cup]!.add(thicknessMm[pixel]!, weights[cup]!, sums);
    },
    runsAt(pixel) {
      weightsAt(pixel, weights);
      return [{ cup: side.cups[weights.indexOf(Math.max(...weights))]!.cup, part: 1 }];
    },
  };
}

/** How much of each pixel a streak covers, 0 to 1: of the bait's plastic together its share. */
function streakCover(field: BaitField, seed: string, share: number, streakMm: number): Float32Array {
  const { cover } = field;
  const periodMm = streakMm / share;
  const warp = warpOf(field, seed, periodMm);
  const distances = new Float32Array(cover.length);
  const width = noiseOf(seedOf(`${seed} width`));
  for (let pixel = 0; pixel < cover.length; pixel++) {
    if (cover[pixel] === 0) continue;
    const v = field.across[pixel]!;
    const arc = (0.45 * Math.asin(Math.max(-1, Math.min(1, v))) + 0.55 * v) * field.halfMm[pixel]!;
    const turns = (arc + warp[pixel]!) / periodMm;
    const streak = Math.floor(turns);
    const fromMiddle = Math.abs(turns - streak - 0.5) * periodMm;
    distances[pixel] = fromMiddle / (1 + 0.8 * width(field.alongMm[pixel]! / 14, 7.3 * streak + 0.5));
  }
  const border = valueBefore(new VolumeBins(field, (pixel) => distances[pixel]!), share, SOFT_MM);
  return distances.map((distance) => 1 - rampUp(distance, border, SOFT_MM));
}

/** Places of the plane at which noise is computed lie so far apart, mm; between them it runs straight. */
const STEP_MM = 0.4;

/** How far streaks are carried off to the side, mm. */
function warpOf(
  { columns, cover, noseX, noseY, pixelsPerMm }: BaitField,
  seed: string,
  periodMm: number,
): Float32Array {
  const [slow, middle, fine] = ['slow', 'middle', 'fine'].map((name) => noiseOf(seedOf(`${seed} ${name}`))) as [
    ReturnType<typeof noiseOf>,
    ReturnType<typeof noiseOf>,
    ReturnType<typeof noiseOf>,
  ];
  const known = new Map<number, number>();
  const at = (column: number, row: number): number => {
    const key = (column + 32768) * 65536 + row + 32768;
    const before = known.get(key);
    if (before !== undefined) return before;
    const [x, y] = [column * STEP_MM, row * STEP_MM];
    const m = middle(x / 13, y / 5);
    const value = periodMm * (2.3 * slow(x / 30, y / 9) + 0.8 * m + 0.25 * fine(x / 4 + 1.5 * m, y / 2));
    known.set(key, value);
    return value;
  };
  const warp = new Float32Array(cover.length);
  for (let pixel = 0; pixel < cover.length; pixel++) {
    if (cover[pixel] === 0) continue;
    const x = ((pixel % columns) + 0.5 - noseX) / pixelsPerMm / STEP_MM;
    const y = (Math.floor(pixel / columns) + 0.5 - noseY) / pixelsPerMm / STEP_MM;
    const [column, row] = [Math.floor(x), Math.floor(y)];
    const [fx, fy] = [x - column, y - row];
    const upper = at(column, row) * (1 - fx) + at(column + 1, row) * fx;
    const lower = at(column, row + 1) * (1 - fx) + at(column + 1, row + 1) * fx;
    warp[pixel] = upper * (1 - fy) + lower * fy;
  }
  return warp;
}
