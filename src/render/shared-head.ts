import { type Html, html } from './html.ts';
import { NOT_FOUND } from './links.ts';
import type { PageContext } from './page.ts';

/** Size of the picture of a shared link, px. Common practice, no source. */
export const SHARED_PICTURE = { width: 1200, height: 630 } as const;

/**
 * What a shared link to a page shows: its address, name, sentence and picture. Only where the book says where it is published, since
 * these must be whole addresses. The maker's own copy is not to be shared, nor found by search engines.
 *
 * Source of the names: the Open Graph protocol, ogp.me (from memory).
 *
 * @param picture path of a picture from the root
 */
export function sharedHead(
  { book, url }: PageContext,
  { title, description, picture }: { readonly title: string; readonly description: string; readonly picture?: string },
): Html {
  if (book.edition === 'mine') return html`<meta name="robots" content="noindex, nofollow">\n`;
  if (book.address === undefined || url === NOT_FOUND) return html``;
  const to = (path: string): string => new URL(path, book.address).href;
  const image =
    picture === undefined
      ? ''
      : html`<meta property="og:image" content="${to(picture)}">
<meta property="og:image:width" content="${SHARED_PICTURE.width}">
<meta property="og:image:height" content="${SHARED_PICTURE.height}">
<meta property="og:image:alt" content="${title}, over white above and over black below">
`;
  return html`<link rel="canonical" href="${to(url)}">
<meta property="og:type" content="website">
<meta property="og:site_name" content="${book.title}">
<meta property="og:title" content="${title}">
<meta property="og:description" content="${description}">
<meta property="og:url" content="${to(url)}">
${image}`;
}
