import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { expect, test } from 'vitest';
import type { Copied } from '../../src/output/site-file.ts';
import { type SitePhotos, sitePhotos } from '../../src/shell/photos.ts';
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

async function photosOfFolder(files: Readonly<Record<string, Sharp>>): Promise<SitePhotos> {
  const folder = temporaryFolder();
  await writeFiles(folder, { 'photos/.keep': '' });
  for (const [name, picture] of Object.entries(files)) await picture.toFile(join(folder, 'photos', name));
  return sitePhotos(
    Object.keys(files).map((name) => `photos/${name}`),
    folder,
    temporaryFolder(),
  );
}

/** Where the content of a file of the site lies. */
const placeOf = ({ files }: SitePhotos, path: string): string =>
  (files.find((file) => file.path === path)!.content as Copied).copyOf;

test('sitePhotos(paths) turns a picture upright and makes it at most 1600 and 480 px wide', async () => {
  const made = await photosOfFolder({ 'bait.jpg': telephonePicture(1000, 2000) });
  const { src, thumb, width, height } = made.photos['photos/bait.jpg']!;
  expect({ width, height }).toEqual({ width: 1600, height: 800 });
  expect(await sharp(placeOf(made, src)).metadata()).toMatchObject({ format: 'webp', width: 1600, height: 800 });
  expect(await sharp(placeOf(made, thumb)).metadata()).toMatchObject({ format: 'webp', width: 480, height: 240 });
});

test('sitePhotos(paths) does not enlarge a small picture', async () => {
  const { photos } = await photosOfFolder({
    'chip.png': sharp({ create: { width: 200, height: 100, channels: 4, background: 'red' } }),
  });
  expect(photos['photos/chip.png']).toMatchObject({ width: 200, height: 100 });
});

test('sitePhotos(paths) leaves every word about the picture behind, its name included', async () => {
  const folder = temporaryFolder();
  await writeFiles(folder, { 'photos/.keep': '' });
  await telephonePicture(60, 40).toFile(join(folder, 'photos/secret-pool.jpg'));
  // Else the test would pass with a picture that had nothing to lose.
  expect((await sharp(join(folder, 'photos/secret-pool.jpg')).metadata()).exif?.toString('latin1')).toContain(
    'Nobody Atall',
  );

  const made = await sitePhotos(['photos/secret-pool.jpg'], folder, temporaryFolder());
  expect(made.files).toHaveLength(2);
  for (const { path } of made.files) {
    expect(path).toMatch(/^photos\/[0-9a-f]{16}(?:-small)?\.webp$/);
    const metadata = await sharp(placeOf(made, path)).metadata();
    expect(metadata).not.toHaveProperty('exif');
    expect(metadata).not.toHaveProperty('xmp');
    expect(metadata).not.toHaveProperty('iptc');
    expect(readFileSync(placeOf(made, path)).toString('latin1')).not.toMatch(/Nobody|pocket|EXIF|GPS|secret/);
  }
});

test('sitePhotos(paths) gives one content one name, and takes it from the cache', async () => {
  const folder = temporaryFolder();
  const cache = temporaryFolder();
  await writeFiles(folder, { 'photos/.keep': '' });
  for (const name of ['a.jpg', 'b.jpg']) await telephonePicture(60, 40).toFile(join(folder, 'photos', name));
  const first = await sitePhotos(['photos/a.jpg', 'photos/b.jpg'], folder, cache);
  expect(first.photos['photos/a.jpg']).toEqual(first.photos['photos/b.jpg']);
  expect(first.files).toHaveLength(2);
  const cached = filesBelow(cache);
  await sharp({ create: { width: 5, height: 5, channels: 3, background: 'blue' } })
    .webp()
    .toFile(join(cache, cached.find((name) => !name.includes('small'))!));
  const second = await sitePhotos(['photos/a.jpg'], folder, cache);
  expect(second.photos['photos/a.jpg']).toMatchObject({ src: first.photos['photos/a.jpg']!.src, width: 5, height: 5 });
});

test.each([
  ['no picture at all', 'hello'],
  ['an SVG, which may point to other files', '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>'],
])('sitePhotos(paths) refuses %s, whatever its name', async (_what, content) => {
  const folder = temporaryFolder();
  await writeFiles(folder, { 'photos/bait.jpg': content });
  const writing = sitePhotos(['photos/bait.jpg'], folder, temporaryFolder());
  await expect(writing).rejects.toThrow(/^photos\/bait\.jpg is a .+\. Replace it with a JPEG, PNG or WebP picture\.$/);
});

test('sitePhotos(paths) makes the same pictures where nothing can be kept', async () => {
  const folder = temporaryFolder();
  await writeFiles(folder, { 'photos/.keep': '', 'in-the-way': '' });
  await telephonePicture(60, 40).toFile(join(folder, 'photos/a.jpg'));
  const kept = await sitePhotos(['photos/a.jpg'], folder, join(folder, 'cache'));
  const made = await sitePhotos(['photos/a.jpg'], folder, join(folder, 'in-the-way/cache'));
  expect(made.photos).toEqual(kept.photos);
  for (const { path, content } of made.files) {
    expect(readFileSync(placeOf(kept, path)).equals(content as Uint8Array)).toBe(true);
  }
});
