/**
 * Notes of the book, Markdown, as HTML that cannot hurt.
 *
 * @packageDocumentation
 */
import MarkdownIt, { type StateCore, type Token } from 'markdown-it';
import { SLUG } from '../values/slug.ts';
import { bookIndex } from './book-index.ts';
import { type Html, trusted } from './html.ts';
import { link, paths } from './links.ts';
import type { PageContext } from './page.ts';

/** A note stands under the title of its page, which is the only heading of level one. */
const TOP_HEADING = 2;
/** Addresses that a note may link to: the web, mail, or a file of the book. */
const WEB = /^(?:https?:|mailto:)/i;
const SCHEME = /^[a-z][a-z0-9+.-]*:/i;

// HTML in a note stays text. `javascript:` and its like are refused by the library itself.
const markdown = new MarkdownIt({ html: false, linkify: false, typographer: true });
const plain = new MarkdownIt({ html: false, linkify: false });

/** Where a note's link leads: a file of the book to its page, the web to the web; undefined for anything else. */
function target(context: PageContext, href: string): string | undefined {
  if (WEB.test(href)) return href;
  if (href.startsWith('#')) return href;
  if (SCHEME.test(href) || href.startsWith('//') || href.startsWith('/')) return undefined;
  const [path = '', fragment] = href.split('#', 2);
  const name = /([^/]+)\.md$/.exec(path)?.[1];
  if (name === undefined || !SLUG.test(name)) return undefined;
  const page = pageOf(context, name, path);
  return page === undefined ? undefined : link(context, page) + (fragment === undefined ? '' : `#${fragment}`);
}

/** Page of the file of a thing. A folder in the path decides between things of the same name. */
function pageOf({ book }: PageContext, name: string, path: string): string | undefined {
  const { recipes, looks, materials, cuts, molds, targets } = bookIndex(book);
  const candidates: readonly (readonly [RegExp, boolean, string])[] = [
    [/(?:^|\/)targets\//, targets.has(name), paths.target(name)],
    [/(?:^|\/)molds\//, molds.has(name), paths.mold(name)],
    [/(?:^|\/)shelf\//, materials.has(name) || cuts.has(name), paths.material(cuts.get(name)?.of ?? name)],
    [/(?:^|\/)colours\//, recipes.has(name) || looks.has(name), paths.recipe(name)],
  ];
  const inFolder = candidates.find(([folder, known]) => folder.test(path) && known);
  const known = inFolder ?? [...candidates].reverse().find(([, isKnown]) => isKnown);
  return known?.[2];
}

/** What a note is read with. */
type NoteEnvironment = StateCore['env'] & { readonly context: PageContext };

markdown.core.ruler.push('book', (state: StateCore): void => {
  levelHeadings(state.tokens);
  for (const token of state.tokens) {
    if (token.type === 'fence') token.info = '';
    if (token.children) token.children = resolvedInline(state, token.children);
  }
});

/** Headings from the top level down without a gap: each stands one below the nearest one above it that is higher. */
function levelHeadings(tokens: readonly Token[]): void {
  const above: number[] = [];
  for (const token of tokens) {
    if (token.type === 'heading_open') {
      while (above.length > 0 && above.at(-1)! >= levelOf(token)) above.pop();
      above.push(levelOf(token));
    }
    // A heading is closed before the next one opens, so its place is still the last.
    if (token.type === 'heading_open' || token.type === 'heading_close') {
      token.tag = `h${Math.min(6, TOP_HEADING + above.length - 1)}`;
    }
  }
}

function levelOf({ tag }: Token): number {
  return Number(tag.slice(1));
}

/**
 * A note as HTML: no raw HTML, no picture from elsewhere (its text stays, as a link), links to files of the book lead to their
 * pages, links that lead nowhere lose their address, headings go on from the page's title.
 */
export function notesHtml(context: PageContext, notes: string): Html {
  const environment: NoteEnvironment = { context };
  return trusted(markdown.render(notes, environment));
}

/**
 * Inline tokens with their links resolved. A picture becomes its text: the book shows photos that its front matter names, and
 * fetches nothing from elsewhere; what a picture on the web shows can be reached by its link.
 */
function resolvedInline(state: StateCore, tokens: readonly Token[]): Token[] {
  const { context } = state.env as NoteEnvironment;
  const resolved: Token[] = [];
  // Links don't nest, so one at a time is open.
  let tag = 'a';
  for (const token of tokens) {
    if (token.type === 'link_open') {
      const href = target(context, String(token.attrGet('href') ?? ''));
      tag = href === undefined ? 'span' : 'a';
      token.attrs = href === undefined ? [] : attributes(href);
    }
    if (token.type === 'link_open' || token.type === 'link_close') token.tag = tag;
    if (token.type === 'image') resolved.push(...pictureAsText(state, token));
    else resolved.push(token);
  }
  return resolved;
}

function attributes(href: string): [string, string][] {
  return WEB.test(href)
    ? [
        ['href', href],
        ['rel', 'noopener noreferrer'],
      ]
    : [['href', href]];
}

function pictureAsText({ Token }: StateCore, image: Token): Token[] {
  const text = new Token('text', '', 0);
  text.content = image.content === '' ? 'picture' : `picture: ${image.content}`;
  const src = String(image.attrGet('src') ?? '');
  if (!WEB.test(src)) return [text];
  const open = new Token('link_open', 'a', 1);
  open.attrs = attributes(src);
  return [open, text, new Token('link_close', 'a', -1)];
}

/** Text of a note without its markup, for the search. */
export function notesText(notes: string): string {
  const words: string[] = [];
  for (const token of plain.parse(notes, {})) {
    if (token.type === 'fence' || token.type === 'code_block') words.push(token.content);
    for (const child of token.children ?? []) {
      if (child.type === 'text' || child.type === 'code_inline' || child.type === 'image') words.push(child.content);
    }
  }
  return words.join(' ').replace(/\s+/g, ' ').trim();
}
