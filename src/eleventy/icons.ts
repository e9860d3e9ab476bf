import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import type { SiteFile } from '../output/site-file.ts';
import { ICON_SIZES, paths } from '../render/links.ts';

/** Dots an inch at which the drawing of the icon, 32 wide, is as large as the largest is needed. */
const DENSITY = (72 * Math.max(...ICON_SIZES)) / 32;

/** The icon of a book in the sizes that a home screen takes. */
export async function iconFiles(root: string): Promise<readonly SiteFile[]> {
  const drawing = await readFile(join(root, 'site/assets/icon.svg'));
  return Promise.all(
    ICON_SIZES.map(async (size) => ({
      path: paths.icon(size),
      content: await sharp(drawing, { density: DENSITY }).resize(size, size).removeAlpha().png().toBuffer(),
    })),
  );
}
