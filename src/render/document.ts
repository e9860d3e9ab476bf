/**
 * The document round every page: head, header, contents, footer.
 *
 * @packageDocumentation
 */
import { defined } from '../values/defined.ts';
import { ownCopyMark } from './edition-mark.ts';
import { GROUND } from './ground.ts';
import { escapeHtml, type Html, html } from './html.ts';
import { link, paths } from './links.ts';
import type { PageContext, ScriptName } from './page.ts';
import { partsBar, partsList } from './parts-of-book.ts';
import { sharedHead } from './shared-head.ts';

/** What a page gives its document. */
export interface DocumentParts {
  /** The page's own title; left out on the home page, which has the book's. */
  readonly title?: string;
  /** For search engines and shared links: a sentence. */
  readonly description: string;
  /** Path of the picture that a shared link shows, from the root. */
  readonly picture?: string;
  /** What stands in `<main>`. */
  readonly main: Html;
  /** Scripts that the page needs; it must read without them. */
  readonly scripts?: readonly ScriptName[];
  /** Paths of data that they need, from the root: scripts that leave it in the window, and run before them. */
  readonly data?: readonly string[];
  /** Whether it searches, which runs a WebAssembly module. */
  readonly searches?: boolean;
  /** The part of the book that the page is in, a path of the contents. */
  readonly part?: string;
  /** Class of the body, for pages with a paper of their own. */
  readonly paper?: string;
}

/** Everything from the book itself, nothing from elsewhere; a script of the search may compile its own module. */
function policy(searches: boolean): Html {
  return html`default-src 'none'; script-src 'self'${searches ? html` 'wasm-unsafe-eval'` : ''}; style-src 'self'; font-src 'self'; img-src 'self' data:; connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'self'`;
}

/** Search engines and tabs cut longer titles; counted as it is written, entities and all. */
const LONGEST_TITLE = 70;

function fullTitle(title: string | undefined, bookTitle: string): string {
  if (title === undefined) return shortened(bookTitle);
  const full = `${title} · ${bookTitle}`;
  return escapeHtml(full).length <= LONGEST_TITLE ? full : shortened(title);
}

function shortened(title: string): string {
  let short = '';
  let length = 0;
  for (const letter of title) {
    length += escapeHtml(letter).length;
    if (length > LONGEST_TITLE) break;
    short += letter;
  }
  return short;
}

/** The whole document as text. */
export function document(context: PageContext, parts: DocumentParts): string {
  const { book, assets } = context;
  const to = (path: string): string => link(context, path);
  const scripts = (parts.scripts ?? []).flatMap((name) => assets.scripts[name]);
  const files = [...new Set([...(parts.data ?? []), ...scripts])];
  return html`<!doctype html>
<html lang="en" data-root="${to('')}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy(parts.searches ?? false)}">
<meta name="viewport" content="width=device-width, initial-scale=1, viewport-fit=cover">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
<title>${fullTitle(parts.title, book.title)}</title>
<meta name="description" content="${parts.description}">
${sharedHead(context, defined({ title: parts.title ?? book.title, description: parts.description, picture: parts.picture }))}<link rel="icon" type="image/svg+xml" href="${to(assets.icon)}">
<link rel="apple-touch-icon" sizes="180x180" href="${to(paths.icon(180))}">
<link rel="manifest" href="${to(paths.manifest)}">
<meta name="theme-color" media="(prefers-color-scheme: light)" content="${GROUND.light}">
<meta name="theme-color" media="(prefers-color-scheme: dark)" content="${GROUND.dark}">
${assets.fonts.map((font) => html`<link rel="preload" as="font" type="font/woff2" href="${to(font)}" crossorigin>\n`)}<link rel="stylesheet" href="${to(assets.css)}">
${assets.scripts.theme.map((path) => html`<script src="${to(path)}"></script>\n`)}${files.map((path) => html`<script defer src="${to(path)}"></script>\n`)}</head>
<body${parts.paper === undefined ? '' : html` class="${parts.paper}"`}>
<a class="skip" href="#main">Skip to content</a>
${ownCopyMark(book)}<header class="top">
<a class="book-title" href="${to('')}">${book.title}</a>
${partsBar(context, parts.part)}
</header>
<main id="main" tabindex="-1">
${parts.main}
</main>
<footer class="foot">
${partsList(context, parts.part)}
<div class="colophon">
<p>${book.title}${book.maker === undefined ? '' : html`, by ${book.maker}`}. Colours are computed from the materials and what is really in the cup. A screen comes close; only a poured bait shows the real colour.</p>
<p>Hot vinyl burns and gives off fumes: <a href="${to(paths.care)}">read the cautions</a> before you heat any. <a href="${to(paths.firstAid('burn'))}">First aid</a> for burns and fumes. Get the whole book <a href="${to(paths.bookData)}">as data</a>, or read the <a href="${to(paths.notices)}">notices</a> for its fonts and programs.</p>
<p class="theme" hidden><button class="quiet" type="button" data-theme-switch aria-live="polite">Theme</button></p>
</div>
</footer>
</body>
</html>
`.toString();
}
