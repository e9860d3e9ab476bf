import type { Recipe, RecipeLook } from '../../book/model/recipe.ts';
import type { Mold } from '../../book/model/shelf.ts';
import { faceNames, PATTERNS, type Pattern } from '../../patterns/patterns.ts';
import { UNITS } from '../../units/unit.ts';
import { baitPicture, PICTURE_CAPTION, picturedMold, pictureKinds } from '../bait-picture.ts';
import { type Html, html } from '../html.ts';
import type { PageContext } from '../page.ts';
import { liesBeside, pageWidthMm } from '../picture-files.ts';
import { viewsInWords } from '../swatch/chip.ts';
import type { Coats } from '../swatch/coat.ts';
import { recipeCoats } from '../swatch/coat.ts';
import { pour } from '../swatch/pour.ts';
import { section } from '../swatch/section.ts';
import { sentence } from '../words.ts';
import { inFold } from './fold.ts';

/**
 * Names of the parts of a drawdown card, left to right.
 *
 * @param thinPart unset: the card does not show it
 */
export function cardParts(pattern: Pattern, hasOther: boolean, thinPart?: string): readonly string[] {
  return [...faceNames(pattern, hasOther), ...(thinPart === undefined ? [] : [thinPart])];
}

/** Drawdown card with the names of its parts under it. */
export function labelledPour(
  coats: Coats,
  options: { readonly id: string; readonly seed: string; readonly label: string; readonly parts: readonly string[] },
): Html {
  const { id, seed, label, parts } = options;
  const columns = [coats.body, coats.other, coats.thin].filter((coat) => coat !== undefined);
  const words = columns.map(
    ({ white, black }, at) => `${parts[at]} ${viewsInWords({ overWhite: white, overBlack: black })}`,
  );
  const said = `${label}: ${words.join('; ')}; then the bare card`;
  return html`<div class="drawdown"><div class="drawdown-plate">${pour(coats, { id, seed, budget: 260, label: said })}</div><p class="drawdown-parts ${partsClass(coats)}" aria-hidden="true">${parts.map((part) => html`<span>${part}</span>`)}</p></div>`;
}

/** What the style sheet sets the names of the parts by, below the columns of the card. */
function partsClass({ other, thin }: Coats): string {
  if (other === undefined) return thin === undefined ? 'alone' : '';
  return thin === undefined ? 'two-sides' : 'with-other';
}

/** A colour's bait, over white and over black, and what of the picture is computed. */
export function plate(context: PageContext, thing: Recipe | RecipeLook): Html {
  const other = pictureKinds(thing).includes('other') ? html` <a href="#other">The other side</a>` : '';
  const scale = 'cups' in thing ? scaleBar(context, thing) : '';
  return html`<figure class="plate"><div class="scaled">${baitPicture(context, thing, 'page', { first: true })}${scale}</div><figcaption>${PICTURE_CAPTION}${other}</figcaption></figure>`;
}

/** A bar on the card that is in the lower left corner, as long as so much of the bait, whatever the size of the picture. */
function scaleBar({ book }: PageContext, recipe: Recipe): Html {
  const [mm, text] = book.settings.volume === 'ml' ? [10, '10 mm'] : [UNITS.in.size / 2, '1/2 in'];
  const mold = picturedMold(book, recipe);
  const part = mm / pageWidthMm(mold);
  return html`<div class="picture-scale ${liesBeside(mold) ? 'on-white' : 'on-black'}"><svg aria-hidden="true"><rect x="2%" width="${(100 * part).toFixed(2)}%" height="100%"/></svg><span>${text}</span></div>`;
}

/** The other side of a bait that has two; nothing of others. */
export function otherSide(context: PageContext, thing: Recipe | RecipeLook): Html {
  if (!pictureKinds(thing).includes('other')) return html``;
  return inFold('other', 'The other side', baitPicture(context, thing, 'other'));
}

/** What was computed, without light or gloss: a recipe's drawdown card, and a cut through its bait. */
export function testChip(recipe: Recipe, mold: Mold): Html {
  const { id, title, pattern, cups } = recipe;
  const coats = recipeCoats(recipe, mold);
  const parts = cardParts(pattern, coats.other !== undefined, mold.thinPart);
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
    html`${labelledPour(coats, {
      id: 'card',
      seed: id,
      label: `${title} as a test chip over white and over black`,
      parts,
    })}${cut}`,
  );
}
