import { CATALOGUE } from '../diagnostics/catalogue.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { nearestName } from '../diagnostics/nearest-name.ts';
import type { FieldPath } from '../recipe/front-matter.ts';
import type { Thing } from '../recipe/read-thing.ts';
import { PHOTO_FOLDER } from '../recipe/source.ts';
import { photoPath } from './photo-of.ts';
import type { Report } from './report.ts';

/**
 * Reports photos that are named but not there, and photos that are there but named nowhere.
 *
 * @param faults whether there are files with faults, which may name any photo
 */
export function checkPhotos(
  things: readonly Thing[],
  photos: readonly string[],
  faults: boolean,
  report: Report,
  diagnostics: Diagnostic[],
): void {
  const named = new Set<string>();
  for (const thing of things) {
    for (const { file, path } of photoFields(thing.fields, [])) {
      const wanted = photoPath(file);
      named.add(wanted);
      if (photos.includes(wanted)) continue;
      const nearest = nearestName(wanted, photos);
      report.add('photo/missing', thing, path, {
        found: `photo \`${file}\``,
        expected: `the name of a file in ${PHOTO_FOLDER}/`,
        ...(nearest === undefined
          ? { fix: `put it into ${PHOTO_FOLDER}/, or remove the line` }
          : { fix: `write \`${nearest.slice(PHOTO_FOLDER.length + 1)}\``, nearest }),
      });
    }
  }
  for (const photo of photos) {
    if (faults || named.has(photo)) continue;
    diagnostics.push({
      code: 'photo/unused',
      severity: CATALOGUE['photo/unused'].severity,
      file: photo,
      start: { line: 1, column: 1 },
      found: 'photo that no file names',
      expected: 'a line `photos: [NAME]` somewhere, or no such photo',
      why: 'only photos that are named are published',
      fix: 'name it in the file that it belongs to, or remove it',
    });
  }
}

/** Every photo in the fields of a file: `photo` and `photos`, at any depth. */
function photoFields(value: unknown, path: FieldPath): { file: string; path: FieldPath }[] {
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
