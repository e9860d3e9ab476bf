import type { Recipe } from '../book/model/recipe.ts';
import type { Book } from '../book/model.ts';
import { type OrderOfWork, orderOfWork } from '../book/recipes/order-of-work.ts';
import { defined } from '../values/defined.ts';
import { bookIndex } from './book-index.ts';

/** The order of work for a recipe of a book, with what its batch measures: what a cut brings is not stirred in by itself. */
export function workOf(book: Book, recipe: Recipe): OrderOfWork {
  const { materials, molds } = bookIndex(book);
  const method = molds.get(recipe.mold)?.method;
  const cups = recipe.cups.map((cup, index) => ({ ...cup, contents: recipe.batch.cups[index]!.amounts }));
  return orderOfWork({ ...recipe, cups, ...defined({ method }) }, (id) => materials.get(id));
}
