import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { copyFile, mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import type { Book } from '../book/model.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import type { PhotoFiles } from '../render/page.ts';

/** Largest width of a picture and of its small version, px. */
const WIDTHS = { src: 1600, thumb: 480 } as const;

/** More than any camera's picture; a small file can unpack to gigabytes. */
const MOST_PIXELS = 150_000_000;

/** Counted up when pictures of the same photo must come out another way, so that none is taken from the cache. */
const RECIPE = 1;

/** Formats that a photo may have, whatever its name says: others may hold programs or point to other files. */
const FORMATS: readonly string[] = ['jpeg', 'png', 'webp'];

/** Every photo that a book shows, by its file. */
export function photosOf(book: Book): readonly string[] {
  const things = [...book.recipes, ...book.materials, ...book.molds];
  const rounds = book.recipes.flatMap(({ cups }) => cups.flatMap((cup) => cup.rounds));
  const photos = [
    ...things.flatMap((thing) => thing.photos),
    ...rounds.flatMap(({ seen }) => seen?.photo ?? []),
    ...book.targets.flatMap(({ photo }) => photo ?? []),
  ];
  return [...new Set(photos.map(({ file }) => file))].sort();
}

/** What the picture of a photo is called in the site: it tells what is in the photo, and nothing of its file's name. */
export function pictureName(original: Uint8Array): string {
  return createHash('sha256').update(`${RECIPE}\n`).update(original).digest('hex').slice(0, 16);
}

/**
 * Writes the pictures of a book into an output folder: turned upright, at most 1600 px and 480 px wide, as WebP.
 *
 * Everything but the pixels stays behind: position, camera, time, and the file's own name, since all of them may tell
 * what the maker did not mean to publish. A picture that was made before comes from the cache.
 *
 * Throws: Refusal that names a file which is no picture.
 *
 * @param folder the book's folder
 * @param cache a folder for finished pictures
 */
export async function writePhotos(
  files: readonly string[],
  folder: string,
  output: string,
  cache: string,
): Promise<Readonly<Record<string, PhotoFiles>>> {
  const written: [string, PhotoFiles][] = [];
  if (files.length > 0)
    await Promise.all([mkdir(cache, { recursive: true }), mkdir(join(output, 'photos'), { recursive: true })]);
  for (const file of files) {
    const original = await readFile(join(folder, file));
    const name = pictureName(original);
    const src = `photos/${name}.webp`;
    const thumb = `photos/${name}-small.webp`;
    const picture = join(cache, `${name}.webp`);
    const small = join(cache, `${name}-small.webp`);
    if (!existsSync(picture) || !existsSync(small)) {
      try {
        await shrink(original, WIDTHS.thumb, small);
        await shrink(original, WIDTHS.src, picture);
      } catch (error) {
        const why = error instanceof Error ? error.message.split('\n')[0] : String(error);
        const message = `${file} cannot be read as a picture (${why}). Replace it with a JPEG, PNG or WebP file.`;
        throw new Refusal(message, { ofBook: true });
      }
    }
    await Promise.all([copyFile(picture, join(output, src)), copyFile(small, join(output, thumb))]);
    const { width, height } = await sharp(await readFile(picture)).metadata();
    written.push([file, { src, thumb, width, height }]);
  }
  return Object.fromEntries(written);
}

async function shrink(original: Buffer, width: number, file: string): Promise<void> {
  const image = sharp(original, { limitInputPixels: MOST_PIXELS });
  const { format } = await image.metadata();
  if (!FORMATS.includes(format)) throw new Error(`its format is ${format}`);
  // `rotate` turns the pixels by what the metadata say, before the metadata are dropped.
  const pixels = await image.rotate().resize({ width, withoutEnlargement: true }).webp({ quality: 82 }).toBuffer();
  const aside = `${file}.${process.pid}.tmp`;
  await writeFile(aside, pixels);
  await rename(aside, file);
}
