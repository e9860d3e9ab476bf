import * as local from 'node:path';

/** The part of `node:path` that is asked: that of this machine, or `path.win32` and `path.posix` in tests. */
export type PathRules = Pick<typeof local, 'relative' | 'isAbsolute' | 'sep'>;

/**
 * Path from a folder to something in it, with `/`; empty for the folder itself, undefined for what lies elsewhere, on another drive for
 * instance. Links are not followed: compare real paths.
 *
 * @example pathInside('/book', '/book/colours/dusk.md') // 'colours/dusk.md'
 */
export function pathInside(
  folder: string,
  path: string,
  { relative, isAbsolute, sep }: PathRules = local,
): string | undefined {
  const between = relative(folder, path);
  // Between two drives there is no relative path, and `..` may also begin the name of a file.
  if (isAbsolute(between) || between === '..' || between.startsWith(`..${sep}`)) return undefined;
  return between.replaceAll(sep, '/');
}
