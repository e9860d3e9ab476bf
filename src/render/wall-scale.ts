/**
 * The one scale in which all baits of a wall are shown.
 *
 * @packageDocumentation
 */
import type { Recipe, RecipeLook } from '../book/model/recipe.ts';
import type { Book } from '../book/model.ts';
import { masterFrame } from '../shapes/master-frame.ts';
import { picturedMold } from './bait-picture.ts';

/** How much card a tile shows, mm: a column of the wall wide, and as high as the tallest bait of the book. */
export interface WallScale {
  readonly columnMm: number;
  readonly heightMm: number;
}

/** Where a bait in a tile lies on so many columns, with the bare card round it, mm. */
export interface TileFrame {
  readonly spans: 1 | 2;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A column holds a bait of 4 inches; what is longer has two, and sets the scale only where it doesn't fit into those. Chosen by eye. */
const COLUMN_MM = 114;

const kept = new WeakMap<Book, WallScale>();

/** The scale of a book's wall. */
export function wallScale(book: Book): WallScale {
  const known = kept.get(book);
  if (known !== undefined) return known;
  const frames = [...book.recipes, ...book.looks].map((thing) => pictureMm(book, thing));
  const longest = Math.max(...frames.map(({ widthMm }) => widthMm));
  const scale: WallScale = {
    columnMm: Math.max(Math.min(COLUMN_MM, longest), longest / 2),
    heightMm: Math.max(...frames.map(({ heightMm }) => heightMm)),
  };
  kept.set(book, scale);
  return scale;
}

/** How a colour's bait lies on its tile. */
export function tileFrame(book: Book, thing: Recipe | RecipeLook, { columnMm }: WallScale): TileFrame {
  const frame = pictureMm(book, thing);
  return { spans: frame.widthMm > columnMm ? 2 : 1, ...frame };
}

function pictureMm(book: Book, thing: Recipe | RecipeLook): Omit<TileFrame, 'spans'> {
  const { columns, rows, pixelsPerMm } = masterFrame(picturedMold(book, thing));
  return { widthMm: columns / pixelsPerMm, heightMm: rows / pixelsPerMm };
}
