import type { Recipe, RecipeLook } from '../../book/model/recipe.ts';
import { UNITS } from '../../units/unit.ts';
import { baitPicture, PICTURE_CAPTION, picturedMold, pictureKinds } from '../bait-picture.ts';
import { type Html, html } from '../html.ts';
import type { PageContext } from '../page.ts';
import { liesBeside, pageWidthMm } from '../picture-files.ts';
import { inFold } from './fold.ts';

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
