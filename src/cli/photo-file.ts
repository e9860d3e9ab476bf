import { readFile, stat } from 'node:fs/promises';
import { MOST_PHOTO_BYTES, tooManyBytes, UnreadablePhoto } from '../shell/read-photo.ts';
import { type ReadPixels, readPixels } from '../shell/read-pixels.ts';
import { photoFileText } from '../words/photo-file.ts';
import { explainError, isSystemError } from './explain-error.ts';

/** The pixels of a file, or why there are none: sentences. */
export async function pixelsOfFile(path: string): Promise<ReadPixels | { readonly unreadable: string }> {
  try {
    const found = await stat(path);
    if (found.isDirectory())
      throw new UnreadablePhoto({
        found: 'a folder',
        expected: 'photos',
        fix: 'name the photos in it, as in FOLDER/*.jpg',
      });
    if (!found.isFile()) throw new UnreadablePhoto({ found: 'no plain file', expected: 'a photo' });
    if (found.size > MOST_PHOTO_BYTES) throw new UnreadablePhoto(tooManyBytes(found.size));
    return await readPixels(await readFile(path));
  } catch (error) {
    if (error instanceof UnreadablePhoto) return { unreadable: photoFileText(error.fault) };
    // One photo that the system doesn't give must not hide what the others tell.
    if (isSystemError(error)) return { unreadable: explainError(error, false) };
    throw error;
  }
}
