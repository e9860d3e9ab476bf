import { join } from 'node:path';
import type { Edition } from '../../src/book/model/publish.ts';
import type { Book } from '../../src/book/model.ts';
// @ts-expect-error: plain JavaScript, without types
import { bundle } from '../../src/cli/bundle.mjs';
import { prepareSite, type SiteFolders } from '../../src/eleventy/site.ts';
import { titleFonts } from '../../src/eleventy/title-fonts.ts';
import { madeNow } from '../../src/output/later-file.ts';
import type { SiteFile } from '../../src/output/site-file.ts';
import { drawingThreads } from '../../src/shell/pictures/drawing-threads.ts';
import { KeptPictures } from '../../src/shell/pictures/kept-pictures.ts';
import type { PictureSource } from '../../src/shell/pictures/site-pictures.ts';
import { ROOT } from '../run-cupbook.ts';

/** Pictures as a build has them, kept in a folder. What could not be drawn is an error of the test. */
export async function pictureSource(cache: string): Promise<PictureSource> {
  const fonts = titleFonts(ROOT);
  return {
    drawing: drawingThreads(await bundle('src/shell/pictures/draw-thread.ts'), fonts),
    kept: new KeptPictures(join(cache, 'pictures')),
    fonts,
    tell: (sentence) => {
      throw new Error(sentence);
    },
  };
}

/** All files of an edition of a book, what others refer to first: the same as a build gives, without Eleventy. */
export async function siteFiles(compiled: Book, edition: Edition, folders: SiteFolders): Promise<readonly SiteFile[]> {
  const site = await prepareSite(compiled, edition, folders, await pictureSource(folders.cache));
  const { items, beside, later, pagePath, page } = site;
  const pages = Object.entries(items).flatMap(([kind, list]) =>
    list.map((item) => ({ path: pagePath(kind, item), content: page(kind, item) })),
  );
  return [...(await madeNow(later)), ...(await beside), ...pages];
}
