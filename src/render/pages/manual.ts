/**
 * The manual, for the maker alone: readers of a book have no use for it.
 *
 * @packageDocumentation
 */
import type { Book } from '../../book/model.ts';
import { document } from '../document.ts';
import { html } from '../html.ts';
import { inCode } from '../in-code.ts';
import { link, paths } from '../links.ts';
import { manualHtml, manualTitle } from '../manual/manual-html.ts';
import type { PageKind } from '../page.ts';

/** The pages of the manual in the order in which they are read: `site/manual/<name>.md`, and what each is for. */
const PAGES = {
  'your-book': 'a whole book, file by file',
  commands: 'every command and option, and what a message tells you',
  files: 'every field, its unit, and what happens if you leave it out',
  pages: 'what each page of the book is for',
  matching: 'targets, first recipes, what to add now, cups that went too far',
  photo: 'a printed card and your phone: the colour of a bait, how well it hides, and how sure that is',
  sharing: 'who sees what, your phone, where the site is written',
  trust: 'how certain a colour is, and where the figures come from',
  films: 'the colours of measured paints',
  data: '`book.json`, field by field',
  changes: 'what to look out for after an update',
} as const;

/** Their names. */
export const MANUAL = Object.keys(PAGES) as readonly (keyof typeof PAGES)[];

const forMaker =
  (items: readonly string[]) =>
  ({ edition }: Book): readonly string[] =>
    edition === 'mine' ? items : [];

export const manualPage: PageKind = {
  kind: 'manual',
  items: forMaker(['']),
  url: () => paths.manuals,
  render: (context) =>
    document(context, {
      title: 'Manual',
      description: 'How to keep a book: files, commands, matching, sharing.',
      part: paths.manuals,
      main: html`<article class="text"><h1>Manual</h1><ol class="manual-list">${MANUAL.map((name) => html`<li><a href="${link(context, paths.manual(name))}">${manualTitle(context.manual[name]!)}</a><span>${inCode(PAGES[name])}</span></li>`)}</ol></article>`,
    }),
};

export const manualTextPage: PageKind = {
  kind: 'manual-text',
  items: forMaker(MANUAL),
  url: (name) => paths.manual(name),
  render: (context, name) => {
    const text = context.manual[name]!;
    const title = manualTitle(text);
    return document(context, {
      title,
      description: `${title}: a page of the manual.`,
      part: paths.manuals,
      main: html`<article class="text manual"><p class="label-line"><a href="${link(context, paths.manuals)}">Manual</a></p>${manualHtml(context, text)}</article>`,
    });
  },
};
