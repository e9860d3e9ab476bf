import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import sharp from 'sharp';
import type { Book } from '../book/model.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import { systemCode } from '../output/effects.ts';
import { privateFolder } from '../output/private-folder.ts';
import { rename } from '../output/retried-fs.ts';
import type { Copied, SiteFile } from '../output/site-file.ts';
import type { PhotoFiles } from '../render/page.ts';
import { required } from '../values/required.ts';
import { faultOf, SMALL_WIDTH, smallerPhoto } from './read-photo.ts';

/** Largest width of a picture and of its small version, px. */
const WIDTHS = { src: 1600, thumb: SMALL_WIDTH } as const;

/** Counted up when pictures of the same photo must come out another way, so that none is taken from the cache. */
const RECIPE = 1;

/** Every photo that a book shows, by its file. */
export function photosOf(book: Book): readonly string[] {
  const things = [...book.recipes, ...book.materials, ...book.molds];
  const rounds = [
    ...book.recipes.flatMap(({ cups }) => cups.flatMap((cup) => cup.rounds)),
    ...book.chips.flatMap((chip) => chip.rounds),
  ];
  const photos = [
    ...things.flatMap((thing) => thing.photos),
    ...[...rounds, ...book.recipes].flatMap(({ seen = [] }) => seen.flatMap(({ photo }) => photo ?? [])),
    ...book.targets.flatMap(({ photo }) => photo ?? []),
  ];
  return [...new Set(photos.map(({ file }) => file))].sort();
}

/** What the picture of a photo is called in the site: it tells what is in the photo, and nothing of its file's name. */
export function pictureName(original: Uint8Array): string {
  return createHash('sha256').update(`${RECIPE}\n`).update(original).digest('hex').slice(0, 16);
}

/** Folder of the finished pictures of all books of a user, in the folder of what can be made again. */
export function pictureCache(cache: string): string {
  return join(cache, 'photos');
}

/** The pictures of a book: the files, and where each stands. */
export interface SitePhotos {
  /** By the photo's file as the book names it. */
  readonly photos: Readonly<Record<string, PhotoFiles>>;
  readonly files: readonly SiteFile[];
}

/**
 * The pictures of a book: turned upright, at most 1600 px and 480 px wide, as WebP.
 *
 * Everything but the pixels stays behind: position, camera, time, and the file's own name, since all of them may tell
 * what the maker did not mean to publish. A picture that was made before comes from the cache, where one can be kept.
 *
 * Throws: Refusal that names a file which is no picture.
 *
 * @param folder the book's folder
 * @param cache a folder for finished pictures
 */
export async function sitePhotos(paths: readonly string[], folder: string, cache: string): Promise<SitePhotos> {
  const photos: [string, PhotoFiles][] = [];
  const files = new Map<string, SiteFile>();
  const kept = paths.length > 0 && (await canKeep(cache));
  for (const path of paths) {
    const original = await readFile(join(folder, path));
    const name = pictureName(original);
    const src = `photos/${name}.webp`;
    const thumb = `photos/${name}-small.webp`;
    try {
      for (const [at, width] of [[thumb, WIDTHS.thumb] as const, [src, WIDTHS.src] as const]) {
        if (files.has(at)) continue;
        const content = kept
          ? await keptPicture(original, width, join(cache, basename(at)))
          : await shrunk(original, width);
        files.set(at, { path: at, content });
      }
    } catch (error) {
      if (systemCode(error) !== undefined) throw error;
      const { found, expected } = faultOf(error);
      throw new Refusal(`${path} is ${found}. Replace it with ${expected}.`, { ofBook: true });
    }
    const { width, height } = await sharp(await bytesOf(required(files, src))).metadata();
    photos.push([path, { src, thumb, width, height }]);
  }
  return { photos: Object.fromEntries(photos), files: [...files.values()] };
}

/** Whether finished pictures can be kept in a folder: a user who has no place for them can build all the same. */
async function canKeep(cache: string): Promise<boolean> {
  return privateFolder(cache).then(
    () => true,
    () => false,
  );
}

async function keptPicture(original: Buffer, width: number, file: string): Promise<Copied> {
  if (!existsSync(file)) {
    const aside = `${file}.${process.pid}.tmp`;
    // On the disk before it has its name: after a power cut, an empty picture would be taken for a finished one for ever.
    await writeFile(aside, await shrunk(original, width), { flush: true });
    await rename(aside, file);
  }
  return { copyOf: file };
}

async function bytesOf({ content }: SiteFile): Promise<Uint8Array> {
  if (typeof content === 'string') return Buffer.from(content);
  return content instanceof Uint8Array ? content : readFile(content.copyOf);
}

async function shrunk(original: Buffer, width: number): Promise<Buffer> {
  return (await smallerPhoto(original, width)).webp({ quality: 82 }).toBuffer();
}
