import type { Recipe } from '../../book/model/recipe.ts';
import type { Mold } from '../../book/model/shelf.ts';
import { opacityClass } from '../../book/recipes/facets.ts';
import { type Html, html } from '../html.ts';
import type { PageContext } from '../page.ts';
import { sentence } from '../words.ts';
import { fold } from './fold.ts';
import { howItLooks } from './how-it-looks.ts';
import { inWater } from './in-water.ts';
import { lightsGist, otherLights } from './other-lights.ts';
import { otherSide } from './plate.ts';
import { testChip } from './test-chip.ts';

/** How a colour looks, as a test chip, in words and numbers, under lamps and at depth. */
export function lightAndWater(context: PageContext, recipe: Recipe, mold: Mold): Html {
  const said = (look: Recipe['body']): string => opacityClass(look.contrastRatio).said;
  const gist = [`body ${said(recipe.body)}, ${mold.thinPart} ${said(recipe.thin)}`, lightsGist(recipe)]
    .filter((words) => words !== '')
    .join('; ');
  return fold(
    'light',
    'Light and water',
    sentence(gist),
    html`<div class="in-folds">${otherSide(context, recipe)}${testChip(context, recipe, mold)}${howItLooks(context, recipe)}${otherLights(recipe)}${inWater(context, recipe)}</div>`,
  );
}
