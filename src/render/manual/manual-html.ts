/**
 * Pages of the manual, Markdown of the program's own, as HTML.
 *
 * @packageDocumentation
 */
import MarkdownIt, { type StateCore, type Token } from 'markdown-it';
import { type Html, trusted } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';

const markdown = new MarkdownIt({ html: false, linkify: false, typographer: true });

type Environment = StateCore['env'] & { readonly context: PageContext };

markdown.core.ruler.push('manual', ({ tokens, env }: StateCore): void => {
  const { context } = env as Environment;
  for (const [index, token] of tokens.entries()) {
    if (token.type === 'heading_open') token.attrSet('id', headingId(tokens[index + 1]!.content));
    for (const child of token.children ?? []) if (child.type === 'link_open') leadOn(child, context);
    pairLinks(token.children ?? []);
  }
});

// What is wider than a phone is moved by finger or by keyboard.
markdown.renderer.rules.table_open = () => '<div class="scroll" role="group" aria-label="Table" tabindex="0"><table>\n';
markdown.renderer.rules.table_close = () => '</table></div>\n';
markdown.renderer.rules.fence = (tokens, index) =>
  `<pre class="scroll" role="group" aria-label="Example" tabindex="0"><code>${markdown.utils.escapeHtml(tokens[index]!.content)}</code></pre>\n`;

/**
 * The id that a code host gives a heading too, so that a link to it leads there in both places.
 *
 * @example headingId('What a *look* keeps') // 'what-a-look-keeps'
 * @example headingId('`targets/*.md`') // 'targetsmd'
 */
export function headingId(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}\- ]/gu, '')
    .replaceAll(' ', '-');
}

/** A link to another page of the manual leads to that page here; one to a file of the program is only its words. */
function leadOn(token: Token, context: PageContext): void {
  const href = String(token.attrGet('href') ?? '');
  if (/^(?:https?:|#)/.test(href)) return;
  const [, page, fragment = ''] = /^([a-z-]+)\.md(#.*)?$/.exec(href) ?? [];
  token.attrs = page === undefined ? [] : [['href', link(context, paths.manual(page)) + fragment]];
  if (page === undefined) token.tag = 'span';
}

function pairLinks(tokens: readonly Token[]): void {
  let tag = 'a';
  for (const token of tokens) {
    if (token.type === 'link_open') tag = token.tag;
    if (token.type === 'link_close') token.tag = tag;
  }
}

/** A page of the manual, its heading first. */
export function manualHtml(context: PageContext, text: string): Html {
  const environment: Environment = { context };
  return trusted(markdown.render(text, environment));
}

/** What a page of the manual is called: its first line. */
export function manualTitle(text: string): string {
  return text.slice(0, text.indexOf('\n')).replace(/^# /, '');
}
