/**
 * A colour of the book wherever it is listed: recipes in full, and those of which only the look is published.
 *
 * @packageDocumentation
 */

import type { Appearance } from '../book/model/colours.ts';
import type { Facets, Recipe, RecipeLook } from '../book/model/recipe.ts';
import type { Book } from '../book/model.ts';
import { HUE_FAMILIES, hueFamilyOfAppearance } from '../book/recipes/facets.ts';
import { PATTERNS, type Pattern } from '../patterns/patterns.ts';
import { defined } from '../values/defined.ts';
import { required } from '../values/required.ts';
import { bookIndex } from './book-index.ts';
import { type Coats, lookCoats, recipeCoats } from './swatch/coat.ts';

export interface ColourEntry {
  readonly id: string;
  readonly title: string;
  readonly pattern: Pattern;
  readonly body: Appearance;
  /** Absent where it is not told. */
  readonly thin?: Appearance;
  readonly facets: Pick<Facets, 'hueFamilies' | 'lightness' | 'opacity'>;
  readonly tags: readonly string[];
  /** Colours of the cups over white with their shares, in order. */
  readonly cups: readonly { readonly hex: string; readonly share: number }[];
  /** Looks that lie side by side in the bait, if any do: of a recipe its cups. */
  readonly parts: readonly Appearance[];
  /** Absent where only the look is published. */
  readonly recipe?: Recipe;
  /** What its picture is of. */
  readonly pictured: Recipe | RecipeLook;
  coats(): Coats;
}

function recipeEntry(book: Book, recipe: Recipe): ColourEntry {
  const { id, title, pattern, body, thin, facets, tags } = recipe;
  const cups = recipe.cups.map((cup) => ({ hex: cup.body.overWhite.hex, share: cup.share }));
  const coats = (): Coats => recipeCoats(recipe, required(bookIndex(book).molds, recipe.mold));
  const parts = recipe.cups.map((cup) => cup.body);
  return { id, title, pattern, body, thin, facets, tags, cups, parts, recipe, pictured: recipe, coats };
}

function lookEntry(look: RecipeLook): ColourEntry {
  const { id, title, pattern, body, thin, facets, other } = look;
  const parts = other === undefined ? [body] : [body, other];
  // Its shares are the maker's: it is drawn with those of any bait of its pattern.
  const share = (parts.length > 1 && PATTERNS[pattern].second?.share) || 0;
  const shares = [1 - share, share];
  const cups = parts.map(({ overWhite }, index) => ({ hex: overWhite.hex, share: shares[index]! }));
  return {
    id,
    title,
    pattern,
    body,
    ...defined({ thin }),
    facets,
    tags: [],
    cups,
    parts,
    pictured: look,
    coats: () => lookCoats(look),
  };
}

/** The entry of a colour; undefined where the book has none of this id. */
export function colourEntry(book: Book, id: string): ColourEntry | undefined {
  const { recipes, looks } = bookIndex(book);
  const recipe = recipes.get(id);
  if (recipe !== undefined) return recipeEntry(book, recipe);
  const look = looks.get(id);
  return look === undefined ? undefined : lookEntry(look);
}

/** What a colour shows of a family of hue: the cup that is of it where cups are seen side by side, else the whole bait. */
export function lookInHue({ facets, body, parts }: ColourEntry, hue: string): Appearance {
  if (facets.hueFamilies.length < 2) return body;
  return parts.find((look) => hueFamilyOfAppearance(look) === hue) ?? body;
}

const HUE_ORDER = new Map<string, number>(HUE_FAMILIES.map((hue, index) => [hue, index]));

/** Colours of one family of hue, from light to dark. */
export interface HueGroup {
  readonly hue: string;
  readonly entries: readonly ColourEntry[];
}

const lightnessIn = (entry: ColourEntry, hue: string): number => lookInHue(entry, hue).overWhite.lab.L;

/** All colours of a book, each once, by the hue under which its owner looks for it, in the order of the wall. */
export function coloursByHue(book: Book): readonly HueGroup[] {
  return groupedBy(book, ({ facets }) => facets.hueFamilies.slice(0, 1));
}

/** All colours of a book by every hue that they show: one whose cups are seen side by side has several. */
export function coloursShowingHue(book: Book): readonly HueGroup[] {
  return groupedBy(book, ({ facets }) => facets.hueFamilies);
}

function groupedBy(book: Book, huesOf: (entry: ColourEntry) => readonly string[]): readonly HueGroup[] {
  const groups = new Map<string, ColourEntry[]>();
  for (const entry of [...book.recipes.map((recipe) => recipeEntry(book, recipe)), ...book.looks.map(lookEntry)]) {
    for (const hue of huesOf(entry)) {
      const group = groups.get(hue);
      if (group === undefined) groups.set(hue, [entry]);
      else group.push(entry);
    }
  }
  const place = (hue: string): number => HUE_ORDER.get(hue) ?? HUE_ORDER.size;
  return [...groups]
    .sort(([one], [other]) => place(one) - place(other) || one.localeCompare(other))
    .map(([hue, entries]) => ({
      hue,
      entries: entries.sort(
        (one, other) => lightnessIn(other, hue) - lightnessIn(one, hue) || one.id.localeCompare(other.id),
      ),
    }));
}
