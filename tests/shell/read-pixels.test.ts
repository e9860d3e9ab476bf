import sharp, { type Sharp } from 'sharp';
import { describe, expect, test } from 'vitest';
import { isDisplayP3, P3_PRIMARIES } from '../../src/photo/display-p3-profile.ts';
import { inSrgbPrimaries, LIGHT_OF_BYTE } from '../../src/photo/pixels.ts';
import { UnreadablePhoto } from '../../src/shell/read-photo.ts';
import { readPixels } from '../../src/shell/read-pixels.ts';

/** Left half of one colour, right half of another, 60 × 40. */
async function halves(left: string, right: string): Promise<Sharp> {
  const half = await sharp({ create: { width: 30, height: 40, channels: 3, background: right } })
    .png()
    .toBuffer();
  const whole = sharp({ create: { width: 60, height: 40, channels: 3, background: left } });
  return sharp(
    await whole
      .composite([{ input: half, left: 30, top: 0 }])
      .png()
      .toBuffer(),
  );
}

const pixelAt = (
  { data, width }: Awaited<ReturnType<typeof readPixels>>,
  column: number,
  row: number,
): readonly number[] => [0, 1, 2].map((channel) => data[4 * (row * width + column) + channel]!);

type Triple = readonly [number, number, number];
const times = (m: readonly Triple[], v: Triple): Triple =>
  m.map((row) => row[0] * v[0] + row[1] * v[1] + row[2] * v[2]) as unknown as Triple;

/** XYZ of a primary under D65 brought to D50: Bradford's matrices as Lindbloom has them, from memory. */
function adapted(XYZ: Triple): Triple {
  return times(
    [
      [1.0478112, 0.0228866, -0.050127],
      [0.0295424, 0.9904844, -0.0170491],
      [-0.0092345, 0.0150436, 0.7521316],
    ],
    XYZ,
  );
}

test('P3_PRIMARIES are those of x, y (0.68, 0.32), (0.265, 0.69), (0.15, 0.06) with the white of D65, brought to D50', () => {
  const chromaticities = [
    [0.68, 0.32],
    [0.265, 0.69],
    [0.15, 0.06],
  ] as const;
  // Luminances of the primaries that make white: the middle row of the published matrix from P3 to XYZ (CSS Color 4, section 18).
  const luminances = [0.2289746, 0.6917385, 0.0792869];
  for (const [i, [x, y]] of chromaticities.entries()) {
    const Y = luminances[i]!;
    const found = Object.values(P3_PRIMARIES)[i]!;
    for (const [axis, value] of adapted([(x / y) * Y, Y, ((1 - x - y) / y) * Y]).entries())
      expect(Math.abs(found[axis]! - value)).toBeLessThan(1e-3);
  }
});

describe('readPixels(original)', () => {
  test('has the bytes of a PNG as they are, rows from the top', async () => {
    const pixels = await readPixels(await (await halves('#8a6a44', '#102030')).png().toBuffer());
    expect([pixels.width, pixels.height, pixels.space]).toEqual([60, 40, 'srgb']);
    expect(pixelAt(pixels, 5, 5)).toEqual([0x8a, 0x6a, 0x44]);
    expect(pixelAt(pixels, 55, 35)).toEqual([0x10, 0x20, 0x30]);
  });

  test.each(['jpeg', 'webp'] as const)('reads %s within what its packing loses', async (format) => {
    const pixels = await readPixels(await (await halves('#8a6a44', '#8a6a44'))[format]({ quality: 95 }).toBuffer());
    for (const [channel, byte] of [0x8a, 0x6a, 0x44].entries())
      expect(Math.abs(pixelAt(pixels, 20, 20)[channel]! - byte)).toBeLessThanOrEqual(2);
  });

  test('turns a photo upright that was taken on its side', async () => {
    const turned = await (await halves('#8a6a44', '#102030')).withMetadata({ orientation: 6 }).png().toBuffer();
    const pixels = await readPixels(turned);
    expect([pixels.width, pixels.height]).toEqual([40, 60]);
    expect(pixelAt(pixels, 20, 5)).toEqual([0x8a, 0x6a, 0x44]);
    expect(pixelAt(pixels, 20, 55)).toEqual([0x10, 0x20, 0x30]);
  });

  test('keeps a photo in Display P3 there, where its colour still is outside sRGB', async () => {
    const raw = Buffer.from(Array.from({ length: 16 }, () => [255, 0, 0]).flat());
    const tagged = await sharp(raw, { raw: { width: 4, height: 4, channels: 3 } })
      .withIccProfile('p3')
      .png()
      .toBuffer();
    const converted = await readPixels(tagged);
    expect(converted.space).toBe('display-p3');
    // Red of sRGB in P3: (0.9175, 0.2003, 0.1386), as CSS Color 4 has it; times 255.
    const [red, green, blue] = pixelAt(converted, 1, 1);
    expect([red, green, blue].map((byte, i) => Math.abs(byte! - [234, 51, 35][i]!) <= 1)).toEqual([true, true, true]);
    const linear = inSrgbPrimaries(
      { r: LIGHT_OF_BYTE[red!]!, g: LIGHT_OF_BYTE[green!]!, b: LIGHT_OF_BYTE[blue!]! },
      converted.space,
    );
    for (const [i, value] of [linear.r, linear.g, linear.b].entries())
      expect(Math.abs(value - [1, 0, 0][i]!)).toBeLessThan(0.01);
  });

  test('brings any other profile to sRGB', async () => {
    const profile = await sharp({ create: { width: 4, height: 4, channels: 3, background: '#8a6a44' } })
      .withIccProfile('srgb')
      .jpeg()
      .toBuffer();
    expect((await readPixels(profile)).space).toBe('srgb');
  });

  test('has no photo that is longer than 4096, and says by how much it is smaller', async () => {
    const wide = sharp({ create: { width: 8192, height: 64, channels: 3, background: '#8a6a44' } });
    const pixels = await readPixels(await wide.png().toBuffer());
    expect([pixels.width, pixels.height]).toEqual([4096, 32]);
    expect(pixels.scale).toBe(0.5);
    expect(pixelAt(pixels, 4000, 30)).toEqual([0x8a, 0x6a, 0x44]);
  });

  test('has grey and see-through pictures as any other', async () => {
    const grey = await sharp({ create: { width: 4, height: 4, channels: 3, background: '#808080' } })
      .toColourspace('b-w')
      .png()
      .toBuffer();
    expect(pixelAt(await readPixels(grey), 2, 2)).toEqual([128, 128, 128]);
  });

  test('refuses HEIC with its cure, and what is cut off', async () => {
    const heic = Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic'.padEnd(200, '\0'), 'latin1');
    const error = await readPixels(heic).catch((thrown: unknown) => thrown);
    expect(error).toBeInstanceOf(UnreadablePhoto);
    expect((error as UnreadablePhoto).fault).toMatchObject({
      found: 'a HEIC picture',
      fix: expect.stringContaining('JPEG'),
    });
    const jpeg = await (await halves('#8a6a44', '#102030')).jpeg().toBuffer();
    await expect(readPixels(jpeg.subarray(0, jpeg.length - 40))).rejects.toBeInstanceOf(UnreadablePhoto);
  });
});

describe('isDisplayP3(profile)', () => {
  test('knows the profile by its numbers, and no other', async () => {
    const profileOf = async (name: string): Promise<Uint8Array> => {
      const picture = sharp({ create: { width: 2, height: 2, channels: 3, background: 'red' } });
      return (await sharp(await picture.withIccProfile(name).png().toBuffer()).metadata()).icc!;
    };
    const [p3, srgb] = await Promise.all([profileOf('p3'), profileOf('srgb')]);
    expect([isDisplayP3(p3), isDisplayP3(srgb)]).toEqual([true, false]);
  });

  test('takes nothing that is cut off or made up for one', async () => {
    const picture = sharp({ create: { width: 2, height: 2, channels: 3, background: 'red' } });
    const icc = (await sharp(await picture.withIccProfile('p3').png().toBuffer()).metadata()).icc!;
    for (let length = 0; length < icc.length - 4; length += 7) expect(isDisplayP3(icc.subarray(0, length))).toBe(false);
    for (let at = 128; at < icc.length; at++) {
      const broken = Uint8Array.from(icc);
      broken[at] = 255;
      expect(typeof isDisplayP3(broken)).toBe('boolean');
    }
  });
});
