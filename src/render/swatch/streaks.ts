import { type Point, round, smoothPath } from '../../shapes/ribbon.ts';
import { type Html, html } from '../html.ts';

/** Width of the streaks of a drawing, mm. Common practice, no source: the same as a recipe's default. */
const STREAK_MM = 1.5;

/** Length of the tile that repeats, mm. */
const TILE_MM = 37;

/** A wave along a tile, a little beyond both of its ends so that it has no seam. */
function wave(length: number, y: number, heights: readonly [number, number, number], phase: number): readonly Point[] {
  const steps = 9;
  return Array.from({ length: steps + 3 }, (_, index): Point => {
    const x = (length * (index - 1)) / steps;
    const turn = (2 * Math.PI * x) / length;
    const [slow, middle, quick] = heights;
    return [
      x,
      y +
        slow * Math.sin(turn + phase) +
        middle * Math.sin(2 * turn + 2.1 * phase) +
        quick * Math.sin(3 * turn + 0.7 * phase),
    ];
  });
}

/** Streaks of one tile: their parts of the streaks' width, and how they run. Unlike one another, so that the repeat does not show. */
const STREAKS = [
  { part: 1.35, middle: 0.2, phase: 0.3 },
  { part: 0.55, middle: 0.46, phase: 1.5 },
  { part: 1.1, middle: 0.82, phase: 2.6 },
] as const;

/** Outlines of the streaks of a tile, all lengths in units of the drawing. Those of another lane run otherwise. */
function streakPath(width: number, period: number, length: number, lane: number): string {
  const height = STREAKS.length * period;
  return STREAKS.flatMap(({ part, middle: first, phase: began }) => {
    const [middle, phase] = [(first + 0.31 * lane) % 1, began + 2.4 * lane];
    const half = (width * part) / 2;
    // The edges of a streak run nearly alike; where they don't, it is thick or thin, and its mean width stays.
    const run = [period * 0.5, period * 0.22, period * 0.1] as const;
    const thicker = [half * 0.35, half * 0.45, half * 0.3] as const;
    const reach = period * 0.82 + half * 2.1;
    // A streak that waves out of the tile comes in on its other side.
    return [-height, 0, height].flatMap((shift) => {
      const y = middle * height + shift;
      if (y + reach < 0 || y - reach > height) return [];
      const upper = wave(length, y - half, run, phase);
      const swell = wave(length, half, thicker, phase + 2);
      const lower = upper.map(([x, top], index): Point => [x, top + half + swell[index]![1]]).reverse();
      return `${smoothPath(upper, false)}L${smoothPath(lower, false).slice(1)}z`;
    });
  }).join('');
}

/**
 * Streaks that cover a share of the area, as two patterns to lay over another colour: `<id>-white` and `<id>-black`.
 *
 * @param coat colours of the streaks over white and over black
 * @param share part of the area, 0..1
 * @param lane of several cups in streaks over one another, which
 * @param flakes what lies in the streaks, as fills in the drawing's own units
 */
export function streakPatterns(
  coat: { readonly white: string; readonly black: string },
  share: number,
  {
    id,
    scale,
    lane = 0,
    flakes = [],
  }: { readonly id: string; readonly scale: number; readonly lane?: number; readonly flakes?: readonly string[] },
): Html {
  const width = STREAK_MM * scale;
  const period = width / Math.min(Math.max(share, 0.12), 0.88);
  const [length, height] = [round(TILE_MM * scale), round(STREAKS.length * period)];
  const pattern = (view: 'white' | 'black'): Html =>
    html`<pattern id="${id}-${view}" width="${length}" height="${height}" patternUnits="userSpaceOnUse">${[coat[view], ...flakes].map((fill) => html`<use href="#${id}-path" fill="${fill}"/>`)}</pattern>`;
  return html`<path id="${id}-path" d="${streakPath(width, period, length, lane)}"/>${pattern('white')}${pattern('black')}`;
}
