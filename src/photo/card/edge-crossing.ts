import type { Pixels } from '../pixels.ts';
import { type CardView, pixelsPerMm, toPixel } from './card-view.ts';
import type { EdgePoint } from './edge-points.ts';
import { lightAt } from './light-at.ts';

/** How dark the dark side must be at most, as a part of the light one. Greys of step 1 and darker keep well below. */
const DARK_SIDE = 0.8;

/** Light along a line is read every so many pixels. */
const STEP_PIXELS = 0.5;

/** Part of the line at either end that tells the level of its side. */
const END = 0.3;

/**
 * How far from where a view has it an edge lies, mm toward the dark: where light falls through half way between both sides. `'outside'` if
 * the line across it leaves the photo, undefined if it shows no edge, or several.
 *
 * @param reach how far the line goes to either side, mm
 */
export function edgeCrossing(
  pixels: Pixels,
  view: CardView,
  { place, across }: EdgePoint,
  reach: number,
): number | 'outside' | undefined {
  const half = Math.max(4, Math.ceil((reach * pixelsPerMm(view, place)) / STEP_PIXELS));
  const line = new Float64Array(2 * half + 1);
  for (let i = 0; i < line.length; i++) {
    const t = (reach * (i - half)) / half;
    const at = toPixel(view, { x: place.x + t * across.x, y: place.y + t * across.y });
    const light = lightAt(pixels, at.x, at.y);
    if (light === undefined) return 'outside';
    line[i] = light;
  }
  const crossing = crossingOf(line);
  return crossing === undefined ? undefined : (reach * (crossing - half)) / half;
}

/** Where a line that begins light and ends dark falls through the half of both, in steps; undefined if it does so more than once. */
function crossingOf(line: Float64Array): number | undefined {
  const count = Math.max(2, Math.round(END * line.length));
  const light = meanOf(line.subarray(0, count));
  const dark = meanOf(line.subarray(line.length - count));
  if (!(dark < DARK_SIDE * light)) return undefined;
  const level = (light + dark) / 2;
  let found: number | undefined;
  for (let i = 1; i < line.length; i++) {
    const [before, now] = [line[i - 1]! - level, line[i]! - level];
    if (before > 0 === now > 0) continue;
    if (found !== undefined) return undefined;
    found = i - 1 + before / (before - now);
  }
  return found;
}

function meanOf(line: Float64Array): number {
  let sum = 0;
  for (const light of line) sum += light;
  return sum / line.length;
}
