/**
 * A colour as a test chip: what was computed of it, without light or gloss, as a drawing of its own that the page shows when it is asked for.
 *
 * @packageDocumentation
 */
import type { Recipe, RecipeLook } from '../../book/model/recipe.ts';
import type { Mold } from '../../book/model/shelf.ts';
import type { Book } from '../../book/model.ts';
import { faceNames, PATTERNS, type Pattern } from '../../patterns/patterns.ts';
import { required } from '../../values/required.ts';
import { stated } from '../bait-picture.ts';
import { bookIndex } from '../book-index.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { FileKind, PageContext } from '../page.ts';
import { viewsInWords } from '../swatch/chip.ts';
import { type Coats, lookCoats, recipeCoats } from '../swatch/coat.ts';
import { pour } from '../swatch/pour.ts';
import { section } from '../swatch/section.ts';
import { sentence } from '../words.ts';
import { inFold } from './fold.ts';

/** Most flakes that are drawn of a cup. */
const BUDGET = 260;

/** The drawing of each colour. */
export const testChipFile: FileKind = {
  kind: 'test-chip',
  items: ({ recipes, looks }) => [...recipes, ...looks].map(({ id }) => id),
  url: paths.testChip,
  text: (book, id) => `${pour(coatsOf(book, id), { seed: id, budget: BUDGET })}\n`,
};

function coatsOf(book: Book, id: string): Coats {
  const { recipes, molds } = bookIndex(book);
  const recipe = recipes.get(id);
  if (recipe) return recipeCoats(recipe, required(molds, recipe.mold));
  return lookCoats(book.looks.find((look) => look.id === id)!);
}

/**
 * A test chip with the names of its parts under it.
 *
 * @param parts left to right, as many as the coats
 */
export function labelledChip(
  context: PageContext,
  { id, title, pattern }: Pick<Recipe | RecipeLook, 'id' | 'title' | 'pattern'>,
  coats: Coats,
  thinPart: string | undefined,
): Html {
  const parts = chipParts(pattern, coats.other !== undefined, thinPart);
  const columns = [coats.body, coats.other, coats.thin].filter((coat) => coat !== undefined);
  const words = columns.map(
    ({ white, black }, at) => `${parts[at]} ${viewsInWords({ overWhite: white, overBlack: black })}`,
  );
  const said = `${title} as a test chip over white and over black: ${words.join('; ')}; then the bare card`;
  const src = link(context, stated(context, id, paths.testChip(id)));
  return html`<div class="drawdown"><div class="drawdown-plate"><img class="pour" src="${src}" alt="${said}" loading="lazy"></div><p class="drawdown-parts ${partsClass(coats)}" aria-hidden="true">${parts.map((part) => html`<span>${part}</span>`)}</p></div>`;
}

function chipParts(pattern: Pattern, hasOther: boolean, thinPart: string | undefined): readonly string[] {
  return [...faceNames(pattern, hasOther), ...(thinPart === undefined ? [] : [thinPart])];
}

/** What the style sheet sets the names of the parts by, below the columns of the chip. */
function partsClass({ other, thin }: Coats): string {
  if (other === undefined) return thin === undefined ? 'alone' : '';
  return thin === undefined ? 'two-sides' : 'with-other';
}

/** A recipe's test chip, and a cut through its bait. */
export function testChip(context: PageContext, recipe: Recipe, mold: Mold): Html {
  const { pattern, cups } = recipe;
  const cut =
    cups.length < 2
      ? ''
      : html`<figure class="cut">${section(
          pattern,
          cups.map((cup) => ({ hex: cup.body.overWhite.hex, share: cup.share })),
          `Cross-section of the bait: ${cups.map((cup) => `${cup.name} ${Math.round(cup.share * 100)} %`).join(', ')}`,
        )}<figcaption>${sentence(pattern)}: ${PATTERNS[pattern].means}<br>${cups.map((cup) => html`<span class="cut-part">${cup.name} ${Math.round(cup.share * 100)} %</span> `)}</figcaption></figure>`;
  return inFold(
    'chip',
    'As a test chip',
    html`${labelledChip(context, recipe, recipeCoats(recipe, mold), mold.thinPart)}${cut}`,
  );
}
