import { BaitSurface } from './bait-surface.ts';
import { flakeAt } from './flakes.ts';
import type { Scene } from './scene.ts';

/** A corner in pixels of the photo. */
interface Corner {
  readonly x: number;
  readonly y: number;
}

/** Part of what is seen within some outlines, in pixels of the photo, that is flake; not a number where no bait is seen there. */
export function flakeInZone({ bait, lens }: Scene, outlines: readonly (readonly Corner[])[]): number {
  const surface = new BaitSurface(bait.shape);
  const sight = { x: 0, y: 0, leanX: 0, leanY: 0, axis: 1 };
  const hit = { along: 0, across: 0, height: 0 };
  let [seen, flake] = [0, 0];
  for (const outline of outlines) {
    const rows = outline.map(({ y }) => y);
    const columns = outline.map(({ x }) => x);
    const [left, right] = [Math.min(...columns), Math.max(...columns)];
    const [top, bottom] = [Math.min(...rows), Math.max(...rows)];
    // So many steps that a share of a few percent is known to a hundredth of itself.
    const step = Math.max(0.25, Math.sqrt(((right - left) * (bottom - top)) / 150_000));
    for (let y = top; y < bottom; y += step) {
      for (let x = left; x < right; x += step) {
        if (!isInside(outline, x, y)) continue;
        lens.look(x, y, sight);
        if (!surface.meets(sight, hit)) continue;
        // Outlines count by their size, however fine the steps in each.
        seen += step * step;
        if (bait.flakes && flakeAt(bait.flakes, hit.along, hit.across) > 0) flake += step * step;
      }
    }
  }
  return seen === 0 ? Number.NaN : flake / seen;
}

/** Whether a place lies within an outline, by how often a line to the right of it crosses (even and odd). */
function isInside(outline: readonly Corner[], x: number, y: number): boolean {
  let inside = false;
  for (const [at, one] of outline.entries()) {
    const other = outline[(at + 1) % outline.length]!;
    if (one.y > y !== other.y > y && x < one.x + ((y - one.y) * (other.x - one.x)) / (other.y - one.y))
      inside = !inside;
  }
  return inside;
}
