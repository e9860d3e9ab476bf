import { join } from 'node:path';
import { packageFolder } from './notices.ts';

/** Files of the fonts of titles in pictures: that of the headings of pages, in one weight, and its further letters. */
export function titleFonts(root: string): readonly string[] {
  return ['latin', 'latin-ext'].map((letters) =>
    join(packageFolder('@fontsource/besley', root), `files/besley-${letters}-600-normal.woff2`),
  );
}
