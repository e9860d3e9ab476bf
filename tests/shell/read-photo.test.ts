import sharp, { type Sharp } from 'sharp';
import { describe, expect, test } from 'vitest';
import { faultOf, photoFault, tooManyBytes } from '../../src/shell/read-photo.ts';

const picture = (width = 60, height = 40): Sharp =>
  sharp({ create: { width, height, channels: 3, background: '#7d6a3f' } });

/** A whole picture of noise, so that what is cut off is missed. */
const noise = (): Sharp =>
  sharp({
    create: {
      width: 400,
      height: 300,
      channels: 3,
      background: 'red',
      noise: { type: 'gaussian', mean: 128, sigma: 30 },
    },
  });

/** A PNG that says it is larger than it is. */
async function claims(width: number, height: number): Promise<Buffer> {
  const bytes = await picture().png().toBuffer();
  bytes.writeUInt32BE(width, 16);
  bytes.writeUInt32BE(height, 20);
  return bytes;
}

const cut = (bytes: Buffer, by: number): Buffer => bytes.subarray(0, bytes.length - by);
const head = (text: string): Buffer => Buffer.from(text.padEnd(200, '\0'), 'latin1');

describe('photoFault(bytes)', () => {
  test('is undefined for whole JPEG, PNG and WebP pictures', async () => {
    for (const bytes of [noise().jpeg(), noise().png(), noise().webp()])
      expect(await photoFault(await bytes.toBuffer())).toBeUndefined();
  });

  test('finds every picture that is cut off, however little is missing', async () => {
    const [jpeg, png, webp] = await Promise.all([
      noise().jpeg().toBuffer(),
      noise().png().toBuffer(),
      noise().webp().toBuffer(),
    ]);
    for (const bytes of [cut(jpeg, 20), cut(jpeg, jpeg.length / 2), cut(png, 60), cut(webp, 40)]) {
      expect(await photoFault(bytes)).toMatchObject({
        found: expect.stringMatching(/^a picture that is damaged, or not whole \(.+\)$/),
        expected: 'a JPEG, PNG or WebP picture that is whole',
        fix: 'copy it from the camera or phone again',
        orRemove: true,
      });
    }
  });

  test.each([
    ['an empty file', ''],
    ['a HEIC picture', '\0\0\0\x18ftypheic\0\0\0\0mif1heic'],
    ['a HEIC picture', '\0\0\0\x18ftypmif1\0\0\0\0mif1heic'],
    ['an AVIF picture', '\0\0\0\x18ftypavif\0\0\0\0mif1avif'],
    ['a GIF', 'GIF89a'],
    ['a TIFF or raw picture', 'II*\0'],
    ['a BMP picture', 'BM6'],
    ['a PDF', '%PDF-1.7'],
    ['a drawing or web page (SVG, HTML)', '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>'],
    ['a drawing or web page (SVG, HTML)', '<?xml version="1.0"?><svg/>'],
    ['a file that is no picture', 'hello'],
  ])('says %s by what is in it, whatever its name', async (found, bytes) => {
    expect(await photoFault(bytes === '' ? Buffer.alloc(0) : head(bytes))).toMatchObject({
      found,
      expected: 'a JPEG, PNG or WebP picture',
    });
  });

  test('says how a HEIC picture becomes one that can be shown', async () => {
    expect((await photoFault(head('\0\0\0\x18ftypheic')))!.fix).toBe(
      'open it on the phone or computer and export or save it as JPEG; for the next ones, set the format in the settings of the phone’s camera to JPEG, often called “most compatible”',
    );
  });

  test('refuses more pixels than any camera takes by what the header says', async () => {
    expect(await photoFault(await claims(30_000, 30_000))).toEqual({
      found: 'a picture of 30000 × 30000 pixels',
      expected: 'at most 150 million pixels',
      why: 'no camera takes more, and a small file can unpack to gigabytes',
      fix: 'save it smaller, for instance 4000 pixels wide',
    });
  });
});

test('faultOf(error) is a sentence of one line', () => {
  expect(faultOf(new Error('one\ntwo')).found).toBe('a picture that is damaged, or not whole (one)');
});

test('tooManyBytes(bytes) says how many there are', () => {
  expect(tooManyBytes(300 * 1024 * 1024)).toMatchObject({ found: 'a picture of 300 MiB', expected: 'at most 200 MiB' });
});
