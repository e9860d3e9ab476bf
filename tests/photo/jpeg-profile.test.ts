import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { isDisplayP3 } from '../../src/photo/display-p3-profile.ts';
import { jpegProfile } from '../../src/photo/jpeg-profile.ts';

const picture = sharp({ create: { width: 40, height: 30, channels: 3, background: '#e07020' } });
const photo = (name?: string): Promise<Buffer> =>
  (name === undefined ? picture.clone() : picture.clone().withIccProfile(name)).jpeg().toBuffer();

/** A segment of a JPEG: its marker, its length with the two bytes of that, and what is in it. */
const segment = (marker: number, data: Uint8Array): Buffer =>
  Buffer.concat([Buffer.from([0xff, marker, (data.length + 2) >> 8, (data.length + 2) & 255]), data]);

describe('jpegProfile(file)', () => {
  test('is the profile that another reader finds', async () => {
    const p3 = await photo('p3');
    expect(Buffer.from(jpegProfile(p3)!)).toEqual((await sharp(p3).metadata()).icc);
    expect(isDisplayP3(jpegProfile(p3)!)).toBe(true);
    expect(isDisplayP3(jpegProfile(await photo('srgb'))!)).toBe(false);
  });

  test('is none where there is none, or the file is no JPEG', async () => {
    expect(jpegProfile(await photo())).toBeUndefined();
    expect(jpegProfile(await picture.clone().withIccProfile('p3').png().toBuffer())).toBeUndefined();
    expect(jpegProfile(new Uint8Array())).toBeUndefined();
  });

  test('is put together of its pieces, in whichever order, and none where one is missing', async () => {
    const profile = jpegProfile(await photo('p3'))!;
    const middle = Math.floor(profile.length / 2);
    const piece = (number: number, data: Uint8Array): Buffer =>
      segment(0xe2, Buffer.concat([Buffer.from('ICC_PROFILE\0'), Buffer.from([number, 2]), data]));
    const [first, second] = [piece(1, profile.subarray(0, middle)), piece(2, profile.subarray(middle))];
    const start = Buffer.from([0xff, 0xd8]);
    const other = segment(0xe1, Buffer.from('Exif\0\0'));
    expect(jpegProfile(Buffer.concat([start, other, second, first]))).toEqual(new Uint8Array(profile));
    expect(jpegProfile(Buffer.concat([start, second]))).toBeUndefined();
  });

  test('throws at no piece of a file', async () => {
    const file = await photo('p3');
    for (let length = 0; length < file.length; length += 5)
      expect(() => jpegProfile(file.subarray(0, length))).not.toThrow();
  });
});
