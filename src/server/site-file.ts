import { realpath, stat } from 'node:fs/promises';
import { isAbsolute, join, relative, sep } from 'node:path';
import type { RequestTarget } from './request-target.ts';

/** A file of a site. */
export interface SiteFile {
  /** Absolute and real: no part of it is a link. */
  readonly path: string;
  /** From the real folder of the site. */
  readonly names: readonly string[];
  readonly bytes: number;
}

/**
 * The file of a site's folder for a target: `folder` where its last `/` is missing, undefined where there is none.
 *
 * Nothing outside the folder is ever found, whatever is linked in it, nor anything with a name that begins with a dot.
 * Everything is looked up anew each time, since the folder changes while it is served.
 */
export async function findSiteFile(
  site: string,
  { names, folder }: Pick<RequestTarget, 'names' | 'folder'>,
): Promise<SiteFile | 'folder' | undefined> {
  if (names.some((name) => name.startsWith('.'))) return undefined;
  const found = await fileAt(site, folder ? [...names, 'index.html'] : names);
  if (found || folder) return found;
  return (await fileAt(site, [...names, 'index.html'])) && 'folder';
}

async function fileAt(site: string, names: readonly string[]): Promise<SiteFile | undefined> {
  try {
    const root = await realpath(site);
    const path = await realpath(join(root, ...names));
    const inside = relative(root, path);
    const real = inside.split(sep);
    if (isAbsolute(inside) || real.some((name) => name === '' || name.startsWith('.'))) return undefined;
    const found = await stat(path);
    return found.isFile() ? { path, names: real, bytes: found.size } : undefined;
  } catch (error) {
    if (isNotThere(error)) return undefined;
    throw error;
  }
}

const NOT_THERE: readonly string[] = ['ENOENT', 'ENOTDIR', 'ELOOP', 'EACCES', 'EPERM', 'ENAMETOOLONG', 'EINVAL'];

/** Whether the system says that there is no such file, or none that may be read. */
export function isNotThere(error: unknown): boolean {
  return error instanceof Error && 'code' in error && NOT_THERE.includes(String(error.code));
}
