import type { Edition } from '../../src/book/model/publish.ts';
import type { Book } from '../../src/book/model.ts';
import { prepareSite, type SiteFolders } from '../../src/eleventy/site.ts';
import type { SiteFile } from '../../src/output/site-file.ts';

/** All files of an edition of a book, what others refer to first: the same as a build gives, without Eleventy. */
export async function siteFiles(compiled: Book, edition: Edition, folders: SiteFolders): Promise<readonly SiteFile[]> {
  const { items, beside, pagePath, page } = await prepareSite(compiled, edition, folders);
  const pages = Object.entries(items).flatMap(([kind, list]) =>
    list.map((item) => ({ path: pagePath(kind, item), content: page(kind, item) })),
  );
  return [...(await beside), ...pages];
}
