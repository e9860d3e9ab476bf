/** One file of a site, as a value: nothing is written until all of a site is known. */
export interface SiteFile {
  /** From the root of the site, with `/`. */
  readonly path: string;
  readonly content: string | Uint8Array | Copied;
}

/** The content of a file that lies ready elsewhere. It must not change while a site is written. */
export interface Copied {
  /** Absolute. */
  readonly copyOf: string;
}

/**
 * Whether a path is one of a file in a site's folder, as `SiteFile.path` is. Asked of what is read from a folder: that may come from
 * anybody, and must lead nowhere else.
 */
export function isSitePath(path: unknown): path is string {
  if (typeof path !== 'string' || /[\\\0]/.test(path)) return false;
  return path.split('/').every((name) => !['', '.', '..'].includes(name));
}
