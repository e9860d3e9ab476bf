/**
 * A colour as a tile of the wall.
 *
 * @packageDocumentation
 */

import { hexWords } from '../words/colour.ts';
import type { ColourEntry } from './colour-entry.ts';
import { publishWords } from './edition-mark.ts';
import { type Html, html } from './html.ts';
import { link, paths } from './links.ts';
import { opacityName } from './opacity-words.ts';
import type { PageContext } from './page.ts';
import { filmStrip } from './swatch/film-strip.ts';
import { pour } from './swatch/pour.ts';

/** Flakes of all tiles of a page together, and the most and the fewest that one tile gets. */
const PAGE_BUDGET = 8000;
const TILE_MOST = 72;
const TILE_FEWEST = 12;

/** Flakes that each tile of a page with so many may have, so that a page of thousands still loads. */
export function tileBudget(tiles: number): number {
  return Math.max(TILE_FEWEST, Math.min(TILE_MOST, Math.floor(PAGE_BUDGET / Math.max(tiles, 1))));
}

/** One tile: the bait, its plastic as a strip, its name, and what it is. */
export function tile(context: PageContext, entry: ColourEntry, options: { readonly budget: number }): Html {
  const { id, title, pattern, facets, tags } = entry;
  // What stands on the tile is read there.
  const words = [...facets.hueFamilies, ...tags, ...(entry.recipe?.facets.materials ?? [])];
  const coats = entry.coats();
  const drawing = pour(coats, { id: `t-${id}`, seed: id, budget: options.budget, label: '' });
  return html`<li class="tile" data-words="${words.join(' ').toLowerCase()}"><a href="${link(context, paths.recipe(id))}"><span class="tile-plate">${drawing}</span>${filmStrip(coats)}<span class="tile-name">${title}</span></a><p class="tile-note"><span class="unseen-words">${tileWords(entry)}: </span>${pattern}, ${opacityName(facets.opacity)}${entry.recipe === undefined ? ', look only' : publishMark(context, entry)}</p></li>`;
}

/** The colour of a tile for who doesn’t see it: “dark red, pink when thin”, or what lies side by side: “black, vivid orange”. */
function tileWords({ parts, body, thin, facets }: ColourEntry): string {
  const looks = facets.hueFamilies.length > 1 ? parts : [body];
  const words = new Set(looks.map(({ overWhite }) => hexWords(overWhite.hex)));
  const end = thin && hexWords(thin.overWhite.hex);
  return [...words, ...(end === undefined || words.has(end) ? [] : [`${end} when thin`])].join(', ');
}

function publishMark({ book }: PageContext, { recipe }: ColourEntry): Html {
  const words = publishWords(book, recipe?.publish);
  return words === undefined ? html`` : html`, <span class="publish-${recipe!.publish}">${words}</span>`;
}
