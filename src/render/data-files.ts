/**
 * The book as data: `book.json`, for each recipe a JSON that stands by itself and the file that its maker wrote, and what the Match page loads.
 *
 * @packageDocumentation
 */

import type { Photo } from '../book/model/photo.ts';
import type { Book } from '../book/model.ts';
import { required } from '../values/required.ts';
import { bookIndex } from './book-index.ts';
import { GROUND } from './ground.ts';
import { learnedText } from './learned-file.ts';
import { ICON_SIZES, paths } from './links.ts';
import type { FileKind, PageContext } from './page.ts';
import { canMatch } from './pages/match.ts';
import { plannerShelfText } from './planner-shelf.ts';
import { testChipFile } from './recipe/test-chip.ts';
import { usedMaterials } from './used-materials.ts';

type Photos = PageContext['photos'];

/** A value as JSON. Of a photo it has the picture that is in the site: what its maker called it is not told. */
function json(value: unknown, photos: Photos): string {
  const shown = ({ file, ...photo }: Photo): readonly object[] => {
    const made = photos[file];
    return made === undefined ? [] : [{ ...photo, file: made.src, width: made.width, height: made.height }];
  };
  const replaced = (name: string, inside: unknown): unknown => {
    if (name === 'photos') return (inside as readonly Photo[]).flatMap(shown);
    return name === 'photo' ? shown(inside as Photo)[0] : inside;
  };
  return `${JSON.stringify(value, replaced)}\n`;
}

/** The whole published book. */
const bookFile: FileKind = {
  kind: 'book-data',
  items: () => [''],
  url: () => paths.bookData,
  text: (book, _, photos) => json(book, photos),
};

/** One recipe with the materials that it can be made with and its mold. */
const recipeFile: FileKind = {
  kind: 'recipe-data',
  items: (book) => book.recipes.map(({ id }) => id),
  url: paths.recipeData,
  text: (book, id, photos) => json(recipeData(book, id), photos),
};

/** The recipe's file, as published. */
const sourceFile: FileKind = {
  kind: 'recipe-source',
  items: (book) => book.recipes.map(({ id }) => id),
  url: paths.recipeSource,
  text: (book, id) => required(bookIndex(book).recipes, id).source.text,
};

/**
 * What a book is called, and how it looks, on a home screen. Source of the names: W3C, Web Application Manifest (from memory).
 */
const manifestFile: FileKind = {
  kind: 'manifest',
  items: () => [''],
  url: () => paths.manifest,
  text: ({ title }) =>
    `${JSON.stringify({
      name: title,
      start_url: './',
      scope: './',
      display: 'minimal-ui',
      background_color: GROUND.light,
      theme_color: GROUND.light,
      icons: ICON_SIZES.map((size) => ({ src: paths.icon(size), sizes: `${size}x${size}`, type: 'image/png' })),
    })}\n`,
};

/** What the looks have taught, where there is a page that asks it. */
const learnedFile: FileKind = {
  kind: 'learned',
  items: (book) => (canMatch(book) ? [''] : []),
  url: () => paths.learned,
  text: learnedText,
};

/** What batches are planned with on the pages of recipes, where there are any. */
const plannerShelfFile: FileKind = {
  kind: 'planner-shelf',
  items: (book) => (book.recipes.length > 0 ? [''] : []),
  url: () => paths.plannerShelf,
  text: plannerShelfText,
};

function recipeData(book: Book, id: string): object {
  const { recipes, materials, molds } = bookIndex(book);
  const recipe = required(recipes, id);
  return {
    format: book.format,
    edition: book.edition,
    book: { title: book.title, maker: book.maker, address: book.address },
    settings: book.settings,
    optics: book.optics,
    recipe,
    mold: withoutUses(required(molds, recipe.mold)),
    materials: usedMaterials(recipe.cups, materials).map((material) => withoutUses(required(materials, material))),
  };
}

/** A thing without the list of where else it is used: that is the book's, and would make every recipe's file grow with it. */
function withoutUses<T extends { readonly usedIn: readonly unknown[] }>({ usedIn: _, ...thing }: T): Omit<T, 'usedIn'> {
  return thing;
}

/** All files beside the pages. */
export const FILES: readonly FileKind[] = [
  bookFile,
  recipeFile,
  sourceFile,
  testChipFile,
  plannerShelfFile,
  learnedFile,
  manifestFile,
];
