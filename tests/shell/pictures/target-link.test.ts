import sharp from 'sharp';
import { expect, test } from 'vitest';
import { targetLink } from '../../../src/shell/pictures/target-link.ts';

const NO_OUTLINES = () => undefined;

test('a link to a target shows each part over white above and over black below, and bare card where nobody saw it', async () => {
  const parts = [{ white: '#c08040', black: '#604020' }, { white: '#40a060' }];
  const jpeg = await targetLink(parts, { title: 'A tin', book: 'A book' }, NO_OUTLINES);
  const { data, info } = await sharp(jpeg).raw().toBuffer({ resolveWithObject: true });
  expect([info.width, info.height]).toEqual([1200, 630]);
  const at = (x: number, y: number): number[] => [...data.subarray(3 * (y * 1200 + x), 3 * (y * 1200 + x) + 3)];
  for (const [x, y, wanted] of [
    [300, 200, [0xc0, 0x80, 0x40]],
    [300, 400, [0x60, 0x40, 0x20]],
    [900, 200, [0x40, 0xa0, 0x60]],
    [900, 400, [0x30, 0x30, 0x30]],
    [600, 20, [0xf6, 0xf6, 0xf6]],
  ] as const)
    for (const [channel, value] of wanted.entries())
      expect(Math.abs(at(x, y)[channel]! - value)).toBeLessThanOrEqual(3);
});
