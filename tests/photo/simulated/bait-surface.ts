/**
 * Where a line of sight meets a bait, and how its surface lies there.
 *
 * @packageDocumentation
 */
import { type BaitShape, placeOn } from './bait-shape.ts';
import type { Sight } from './lens.ts';

/** A place of a bait's surface. */
export interface Hit {
  along: number;
  across: number;
  height: number;
}

/** Finds places where lines of sight meet a bait from above. */
export class BaitSurface {
  readonly #shape: BaitShape;
  readonly #widest: number;

  constructor(shape: BaitShape) {
    this.#shape = shape;
    const half = shape.length / 2;
    this.#widest = Math.max(...Array.from({ length: 81 }, (_, at) => shape.halfWidth(((at - 40) / 40) * half)));
  }

  /** Puts into `hit` where a line of sight first meets the bait; false where it passes by. */
  meets(sight: Sight, hit: Hit): boolean {
    const shape = this.#shape;
    const [along, across] = placeOn(shape, sight.x, sight.y);
    const [leanAlong, leanAcross] = this.#leaning(sight);
    const [endAlong, endAcross] = [along + shape.top * leanAlong, across + shape.top * leanAcross];
    const half = shape.length / 2;
    if (Math.min(along, endAlong) > half || Math.max(along, endAlong) < -half) return false;
    if (Math.min(across, endAcross) > this.#widest || Math.max(across, endAcross) < -this.#widest) return false;
    const inside = (height: number): boolean =>
      shape.height(along + height * leanAlong, across + height * leanAcross) > height;
    let above = shape.top;
    let below = -1;
    for (let step = 7; step >= 0 && below < 0; step--) {
      const height = (shape.top * step) / 8;
      if (inside(height)) below = height;
      else above = height;
    }
    if (below < 0) return false;
    for (let round = 0; round < 6; round++) {
      const middle = (above + below) / 2;
      if (inside(middle)) below = middle;
      else above = middle;
    }
    hit.height = below;
    hit.along = along + below * leanAlong;
    hit.across = across + below * leanAcross;
    return true;
  }

  /** The surface's direction there: x, y and up, of length 1. */
  normal({ along, across }: Hit): readonly [number, number, number] {
    const { height } = this.#shape;
    const step = 0.06;
    const dx = (height(along + step, across) - height(along - step, across)) / (2 * step);
    const dy = (height(along, across + step) - height(along, across - step)) / (2 * step);
    // A wall is as steep as makes no difference.
    const [x, y] = [Math.max(-6, Math.min(6, dx)), Math.max(-6, Math.min(6, dy))];
    const length = -Math.hypot(x, y, 1);
    const [cos, sin] = [Math.cos(this.#shape.turned), Math.sin(this.#shape.turned)];
    return [(x * cos - y * sin) / length, (x * sin + y * cos) / length, -1 / length];
  }

  /** Whether a place of the table is certainly farther from the bait than a distance, mm. */
  isFar(x: number, y: number, distance: number): boolean {
    const { at, length, turned } = this.#shape;
    const tilted = (Math.abs(turned) * length) / 2;
    return (
      Math.abs(y - at[1]) > this.#widest + tilted + distance ||
      Math.abs(x - at[0]) > length / 2 + this.#widest + distance
    );
  }

  /** How far beside the bait a place of the table lies, mm: below 0 on it. */
  beside(x: number, y: number): number {
    const [along, across] = placeOn(this.#shape, x, y);
    const inside = Math.max(-this.#shape.length / 2, Math.min(this.#shape.length / 2, along));
    return Math.hypot(Math.max(0, Math.abs(across) - this.#shape.halfWidth(inside)), along - inside);
  }

  #leaning({ leanX, leanY }: Sight): readonly [number, number] {
    const [cos, sin] = [Math.cos(this.#shape.turned), Math.sin(this.#shape.turned)];
    return [leanX * cos + leanY * sin, leanY * cos - leanX * sin];
  }
}
