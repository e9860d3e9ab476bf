/**
 * A colour as a tile of the wall.
 *
 * @packageDocumentation
 */

import type { ColourEntry } from './colour-entry.ts';
import { publishWords } from './edition-mark.ts';
import { type Html, html } from './html.ts';
import { link, paths } from './links.ts';
import { opacityName } from './opacity-words.ts';
import type { PageContext } from './page.ts';
import { pour } from './swatch/pour.ts';
import { section } from './swatch/section.ts';

/** Flakes of all tiles of a page together, and the most and the fewest that one tile gets. */
const PAGE_BUDGET = 8000;
const TILE_MOST = 72;
const TILE_FEWEST = 12;

/** Flakes that each tile of a page with so many may have, so that a page of thousands still loads. */
export function tileBudget(tiles: number): number {
  return Math.max(TILE_FEWEST, Math.min(TILE_MOST, Math.floor(PAGE_BUDGET / Math.max(tiles, 1))));
}

/** One tile: the colour as a drawdown card, its name, and how its cups lie. */
export function tile(
  context: PageContext,
  entry: ColourEntry,
  options: { readonly budget: number; readonly prefix?: string },
): Html {
  const { id, title, pattern, facets, cups, tags } = entry;
  const words = [
    title,
    pattern,
    ...facets.hueFamilies,
    opacityName(facets.opacity),
    ...tags,
    ...(entry.recipe?.facets.materials ?? []),
  ];
  const drawing = pour(entry.coats(), {
    id: `${options.prefix ?? 't'}-${id}`,
    seed: id,
    budget: options.budget,
    label: '',
  });
  return html`<li class="tile" data-words="${words.join(' ').toLowerCase()}"><a href="${link(context, paths.recipe(id))}"><span class="tile-plate">${drawing}</span><span class="tile-name">${title}</span></a><p class="tile-note">${
    cups.length > 1 ? section(pattern, cups) : ''
  }<span>${pattern}, ${opacityName(facets.opacity)}${entry.recipe === undefined ? ', look only' : publishMark(context, entry)}</span></p></li>`;
}

function publishMark({ book }: PageContext, { recipe }: ColourEntry): Html {
  const words = publishWords(book, recipe?.publish);
  return words === undefined ? html`` : html`, <span class="publish-${recipe!.publish}">${words}</span>`;
}
