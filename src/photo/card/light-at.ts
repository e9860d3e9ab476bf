import { LIGHT_OF_BYTE, type Pixels } from '../pixels.ts';

/**
 * How light a photo is at a point between its pixels: the mean of red, twice green and blue in linear light, straight between the middles of
 * pixels. Undefined outside.
 */
export function lightAt({ data, width, height }: Pixels, x: number, y: number): number | undefined {
  const left = Math.floor(x - 0.5);
  const top = Math.floor(y - 0.5);
  if (!(left >= 0 && top >= 0 && left < width - 1 && top < height - 1)) return undefined;
  const right = x - 0.5 - left;
  const down = y - 0.5 - top;
  const at = 4 * (top * width + left);
  const below = at + 4 * width;
  return (
    (1 - down) * ((1 - right) * lightOf(data, at) + right * lightOf(data, at + 4)) +
    down * ((1 - right) * lightOf(data, below) + right * lightOf(data, below + 4))
  );
}

function lightOf(data: ArrayLike<number>, at: number): number {
  return (LIGHT_OF_BYTE[data[at]!]! + 2 * LIGHT_OF_BYTE[data[at + 1]!]! + LIGHT_OF_BYTE[data[at + 2]!]!) / 4;
}
