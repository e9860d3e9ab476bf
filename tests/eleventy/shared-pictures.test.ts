import sharp from 'sharp';
import { expect, test } from 'vitest';
import { sharedPicture } from '../../src/eleventy/shared-pictures.ts';
import { SAMPLE_BOOK } from '../render/sample-book.ts';

const { body } = SAMPLE_BOOK.recipes[0]!;

test('sharedPicture(look) shows the body over white above and over black below, and holds nothing else', async () => {
  const png = await sharedPicture(body);
  const { data, info } = await sharp(png).raw().toBuffer({ resolveWithObject: true });
  expect([info.width, info.height]).toEqual([1200, 630]);
  const at = (x: number, y: number): string => {
    const start = (y * info.width + x) * info.channels;
    return `#${data.subarray(start, start + 3).toString('hex')}`;
  };
  expect(at(600, 200)).toBe(body.overWhite.hex);
  expect(at(600, 450)).toBe(body.overBlack.hex);
  expect([at(5, 5), at(5, 625)]).toEqual(['#f3f3f3', '#303030']);
  const { exif, xmp, icc, iptc } = await sharp(png).metadata();
  expect([exif, xmp, icc, iptc]).toEqual([undefined, undefined, undefined, undefined]);
});
