import { type Html, html } from './html.ts';
import { NOT_FOUND, paths } from './links.ts';
import type { PageContext } from './page.ts';

/** Size of the picture of a shared link, px. Common practice, no source. */
export const SHARED_PICTURE = { width: 1200, height: 630 } as const;

/**
 * What a shared link to a page shows: its address, name, sentence and picture. Only where the book says where it is published, since
 * these must be whole addresses. The maker's own copy is not to be shared, nor found by search engines.
 *
 * Source of the names: the Open Graph protocol, ogp.me; `twitter:card`, which others read too, X’s help for developers (from memory).
 *
 * @param picture path of a picture from the root; unset: that of the book
 */
export function sharedHead(
  { book, url, pictures }: PageContext,
  { title, description, picture }: { readonly title: string; readonly description: string; readonly picture?: string },
): Html {
  if (book.edition === 'mine') return html`<meta name="robots" content="noindex, nofollow">\n`;
  if (book.address === undefined || url === NOT_FOUND) return html``;
  const to = (path: string): string => new URL(path, book.address).href;
  const shown = picture ?? (book.recipes.length + book.looks.length > 0 ? bookPicture(pictures) : undefined);
  const image =
    shown === undefined
      ? html`<meta name="twitter:card" content="summary">\n`
      : html`<meta property="og:image" content="${to(shown)}">
<meta property="og:image:width" content="${SHARED_PICTURE.width}">
<meta property="og:image:height" content="${SHARED_PICTURE.height}">
<meta property="og:image:alt" content="${picture === undefined ? `Baits of ${book.title}` : `${title}, over white and over black`}">
<meta name="twitter:card" content="summary_large_image">
`;
  return html`<link rel="canonical" href="${to(url)}">
<meta property="og:type" content="website">
<meta property="og:site_name" content="${book.title}">
<meta property="og:title" content="${title}">
<meta property="og:description" content="${description}">
<meta property="og:url" content="${to(url)}">
${image}`;
}

/** Path of the picture of a whole book, with the state that it is in. */
function bookPicture({ [BOOK_PICTURE]: state }: PageContext['pictures']): string {
  return state === undefined ? paths.sharedPicture : `${paths.sharedPicture}?v=${state}`;
}

/** Path of the picture of a target, with the state that it is in. */
export function targetPicture({ pictures }: Pick<PageContext, 'pictures'>, id: string): string {
  const path = paths.targetPicture(id);
  const state = pictures[path];
  return state === undefined ? path : `${path}?v=${state}`;
}

/** Under what the state of the whole book's picture stands among those of its recipes. */
export const BOOK_PICTURE = '';
