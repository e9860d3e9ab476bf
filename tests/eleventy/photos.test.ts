import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { expect, test } from 'vitest';
import { writePhotos } from '../../src/eleventy/photos.ts';
import { filesBelow } from '../folder-tree.ts';
import { temporaryFolder, writeFiles } from '../small-book.ts';

/** A picture as a telephone writes it: lying on its side, with a made-up place and owner in its metadata. */
function telephonePicture(width: number, height: number): Sharp {
  return sharp({ create: { width, height, channels: 3, background: '#7d6a3f' } })
    .withMetadata({ orientation: 6 })
    .withExifMerge({
      IFD0: { Artist: 'Nobody Atall', Software: 'pocket camera' },
      IFD3: { GPSLatitude: '12/1 34/1 56/1', GPSLatitudeRef: 'S' },
    });
}

async function written(
  files: Readonly<Record<string, Sharp>>,
): Promise<{ photos: Awaited<ReturnType<typeof writePhotos>>; output: string }> {
  const folder = temporaryFolder();
  const output = temporaryFolder();
  await writeFiles(folder, { 'photos/.keep': '' });
  for (const [name, picture] of Object.entries(files)) await picture.toFile(join(folder, 'photos', name));
  const photos = await writePhotos(
    Object.keys(files).map((name) => `photos/${name}`),
    folder,
    output,
    temporaryFolder(),
  );
  return { photos, output };
}

test('writePhotos(files) turns a picture upright and makes it at most 1600 and 480 px wide', async () => {
  const { photos, output } = await written({ 'bait.jpg': telephonePicture(1000, 2000) });
  const { src, thumb, width, height } = photos['photos/bait.jpg']!;
  expect({ width, height }).toEqual({ width: 1600, height: 800 });
  expect(await sharp(join(output, src)).metadata()).toMatchObject({ format: 'webp', width: 1600, height: 800 });
  expect(await sharp(join(output, thumb)).metadata()).toMatchObject({ format: 'webp', width: 480, height: 240 });
});

test('writePhotos(files) does not enlarge a small picture', async () => {
  const { photos } = await written({
    'chip.png': sharp({ create: { width: 200, height: 100, channels: 4, background: 'red' } }),
  });
  expect(photos['photos/chip.png']).toMatchObject({ width: 200, height: 100 });
});

test('writePhotos(files) leaves every word about the picture behind, its name included', async () => {
  const folder = temporaryFolder();
  const output = temporaryFolder();
  await writeFiles(folder, { 'photos/.keep': '' });
  await telephonePicture(60, 40).toFile(join(folder, 'photos/secret-pool.jpg'));
  // Else the test would pass with a picture that had nothing to lose.
  expect((await sharp(join(folder, 'photos/secret-pool.jpg')).metadata()).exif?.toString('latin1')).toContain(
    'Nobody Atall',
  );

  await writePhotos(['photos/secret-pool.jpg'], folder, output, temporaryFolder());
  const files = filesBelow(output);
  expect(files).toHaveLength(2);
  for (const file of files) {
    expect(file).toMatch(/^photos\/[0-9a-f]{16}(?:-small)?\.webp$/);
    const metadata = await sharp(join(output, file)).metadata();
    expect(metadata).not.toHaveProperty('exif');
    expect(metadata).not.toHaveProperty('xmp');
    expect(metadata).not.toHaveProperty('iptc');
    expect(readFileSync(join(output, file)).toString('latin1')).not.toMatch(/Nobody|pocket|EXIF|GPS|secret/);
  }
});

test('writePhotos(files) gives one content one name, and takes it from the cache', async () => {
  const folder = temporaryFolder();
  const cache = temporaryFolder();
  await writeFiles(folder, { 'photos/.keep': '' });
  for (const name of ['a.jpg', 'b.jpg']) await telephonePicture(60, 40).toFile(join(folder, 'photos', name));
  const first = await writePhotos(['photos/a.jpg', 'photos/b.jpg'], folder, temporaryFolder(), cache);
  expect(first['photos/a.jpg']).toEqual(first['photos/b.jpg']);
  const cached = filesBelow(cache);
  await sharp({ create: { width: 5, height: 5, channels: 3, background: 'blue' } })
    .webp()
    .toFile(join(cache, cached.find((name) => !name.includes('small'))!));
  const second = await writePhotos(['photos/a.jpg'], folder, temporaryFolder(), cache);
  expect(second['photos/a.jpg']).toMatchObject({ src: first['photos/a.jpg']!.src, width: 5, height: 5 });
});

test.each([
  ['no picture at all', 'hello'],
  ['an SVG, which may point to other files', '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>'],
])('writePhotos(files) refuses %s, whatever its name', async (_what, content) => {
  const folder = temporaryFolder();
  await writeFiles(folder, { 'photos/bait.jpg': content });
  const writing = writePhotos(['photos/bait.jpg'], folder, temporaryFolder(), temporaryFolder());
  await expect(writing).rejects.toThrow(
    /^photos\/bait\.jpg cannot be read as a picture \(.+\)\. Replace it with a JPEG, PNG or WebP file\.$/,
  );
});
