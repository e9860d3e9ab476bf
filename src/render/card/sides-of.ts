import type { Recipe } from '../../book/model/recipe.ts';
import type { Book } from '../../book/model.ts';
import { required } from '../../values/required.ts';
import { bookIndex } from '../book-index.ts';
import type { Html } from '../html.ts';
import { recipeCoats } from '../swatch/coat.ts';
import { flakeBudget } from '../swatch/flake-budget.ts';
import { pour } from '../swatch/pour.ts';

import { type CardContent, cardContent } from './content.ts';
import { type CardFormat, fitCard } from './fit.ts';
import { cardSides } from './view.ts';

// The same on all four pages on which a recipe has a card.
const contents = new WeakMap<Book, Map<Recipe, CardContent>>();

function contentOf(book: Book, recipe: Recipe): CardContent {
  const known = contents.get(book) ?? new Map<Recipe, CardContent>();
  contents.set(book, known);
  const content = known.get(recipe) ?? cardContent(book, recipe);
  known.set(recipe, content);
  return content;
}

/** The sides of a recipe’s card, on a page with so many cards. */
export function sidesOf(book: Book, recipe: Recipe, format: CardFormat, cards: number): readonly Html[] {
  const { id, title } = recipe;
  const mold = required(bookIndex(book).molds, recipe.mold);
  const label = `${title} over white and over black`;
  const drawing = pour(recipeCoats(recipe, mold), { id: `c-${id}`, seed: id, budget: flakeBudget(cards), label });
  return cardSides(fitCard(contentOf(book, recipe), format), drawing);
}
