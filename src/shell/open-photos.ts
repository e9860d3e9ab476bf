import { existsSync } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { PhotoFault } from '../book/checks/check-photos.ts';
import { userCache } from '../output/user-cache.ts';
import { pictureCache, pictureName } from './photos.ts';
import { MOST_PHOTO_BYTES, photoFault, tooManyBytes } from './read-photo.ts';
import { whyUnread } from './why-unread.ts';

/** Opens photos of a book's folder, and says what is wrong with those that cannot be shown. */
export type OpenPhotos = (folder: string, files: readonly string[]) => Promise<ReadonlyMap<string, PhotoFault>>;

/** Pictures that are decoded at once: each may take some hundred megabytes. */
const AT_ONCE = 2;

async function faultIn(original: Buffer, cache: string): Promise<PhotoFault | undefined> {
  // Of the two pictures of a photo this is made last.
  return existsSync(join(cache, `${pictureName(original)}.webp`)) ? undefined : photoFault(original);
}

/**
 * Opens photos and remembers what it found, so that of a book which is read again only the changed ones are opened again. Writes nothing.
 *
 * @param cache folder of finished pictures: a photo of which one was made can be shown, and is not decoded again
 */
export function photoOpener(cache: () => string = () => pictureCache(userCache())): OpenPhotos {
  const known = new Map<string, { readonly version: string; readonly fault: PhotoFault | undefined }>();
  const open = async (file: string): Promise<PhotoFault | undefined> => {
    try {
      const { size, mtimeMs, ino } = await stat(file);
      const version = `${size} ${mtimeMs} ${ino}`;
      const before = known.get(file);
      if (before?.version === version) return before.fault;
      const fault = size > MOST_PHOTO_BYTES ? tooManyBytes(size) : await faultIn(await readFile(file), cache());
      known.set(file, { version, fault });
      return fault;
    } catch (error) {
      return { ...whyUnread(error, 'file'), expected: 'a picture that can be read' };
    }
  };
  return async (folder, files) => {
    const faults = new Map<string, PhotoFault>();
    const waiting = files.values();
    const worker = async (): Promise<void> => {
      for (const file of waiting) {
        const fault = await open(join(folder, file));
        if (fault) faults.set(file, fault);
      }
    };
    await Promise.all(Array.from({ length: AT_ONCE }, worker));
    return faults;
  };
}
