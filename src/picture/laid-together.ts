import type { Raster } from './raster.ts';

/** Two pictures of one width, one above the other. */
export function above(upper: Raster, lower: Raster): Raster {
  const rgb = new Uint8ClampedArray(upper.rgb.length + lower.rgb.length);
  rgb.set(upper.rgb);
  rgb.set(lower.rgb, upper.rgb.length);
  return { columns: upper.columns, rows: upper.rows + lower.rows, rgb };
}

/** Two pictures of one height, one beside the other. */
export function beside(left: Raster, right: Raster): Raster {
  const together = emptyRaster(left.columns + right.columns, left.rows, [0, 0, 0]);
  put(left, together, 0, 0);
  put(right, together, left.columns, 0);
  return together;
}

/** A picture of one colour. */
export function emptyRaster(
  columns: number,
  rows: number,
  [red, green, blue]: readonly [number, number, number],
): Raster {
  const rgb = new Uint8ClampedArray(columns * rows * 3);
  rgb.set([red, green, blue]);
  for (let done = 3; done < rgb.length; done *= 2) rgb.copyWithin(done, 0, Math.min(done, rgb.length - done));
  return { columns, rows, rgb };
}

/** Puts a picture into a larger one, at a place in whole pixels; what reaches over an edge is cut off. */
export function put(small: Raster, into: Raster, x: number, y: number): void {
  const [left, right] = [Math.max(0, x), Math.min(into.columns, x + small.columns)];
  for (let row = Math.max(0, y); row < Math.min(into.rows, y + small.rows); row++) {
    const from = ((row - y) * small.columns + left - x) * 3;
    into.rgb.set(small.rgb.subarray(from, from + (right - left) * 3), (row * into.columns + left) * 3);
  }
}

/** As `put`, but for the edges of the small picture: over so many pixels they become what lies under them, so that no edge is seen. */
export function putFaded(small: Raster, into: Raster, x: number, y: number, fade: number): void {
  const nearness = (at: number, length: number): number => Math.min(1, (Math.min(at, length - 1 - at) + 0.5) / fade);
  const across = Float32Array.from({ length: small.columns }, (_, column) => nearness(column, small.columns));
  const [left, right] = [Math.max(0, -x), Math.min(small.columns, into.columns - x)];
  for (let row = Math.max(0, -y); row < Math.min(small.rows, into.rows - y); row++) {
    const down = nearness(row, small.rows);
    for (let column = left; column < right; column++) {
      const part = down * across[column]!;
      const from = (row * small.columns + column) * 3;
      const to = ((row + y) * into.columns + column + x) * 3;
      if (part === 1) {
        into.rgb[to] = small.rgb[from]!;
        into.rgb[to + 1] = small.rgb[from + 1]!;
        into.rgb[to + 2] = small.rgb[from + 2]!;
        continue;
      }
      for (let channel = 0; channel < 3; channel++) {
        const under = into.rgb[to + channel]!;
        into.rgb[to + channel] = under + part * (small.rgb[from + channel]! - under);
      }
    }
  }
}
