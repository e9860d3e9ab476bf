/**
 * A colour as a tile of the wall.
 *
 * @packageDocumentation
 */

import { hexWords } from '../words/colour.ts';
import { baitPicture } from './bait-picture.ts';
import type { ColourEntry } from './colour-entry.ts';
import { publishWords } from './edition-mark.ts';
import { type Html, html } from './html.ts';
import { link, paths } from './links.ts';
import { opacityName } from './opacity-words.ts';
import type { PageContext } from './page.ts';
import { filmStrip } from './swatch/film-strip.ts';
import { tileFrame, wallScale } from './wall-scale.ts';

/**
 * One tile: the bait, its plastic as a strip, its name, and what it is.
 *
 * @param first whether it is seen before anything is scrolled
 */
export function tile(context: PageContext, entry: ColourEntry, first = false): Html {
  const { id, title, pattern, facets, tags } = entry;
  // What stands on the tile is read there.
  const words = [...facets.hueFamilies, ...tags, ...(entry.recipe?.facets.materials ?? [])];
  const { spans, plate } = tilePlate(context, entry, first);
  return html`<li class="tile${spans > 1 ? ' long' : ''}" data-words="${words.join(' ').toLowerCase()}"><a href="${link(context, paths.recipe(id))}"><span class="tile-plate">${plate}</span>${filmStrip(entry.coats())}<span class="tile-name">${title}</span></a><p class="tile-note"><span class="unseen-words">${tileWords(entry)}: </span>${pattern}, ${opacityName(facets.opacity)}${entry.recipe === undefined ? ', look only' : publishMark(context, entry)}</p></li>`;
}

/** The bait in its place on the wall: in millimetres, of which a tile of any width has as many as the next. */
function tilePlate(context: PageContext, { pictured }: ColourEntry, first: boolean): { spans: number; plate: Html } {
  const scale = wallScale(context.book);
  const { spans, widthMm, heightMm } = tileFrame(context.book, pictured, scale);
  const whole = { width: spans * scale.columnMm, height: scale.heightMm };
  const place = html`x="${tenth((whole.width - widthMm) / 2)}" y="${tenth((whole.height - heightMm) / 2)}" width="${tenth(widthMm)}" height="${tenth(heightMm)}"`;
  const plate = html`<svg viewBox="0 0 ${tenth(whole.width)} ${tenth(whole.height)}"><foreignObject ${place}>${baitPicture(context, pictured, 'tile', { first, alt: '', shown: shownWidth((spans * widthMm) / whole.width) })}</foreignObject></svg>`;
  return { spans, plate };
}

/** How wide a picture is shown that takes so much of a column: there are two, three or four of them. */
function shownWidth(columns: number): string {
  const part = (of: number): string => `${Math.round((100 * columns) / of)}vw`;
  return `(min-width: 60rem) ${part(4)}, (min-width: 40rem) ${part(3)}, ${part(2)}`;
}

const tenth = (mm: number): number => Math.round(mm * 10) / 10;

/** The colour of a tile for who doesn’t see it: “dark red, pink in the thin part”, or what lies side by side: “black, vivid orange”. */
function tileWords({ parts, body, thin, facets }: ColourEntry): string {
  const looks = facets.hueFamilies.length > 1 ? parts : [body];
  const words = new Set(looks.map(({ overWhite }) => hexWords(overWhite.hex)));
  const end = thin && hexWords(thin.overWhite.hex);
  return [...words, ...(end === undefined || words.has(end) ? [] : [`${end} in the thin part`])].join(', ');
}

function publishMark({ book }: PageContext, { recipe }: ColourEntry): Html {
  const words = publishWords(book, recipe?.publish);
  return words === undefined ? html`` : html`, <span class="publish-${recipe!.publish}">${words}</span>`;
}
