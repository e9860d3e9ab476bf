import type { Recipe } from '../../book/model/recipe.ts';
import type { Material } from '../../book/model/shelf.ts';
import type { Book } from '../../book/model.ts';
import { boughtText } from '../../words/stock.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import { dot } from '../swatch/chip.ts';

/** What is left of a material for fewer batches than this, of the colour that takes most of it, runs low. Convention of this book. */
const LOW_BATCHES = 2;

/** A material of which little is left, by the colour that takes most of it. */
export interface LowMaterial {
  readonly material: Material;
  /** What is left. */
  readonly grams: number;
  readonly recipe: Recipe;
  /** Usual batches of the recipe for which it is enough. */
  readonly batches: number;
}

/** What runs low on a shelf, the least first; nothing where stock is not counted, or not told. */
export function runsLow({
  edition,
  materials,
  recipes,
}: Pick<Book, 'edition' | 'materials' | 'recipes'>): readonly LowMaterial[] {
  if (edition !== 'mine') return [];
  return materials
    .flatMap((material): readonly LowMaterial[] => {
      const { id, stockGrams: grams } = material;
      if (grams === undefined) return [];
      const [most] = recipes
        .map((recipe) => ({ recipe, takes: recipe.batch.materials.find((each) => each.material === id)?.grams ?? 0 }))
        .sort((one, other) => other.takes - one.takes);
      if (most === undefined || most.takes === 0) return [];
      return [{ material, grams, recipe: most.recipe, batches: grams / most.takes }];
    })
    .filter(({ batches }) => batches < LOW_BATCHES)
    .sort((one, other) => one.batches - other.batches || one.material.title.localeCompare(other.material.title));
}

/** What runs low, before all else on the shelf. */
export function runsLowSection(context: PageContext, low: readonly LowMaterial[]): Html {
  if (low.length === 0) return html``;
  const { settings } = context.book;
  return html`<section class="part" aria-labelledby="low"><h2 id="low">Runs low <span class="count">${low.length}</span></h2><ul class="uses">${low.map(
    ({ material, grams, recipe, batches }) => {
      const left = grams === 0 ? 'none left' : `${boughtText(grams, material, settings)} left`;
      const enough = batches < 1 ? 'not enough for a batch of' : 'enough for one batch of';
      return html`<li>${dot(material.hex)}<a href="${link(context, paths.material(material.id))}">${material.title}</a>, <strong class="shortage">${left}</strong><span class="fine">, ${enough} ${recipe.title}</span></li>`;
    },
  )}</ul></section>
`;
}
