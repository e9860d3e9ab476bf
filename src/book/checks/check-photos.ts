import { nearestFileFix } from '../../diagnostics/nearest-name.ts';
import type { FieldPath } from '../../recipe/field-path.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { namesThere } from '../../recipe/reference-fix.ts';
import { PHOTO_FOLDER } from '../../recipe/source.ts';
import { photoPath } from '../photo-of.ts';
import type { Finding, Report } from '../report.ts';

/** Why a photo that is there cannot be shown. */
export type PhotoFault = Pick<Finding, 'expected' | 'why' | 'fix'> & {
  /** What the file is, in words that follow its name: `a HEIC picture`. */
  readonly found: string;
  /** A book may do without the photo, which then is the other way out. */
  readonly orRemove?: true;
};

/** What is known of the photos of a book. */
export interface KnownPhotos {
  /** Photos that are there, as `photos/…`. */
  readonly photos: readonly string[];
  /** What is wrong with those that cannot be shown. */
  readonly photoFaults: ReadonlyMap<string, PhotoFault>;
  /** Pictures that are there, but elsewhere, by path: they may be the ones that are missing. */
  readonly elsewhere: readonly string[];
  /** Files and folders that were told of as unreadable. */
  readonly unread: readonly string[];
}

/**
 * Reports photos that are named but not there or cannot be shown, each at the place that names it, and photos that are there but named nowhere.
 *
 * @param faults whether there are files with faults, which may name any photo
 */
export function checkPhotos(
  things: readonly Thing[],
  { photos, photoFaults, elsewhere, unread }: KnownPhotos,
  faults: boolean,
  report: Report,
): void {
  const named = new Set<string>();
  const there = new Set(photos);
  for (const thing of things) {
    for (const { file, path } of photosIn(thing)) {
      const wanted = photoPath(file);
      named.add(wanted);
      if (unread.includes(wanted) || unread.includes(PHOTO_FOLDER)) continue;
      const fault = photoFaults.get(wanted);
      if (fault) {
        const { orRemove, ...finding } = fault;
        report.add('photo/unreadable', thing, path, {
          ...finding,
          ...(orRemove ? { fix: `${finding.fix}, or remove the line` } : {}),
          found: `photo \`${file}\`, ${fault.found}`,
          related: [{ message: 'the photo is here', file: wanted, start: { line: 1, column: 1 } }],
        });
      } else if (!there.has(wanted)) report.add('photo/missing', thing, path, missing(file, photos, elsewhere));
    }
  }
  for (const photo of photos) {
    if (faults || named.has(photo)) continue;
    report.tell('photo/unused', photo, {
      found: 'photo that no file names',
      expected: 'a line `photos: [NAME]` somewhere, or no such photo',
      why: 'only photos that are named are published',
      fix: 'name it in the file that it belongs to, or remove it',
    });
  }
}

function missing(file: string, photos: readonly string[], elsewhere: readonly string[]): Finding {
  const wanted = photoPath(file);
  const names = photos.map((photo) => photo.slice(PHOTO_FOLDER.length + 1));
  const finding = {
    found: `photo \`${file}\``,
    expected: `the name of a file in ${PHOTO_FOLDER}/${namesThere(names)}`,
  };
  const astray = elsewhere.find((path) => path.endsWith(wanted.slice(PHOTO_FOLDER.length)));
  if (astray !== undefined) return { ...finding, fix: `move ${astray} to ${PHOTO_FOLDER}/` };
  const name = wanted.slice(PHOTO_FOLDER.length + 1);
  return { ...finding, ...nearestFileFix(name, names, `put \`${name}\` into ${PHOTO_FOLDER}/, or remove it here`) };
}

/** Every photo that a file names. A thing never changes. */
function photosIn(thing: Thing): readonly NamedPhoto[] {
  const known = photos.get(thing);
  if (known) return known;
  const found = photoFields(thing.fields, []);
  photos.set(thing, found);
  return found;
}

const photos = new WeakMap<Thing, readonly NamedPhoto[]>();

interface NamedPhoto {
  readonly file: string;
  readonly path: FieldPath;
}

/** Every photo in the fields of a file: `photo` and `photos`, at any depth. */
function photoFields(value: unknown, path: FieldPath): NamedPhoto[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => {
    const at = [...path, Array.isArray(value) ? Number(name) : name];
    if (name === 'photo' && inner) return [{ file: (inner as { file: string }).file, path: [...at, 'file'] }];
    if (name === 'photos' && Array.isArray(inner)) {
      return inner.map((photo: { file: string }, index) => ({ file: photo.file, path: [...at, index, 'file'] }));
    }
    return photoFields(inner, at);
  });
}
