import type { CompositionPoint } from './composition-point.ts';

/** Points by their coordinates, so that how far all of them are from another is found at once. */
export class PointIndex {
  readonly count: number;
  /** Squared length of each point. */
  private readonly squares: Float64Array;
  /** By coordinate: the points that have it, and what it is. */
  private readonly holders: ReadonlyMap<number, { readonly points: Int32Array; readonly values: Float64Array }>;

  constructor(points: readonly CompositionPoint[]) {
    this.count = points.length;
    this.squares = Float64Array.from(points, ({ values }) => values.reduce((sum, value) => sum + value * value, 0));
    const byKey = new Map<number, [number, number][]>();
    for (const [i, { keys, values }] of points.entries()) {
      for (const [k, key] of keys.entries()) {
        const holders = byKey.get(key) ?? [];
        byKey.set(key, holders);
        holders.push([i, values[k]!]);
      }
    }
    this.holders = new Map(
      Array.from(byKey, ([key, holders]) => [
        key,
        { points: Int32Array.from(holders, ([i]) => i), values: Float64Array.from(holders, ([, value]) => value) },
      ]),
    );
  }

  /** Writes `squaredDistance` of a point to each one; what rounding takes below 0 stays there. */
  squaredDistances({ keys, values }: CompositionPoint, out: Float64Array): void {
    let square = 0;
    for (const value of values) square += value * value;
    for (let i = 0; i < this.count; i++) out[i] = square + this.squares[i]!;
    for (let k = 0; k < keys.length; k++) {
      const held = this.holders.get(keys[k]!);
      if (!held) continue;
      const twice = 2 * values[k]!;
      const { points, values: coordinates } = held;
      for (let h = 0; h < points.length; h++) out[points[h]!]! -= twice * coordinates[h]!;
    }
  }
}
