import { comparableName, unportable } from '../../recipe/portable-name.ts';
import { kindOfPath } from '../../recipe/source.ts';
import { SLUG } from '../../values/slug.ts';
import { freeName } from '../read/free-name.ts';
import type { Report } from '../report.ts';

const TOP = { line: 1, column: 1 };

/**
 * Tells of files that disks of other systems cannot hold beside the others. Names that no id may have are told of elsewhere.
 *
 * @param paths of the texts and the photos, from the book's folder
 */
export function checkPortable(paths: readonly string[], report: Report): void {
  const first = new Map<string, string>();
  for (const path of [...paths].sort()) {
    const id = kindOfPath(path)?.id;
    if (id !== undefined && !SLUG.test(id)) continue;
    const name = path.slice(path.lastIndexOf('/') + 1);
    const ending = /\.[^.]*$/.exec(name)?.[0] ?? '';
    const free = freeName(name.slice(0, name.length - ending.length), new Set());
    const fix = `rename it, for instance to \`${free}${ending}\``;
    const why = unportable(name);
    if (why !== undefined)
      report.tell('file/not-portable', path, {
        found: `file name \`${name}\``,
        expected: 'a name for every system',
        why,
        fix,
      });
    const twin = first.get(comparableName(path));
    if (twin === undefined) first.set(comparableName(path), path);
    else {
      report.tell('file/not-portable', path, {
        found: `second file \`${name}\` but for its capitals`,
        expected: 'names that differ in more than capitals and the way an accent is written',
        why: 'on Windows and macOS one of the two takes the place of the other',
        fix: 'rename one of them',
        related: [{ message: 'the other one is here', file: twin, start: TOP }],
      });
    }
  }
}
