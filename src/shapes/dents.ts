/**
 * Eyes, gills and clefts: pressed into the near surface alone, so that a bait stays as thick as its mold says.
 *
 * @packageDocumentation
 */
import type { BaitField } from './bait-field.ts';
import type { BaitSolid } from './solid.ts';
import type { Box } from './sweep.ts';

type Surface = Pick<BaitField, 'columns' | 'pixelsPerMm' | 'noseX' | 'noseY' | 'cover' | 'heightMm'>;

/** Beyond so many of its widths a dent is nothing. */
const REACH = 3;

/** Width and depth of the moat round an eye, in its radius, and height of the eye within it. */
const EYE = { moat: 0.2, deep: 0.22, dome: 0.2 };

export function pressDents({ grooves, eyes }: BaitSolid, surface: Surface, box: Box): void {
  for (const { points, widthMm, deepMm } of grooves) {
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    const reach = REACH * widthMm;
    press(surface, box, around(xs, ys, reach), (x, y) => {
      const square = squareDistance(xs, ys, x, y) / widthMm ** 2;
      return square < REACH * REACH ? deepMm * Math.exp(-square) : 0;
    });
  }
  for (const { x: middleX, y: middleY, radiusMm } of eyes) {
    press(surface, box, around([middleX], [middleY], 1.7 * radiusMm), (x, y) => {
      const from = Math.hypot(x - middleX, y - middleY) / radiusMm;
      const away = (from - 1) / EYE.moat;
      const dome = from < 1 ? EYE.dome * (1 - from * from) : 0;
      return radiusMm * (EYE.deep * Math.exp(-away * away) - dome);
    });
  }
}

function around(xs: readonly number[], ys: readonly number[], reach: number): Box {
  return {
    left: Math.min(...xs) - reach,
    right: Math.max(...xs) + reach,
    top: Math.min(...ys) - reach,
    bottom: Math.max(...ys) + reach,
  };
}

/** Lowers the surface within a part of it, given in mm. */
function press(
  { columns, pixelsPerMm, noseX, noseY, cover, heightMm }: Surface,
  box: Box,
  within: Box,
  dent: (x: number, y: number) => number,
): void {
  const left = Math.max(box.left, Math.floor(noseX + within.left * pixelsPerMm));
  const right = Math.min(box.right, Math.ceil(noseX + within.right * pixelsPerMm));
  const top = Math.max(box.top, Math.floor(noseY + within.top * pixelsPerMm));
  const bottom = Math.min(box.bottom, Math.ceil(noseY + within.bottom * pixelsPerMm));
  for (let row = top; row < bottom; row++) {
    for (let column = left; column < right; column++) {
      const at = row * columns + column;
      if (cover[at] === 0) continue;
      heightMm[at] = heightMm[at]! - dent((column + 0.5 - noseX) / pixelsPerMm, (row + 0.5 - noseY) / pixelsPerMm);
    }
  }
}

/** Square of the distance of a place from a line through points. */
function squareDistance(xs: readonly number[], ys: readonly number[], x: number, y: number): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (let at = 0; at + 1 < xs.length; at++) {
    const dx = xs[at + 1]! - xs[at]!;
    const dy = ys[at + 1]! - ys[at]!;
    const fromX = x - xs[at]!;
    const fromY = y - ys[at]!;
    const along = (fromX * dx + fromY * dy) / (dx * dx + dy * dy);
    const part = Math.min(1, Math.max(0, along));
    const awayX = fromX - part * dx;
    const awayY = fromY - part * dy;
    const square = awayX * awayX + awayY * awayY;
    if (square < nearest) nearest = square;
  }
  return nearest;
}
