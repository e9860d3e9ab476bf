import type { Family } from '../../book/model/recipe.ts';
import type { Book } from '../../book/model.ts';
import { required } from '../../values/required.ts';
import { baitPicture, PICTURE_CAPTION } from '../bait-picture.ts';
import { bookIndex } from '../book-index.ts';
import { colourEntry } from '../colour-entry.ts';
import { document } from '../document.ts';
import { familyDown } from '../family-down.ts';
import { type Html, html, joined } from '../html.ts';
import { familyGraph, lineagePicture } from '../lineage-picture.ts';
import { link, paths } from '../links.ts';
import type { PageContext, PageKind } from '../page.ts';
import { chipColours, chips } from '../swatch/chip.ts';
import { counted } from '../words.ts';

/** Families of more than one colour: a colour without relatives has no page of its own here. */
export function relatedFamilies({ families }: Book): readonly Family[] {
  return families.filter(({ members }) => members.length > 1);
}

/** All families. */
export const familiesPage: PageKind = {
  kind: 'families',
  items: () => [''],
  url: () => paths.families,
  render: (context) => {
    const families = relatedFamilies(context.book);
    return document(context, {
      title: 'Families',
      description: `Which colours of ${context.book.title} were made from which.`,
      part: paths.families,
      main: html`<h1>Families</h1><p class="lead">Colours made from one another, or sharing a cup. Change a parent and everything below it is recalculated.</p><ul class="families">${families.map((family) => familyItem(context, family))}</ul>${families.length === 0 ? html`<p>No colour in the book has been made from another yet.</p>` : html`<p class="fine">${PICTURE_CAPTION}</p>`}`,
    });
  },
};

function familyItem(context: PageContext, { id, title, members }: Family): Html {
  const entries = members.flatMap((member) => colourEntry(context.book, member) ?? []);
  const eldest = colourEntry(context.book, id)?.pictured;
  const bait = eldest && html`<span class="family-bait">${baitPicture(context, eldest, 'tile', { alt: '' })}</span>`;
  return html`<li><a href="${link(context, paths.family(id))}">${bait ?? ''}<span class="shelf-strip">${chips(
    entries.map(({ body }) => chipColours(body)),
    '',
  )}</span><span class="shelf-name">${title}</span></a><span class="shelf-words">${counted(members.length, 'colour')}</span></li>`;
}

/** A whole family. */
export const familyPage: PageKind = {
  kind: 'family',
  items: (book) => relatedFamilies(book).map(({ id }) => id),
  url: paths.family,
  render: (context, id) => {
    const family = required(bookIndex(context.book).families, id);
    const { title, members } = family;
    const layout = context.lineage[id];
    return document(context, {
      title: `The family of ${title}`,
      description: `${counted(members.length, 'colour')} descended from ${title}, and how each differs from its parent.`,
      part: paths.families,
      main: html`<h1>The family of ${title}</h1>
${layout === undefined ? '' : lineagePicture(context, layout, `Lineage of the family of ${title}, parents on the left`, { when: 'wide' })}${lineagePicture(context, familyDown(familyGraph(context.book, id)), `Lineage of the family of ${title}, parents above`, { when: 'narrow' })}
<h2>As a list</h2>
${familyList(context, family)}
<p class="fine">${PICTURE_CAPTION}</p>`,
    });
  },
};

function familyList(context: PageContext, { members, edges }: Family): Html {
  const { book } = context;
  const title = (id: string): string => colourEntry(book, id)?.title ?? id;
  const edgesTo = new Map(members.map((id) => [id, [] as Family['edges'][number][]]));
  for (const edge of edges) required(edgesTo, edge.to).push(edge);
  return html`<ul class="uses members">${parentsFirst(members, edgesTo).map((id) => {
    const from = required(edgesTo, id);
    const words = from.map(({ from: parent, kind, label }) => {
      const how = kind === 'recipe' ? 'from' : 'with a cup from';
      return html`${how} ${title(parent)}${label === '' ? '' : `: ${label}`}`;
    });
    const { recipe, pictured } = colourEntry(book, id) ?? {};
    const target = recipe?.target === undefined ? undefined : bookIndex(book).targets.get(recipe.target);
    const aim =
      target === undefined ? [] : [html`for <a href="${link(context, paths.target(target.id))}">${target.title}</a>`];
    return html`<li>${pictured === undefined ? '' : html`<span class="member-bait">${baitPicture(context, pictured, 'tile', { alt: '' })}</span>`}<div><a href="${link(context, paths.recipe(id))}">${title(id)}</a><span class="fine">${joined([...words, ...aim], '; ')}</span></div></li>`;
  })}</ul>`;
}

/** Members by the number of steps from the eldest, so that a parent stands above its children. */
function parentsFirst(members: Family['members'], edgesTo: ReadonlyMap<string, Family['edges']>): readonly string[] {
  const depth = new Map<string, number>();
  const depthOf = (id: string): number => {
    const known = depth.get(id);
    if (known !== undefined) return known;
    const parents = required(edgesTo, id).map(({ from }) => depthOf(from));
    const steps = parents.length === 0 ? 0 : Math.max(...parents) + 1;
    depth.set(id, steps);
    return steps;
  };
  return [...members].sort((one, other) => depthOf(one) - depthOf(other));
}
