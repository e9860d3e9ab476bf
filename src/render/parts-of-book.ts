/**
 * The parts of the book, as the head and the foot of every page lead to them.
 *
 * @packageDocumentation
 */
import { type Html, html } from './html.ts';
import { link, paths } from './links.ts';
import type { PageContext } from './page.ts';

interface BookPart {
  readonly path: string;
  readonly name: string;
  /** What it is called where there is little room. */
  readonly short?: string;
  /** Where its link stands: always in sight, in sight where the page is wide, else behind “More”. */
  readonly where: 'bar' | 'wide' | 'more';
}

/** Groups of parts that are used together. */
function groups({ book }: PageContext): readonly (readonly BookPart[])[] {
  const hasFamilies = book.families.some(({ members }) => members.length > 1);
  return [
    [
      { path: paths.home, name: 'Colours', where: 'bar' },
      { path: paths.find, name: 'Find', where: 'bar' },
    ],
    [
      { path: paths.plan, name: 'Plan a batch', short: 'Plan', where: 'bar' },
      { path: paths.match, name: 'Match', where: 'bar' },
      { path: paths.photograph, name: 'Photograph', where: 'wide' },
    ],
    [
      { path: paths.shelf, name: 'Shelf', where: 'wide' },
      { path: paths.molds, name: 'Molds', where: 'wide' },
      ...(hasFamilies ? [{ path: paths.families, name: 'Families', where: 'more' } as const] : []),
      { path: paths.cards, name: 'Cards', where: 'more' },
    ],
    [
      { path: paths.care, name: 'Care', where: 'more' },
      { path: paths.method, name: 'Method', where: 'more' },
      { path: paths.foreword, name: 'Foreword', where: 'more' },
      ...(book.edition === 'mine' ? [{ path: paths.manuals, name: 'Manual', where: 'more' } as const] : []),
    ],
  ];
}

/** @param part the part of the book that the page is in */
function partLink(context: PageContext, { path, name }: BookPart, part: string | undefined): Html {
  const current = path !== part ? '' : html` aria-current="${path === context.url ? 'page' : 'true'}"`;
  return html`<a href="${link(context, path)}"${current}>${name}</a>`;
}

/**
 * The head's navigation: at its side where a page is wide; on a phone a bar below, within a thumb's reach. What has no room in it
 * opens behind “More”, which needs no script.
 */
export function partsBar(context: PageContext, part: string | undefined): Html {
  const item = (each: BookPart, named: BookPart = each): Html =>
    html`<li${each.where === 'wide' ? html` class="when-wide"` : ''}>${partLink(context, named, part)}</li>`;
  const seen = groups(context).map((group) => group.filter(({ where }) => where !== 'more'));
  const lists = seen
    .filter((group) => group.length > 0)
    .map((group) => html`<ul>${group.map((each) => item(each, { ...each, name: each.short ?? each.name }))}</ul>`);
  const more = groups(context)
    .flat()
    .filter(({ where }) => where !== 'bar')
    .map(
      (each) =>
        html`<li${each.where === 'wide' ? html` class="when-narrow"` : ''}>${partLink(context, each, part)}</li>`,
    );
  return html`<nav class="parts" aria-label="Parts of the book">${lists}<details class="more-parts" data-closes><summary>More</summary><ul>${more}</ul></details></nav>`;
}

/** The foot's navigation: everything, by groups. */
export function partsList(context: PageContext, part: string | undefined): Html {
  return html`<nav id="contents" aria-label="Contents"><h2>Contents</h2><div class="contents">${groups(context).map((group) => html`<ul>${group.map((each) => html`<li>${partLink(context, each, part)}</li>`)}</ul>`)}</div></nav>`;
}
