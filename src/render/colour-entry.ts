/**
 * A colour of the book wherever it is listed: recipes in full, and those of which only the look is published.
 *
 * @packageDocumentation
 */
import { HUE_FAMILIES } from '../book/facets.ts';
import type { Book, Facets, Look, Pattern, Recipe, RecipeLook } from '../book/model.ts';
import { bookIndex, required } from './book-index.ts';
import { type Coats, lookCoats, recipeCoats } from './swatch/coat.ts';

export interface ColourEntry {
  readonly id: string;
  readonly title: string;
  readonly pattern: Pattern;
  readonly body: Look;
  readonly facets: Pick<Facets, 'hueFamily' | 'lightness' | 'opacity'>;
  readonly tags: readonly string[];
  /** Colours of the cups over white with their shares, in order. */
  readonly cups: readonly { readonly hex: string; readonly share: number }[];
  /** Absent where only the look is published. */
  readonly recipe?: Recipe;
  coats(): Coats;
}

function recipeEntry(book: Book, recipe: Recipe): ColourEntry {
  const { id, title, pattern, body, facets, tags } = recipe;
  const cups = recipe.cups.map((cup) => ({ hex: cup.body.overWhite.hex, share: cup.share }));
  const coats = (): Coats => recipeCoats(recipe, required(bookIndex(book).molds, recipe.mold));
  return { id, title, pattern, body, facets, tags, cups, recipe, coats };
}

function lookEntry(look: RecipeLook): ColourEntry {
  const { id, title, pattern, body, facets, other } = look;
  const colours = other === undefined ? [body] : [body, other];
  const cups = colours.map(({ overWhite }) => ({ hex: overWhite.hex, share: 1 / colours.length }));
  return { id, title, pattern, body, facets, tags: [], cups, coats: () => lookCoats(look) };
}

/** The entry of a colour; undefined where the book has none of this id. */
export function colourEntry(book: Book, id: string): ColourEntry | undefined {
  const { recipes, looks } = bookIndex(book);
  const recipe = recipes.get(id);
  if (recipe !== undefined) return recipeEntry(book, recipe);
  const look = looks.get(id);
  return look === undefined ? undefined : lookEntry(look);
}

const HUE_ORDER = new Map<string, number>(HUE_FAMILIES.map((hue, index) => [hue, index]));

/** Colours of one family of hue, from light to dark. */
export interface HueGroup {
  readonly hue: string;
  readonly entries: readonly ColourEntry[];
}

/** All colours of a book by hue, in the order of the wall. */
export function coloursByHue(book: Book): readonly HueGroup[] {
  const groups = new Map<string, ColourEntry[]>();
  for (const entry of [...book.recipes.map((recipe) => recipeEntry(book, recipe)), ...book.looks.map(lookEntry)]) {
    const { hueFamily } = entry.facets;
    const group = groups.get(hueFamily);
    if (group === undefined) groups.set(hueFamily, [entry]);
    else group.push(entry);
  }
  const place = (hue: string): number => HUE_ORDER.get(hue) ?? HUE_ORDER.size;
  return [...groups]
    .sort(([one], [other]) => place(one) - place(other) || one.localeCompare(other))
    .map(([hue, entries]) => ({
      hue,
      entries: entries.sort(
        (one, other) => other.body.overWhite.lab.L - one.body.overWhite.lab.L || one.id.localeCompare(other.id),
      ),
    }));
}
