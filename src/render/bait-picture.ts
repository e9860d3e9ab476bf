/**
 * The picture of a bait on a page.
 *
 * @packageDocumentation
 */
import type { Recipe, RecipeLook } from '../book/model/recipe.ts';
import type { Book } from '../book/model.ts';
import { hasTwoSides } from '../patterns/patterns.ts';
import type { ShapedMold } from '../shapes/shaped-mold.ts';
import { usualMold } from '../shapes/usual-mold.ts';
import { required } from '../values/required.ts';
import { baitInWords } from './bait-words.ts';
import { bookIndex } from './book-index.ts';
import { type Html, html } from './html.ts';
import { link } from './links.ts';
import type { PageContext } from './page.ts';
import { type PictureKind, picturePath, pictureSize } from './picture-files.ts';
import type { TileSources } from './small-bait.ts';

/** What a page is to know of a picture of a bait, beside which one it is. */
export interface BaitPictureOptions {
  /** Whether it is seen before anything is scrolled: it is loaded at once. */
  readonly first?: boolean;
  /** Words for it; empty where all that it tells stands beside it. Unset: its colours in words. */
  readonly alt?: string;
  /** How wide a tile is shown, as the `sizes` of an `<img>`; unset: as wide as the smaller one is. */
  readonly shown?: string;
}

/** Said once on a page that has pictures of baits. */
export const PICTURE_CAPTION = 'Colour, thickness and flake computed; light, gloss and shadow drawn.';

/** The mold that a colour is pictured in: its own, or one in a usual size where only the look is published. */
export function picturedMold(book: Book, thing: Recipe | RecipeLook): ShapedMold {
  return 'cups' in thing ? required(bookIndex(book).molds, thing.mold) : usualMold(thing.shape);
}

/** The pictures that a colour has; the other side only where it is looked at by itself. */
export function pictureKinds({ pattern }: Recipe | RecipeLook): readonly PictureKind[] {
  return ['page', ...(hasTwoSides(pattern) ? (['other'] as const) : []), 'tile', 'tile-2x', 'shared', 'card', 'label'];
}

/**
 * A bait’s picture as an `<img>` with its size and its colours in words.
 *
 * A tile comes in two sizes, of which the browser takes one; its style gives it a width. What is printed (`card`, `label`) has 300 dots
 * an inch.
 *
 * @param kind `other` only of a colour for which `pictureKinds` has it
 */
export function baitPicture(
  context: PageContext,
  thing: Recipe | RecipeLook,
  kind: Exclude<PictureKind, 'tile-2x' | 'shared'>,
  { first = false, alt, shown }: BaitPictureOptions = {},
): Html {
  const { width, height } = pictureSize(picturedMold(context.book, thing), kind);
  const mold = 'cups' in thing ? bookIndex(context.book).molds.get(thing.mold) : undefined;
  const words = alt ?? `${thing.title}: ${baitInWords(thing, mold, kind === 'other' ? 'far' : 'near')}`;
  const at = (each: PictureKind): string => link(context, pictureAddress(context, thing.id, each));
  const sizes =
    kind !== 'tile'
      ? ''
      : shown === undefined
        ? html` srcset="${tileSources(context, thing.id).srcset}"`
        : html` srcset="${at('tile')} ${width}w, ${at('tile-2x')} ${2 * width}w" sizes="${shown}"`;
  return html`<img class="bait-picture ${kind}" src="${at(kind)}"${sizes} alt="${words}" width="${width}" height="${height}"${first ? '' : html` loading="lazy"`} decoding="async">`;
}

/** A tile’s addresses from a page that shows it no wider than the smaller one is. */
export function tileSources(context: PageContext, id: string): TileSources {
  const at = (each: PictureKind): string => link(context, pictureAddress(context, id, each));
  return { src: at('tile'), srcset: `${at('tile')} 1x, ${at('tile-2x')} 2x` };
}

/** Path of a picture, with the state that it is in, so that no browser shows that of before. */
export function pictureAddress(context: Pick<PageContext, 'pictures'>, id: string, kind: PictureKind): string {
  return stated(context, id, picturePath(id, kind));
}

/** Path of a file that shows a colour, with the state that its pictures are in. */
export function stated({ pictures }: Pick<PageContext, 'pictures'>, id: string, path: string): string {
  const state = pictures[id];
  return state === undefined ? path : `${path}?v=${state}`;
}
