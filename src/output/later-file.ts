import type { Copied, SiteFile } from './site-file.ts';

/** A file of a site that is made when it is first wanted; the same each time. */
export interface LaterFile {
  /** From the root of the site, with `/`. */
  readonly path: string;
  make(): Promise<Uint8Array | Copied>;
}

/** Makes files that were left for later, in their order. */
export async function madeNow(later: readonly LaterFile[]): Promise<readonly SiteFile[]> {
  return Promise.all(later.map(async (file) => ({ path: file.path, content: await file.make() })));
}
