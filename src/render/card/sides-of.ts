import type { Recipe } from '../../book/model/recipe.ts';
import type { Book } from '../../book/model.ts';
import { baitPicture } from '../bait-picture.ts';
import type { Html } from '../html.ts';
import type { PageContext } from '../page.ts';
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

/** The sides of a recipe’s card. Whoever prints has all pictures at once. */
export function sidesOf(context: PageContext, recipe: Recipe, format: CardFormat): readonly Html[] {
  const picture = baitPicture(context, recipe, 'card', { first: true });
  return cardSides(fitCard(contentOf(context.book, recipe), format), picture);
}
