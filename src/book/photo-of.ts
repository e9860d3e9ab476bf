import { PHOTO_FOLDER } from '../recipe/source.ts';
import { defined } from '../values/defined.ts';
import type { Photo } from './model/photo.ts';

/** Path of a photo from the book's folder, whether a file names it with its folder or without. */
export function photoPath(file: string): string {
  return file.startsWith(`${PHOTO_FOLDER}/`) ? file : `${PHOTO_FOLDER}/${file}`;
}

/** A photo as the book keeps it. */
export function photoOf({ file, caption }: { readonly file: string; readonly caption?: string | undefined }): Photo {
  return { file: photoPath(file), ...defined({ caption }) };
}
