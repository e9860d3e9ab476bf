import { type Html, html } from '../html.ts';
import { type Point, round, smoothPath } from './ribbon.ts';

/** Width of the streaks of a drawing, mm. Common practice, no source: the same as a recipe's default. */
const STREAK_MM = 1.5;

/** A wave along a tile, a little beyond both of its ends so that it has no seam. */
function wave(lengthMm: number, y: number, heights: readonly [number, number]): readonly Point[] {
  const steps = 12;
  return Array.from({ length: steps + 3 }, (_, index): Point => {
    const x = (lengthMm * (index - 1)) / steps;
    const turn = (2 * Math.PI * x) / lengthMm;
    return [x, y + heights[0] * Math.sin(turn) + heights[1] * Math.sin(2 * turn + 1)];
  });
}

/**
 * Streaks of one colour that cover a share of the area, as a pattern over another colour.
 *
 * @param share part of the area, 0..1
 * @param scale user units in a millimetre
 */
export function streakPattern(
  fill: string,
  share: number,
  options: { readonly id: string; readonly scale: number },
): Html {
  const period = STREAK_MM / Math.min(Math.max(share, 0.12), 0.88);
  const half = (period * share) / 2;
  const length = 26;
  // Two streaks a tile, unlike each other, so that the repeat does not show.
  const lanes = [
    { y: period * 0.5, heights: [period * 0.34, period * 0.12] as const },
    { y: period * 1.5, heights: [-period * 0.22, period * 0.17] as const },
  ];
  const paths = lanes.flatMap(({ y, heights }) =>
    // A streak that waves out of the tile comes in on its other side.
    [-2 * period, 0, 2 * period].map((shift) => {
      const upper = wave(length, y + shift - half, heights);
      const lower = [...wave(length, y + shift + half, heights)].reverse();
      return `${smoothPath(upper, false)}L${smoothPath(lower, false).slice(1)}z`;
    }),
  );
  return html`<pattern id="${options.id}" width="${length}" height="${round(2 * period)}" patternUnits="userSpaceOnUse" patternTransform="scale(${round(options.scale)})"><path fill="${fill}" d="${paths.join('')}"/></pattern>`;
}
