import type { Recipe } from '../../book/model/recipe.ts';
import type { Book } from '../../book/model.ts';
import type { MaterialKind } from '../../kinds/kinds.ts';
import { required } from '../../values/required.ts';
import { bookIndex } from '../book-index.ts';
import { paths } from '../links.ts';
import { unitsKept } from '../unbroken.ts';
import { listText, sentence } from '../words.ts';

/** What stands on the label of a bag. */
export interface LabelWords {
  readonly title: string;
  /** `6 of Three-inch minnow, by the Weir Club` */
  readonly says: string;
  readonly ingredients: string;
  /** Absolute address of the recipe’s page; absent where there is none. */
  readonly address?: string;
}

/** For whoever buys a bag. Common practice, no source. */
export const BAG_CAUTIONS = 'Keep from children and food. Softens hard plastic. Take used baits home.';

const KIND_WORDS: Readonly<Record<MaterialKind, string>> = {
  plastic: 'vinyl plastic with plasticiser',
  colorant: 'colorant',
  powder: 'powder',
  flake: 'flake',
  additive: 'additive',
};

/** The words of a recipe’s label. What is in a recipe that is not published in full is told by its kind only: a bag goes to readers. */
export function labelWords(book: Book, recipe: Recipe): LabelWords {
  const { materials, molds } = bookIndex(book);
  const { id, title, publish, batch } = recipe;
  const mold = required(molds, recipe.mold);
  const count = mold.bag === undefined ? mold.title : `${mold.bag} of ${mold.title}`;
  const byMass = [...batch.materials].sort((one, other) => other.grams - one.grams);
  const named = byMass.map(({ material }) => required(materials, material));
  const names = [...new Set(named.map((each) => (publish === 'full' ? each.title : KIND_WORDS[each.kind])))];
  return {
    title,
    says: unitsKept(book.maker === undefined ? count : `${count}, by ${book.maker}`),
    ingredients: unitsKept(`${sentence(listText(names))}.`),
    ...(book.address === undefined || publish === 'no' ? {} : { address: `${book.address}${paths.recipe(id)}` }),
  };
}
