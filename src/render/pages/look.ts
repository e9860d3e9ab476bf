import type { FlakeLoad, RecipeLook } from '../../book/model/recipe.ts';
import { pictureAddress } from '../bait-picture.ts';
import { bookIndex } from '../book-index.ts';
import { document } from '../document.ts';
import { html } from '../html.ts';
import { hueLinks } from '../hue-links.ts';
import { labelLine } from '../label-line.ts';
import { link, paths } from '../links.ts';
import { lookParts } from '../look-parts.ts';
import { opacityWords } from '../opacity-words.ts';
import type { PageContext } from '../page.ts';
import { otherSide, plate } from '../recipe/plate.ts';
import { labelledChip } from '../recipe/test-chip.ts';
import { lookCoats } from '../swatch/coat.ts';
import { hidesText, sentence } from '../words.ts';

const FLAKE_WORDS: Readonly<Record<FlakeLoad, string>> = {
  none: 'None.',
  light: 'Light. Counted in the colours, not drawn.',
  heavy: 'Heavy. Counted in the colours, not drawn.',
};

/** Page of a colour of which only the look is published. */
export function lookPage(context: PageContext, look: RecipeLook): string {
  const { id, title, pattern, facets, flake } = look;
  const coats = lookCoats(look);
  const family = bookIndex(context.book).familyOf.get(id);
  return document(context, {
    title,
    description: `${title}: how it looks over white and over black. Its recipe is not published.`,
    part: paths.home,
    picture: pictureAddress(context, id, 'shared'),
    main: html`<article class="recipe">
<header class="label"><h1>${title}</h1>${labelLine([hueLinks(context, facets.hueFamilies), pattern])}</header>
<div class="spread-out">
${plate(context, look)}
<div><p class="lead">The maker shares the look of this colour, not the recipe.</p><p>Its colours are rounded, so they may be a shade off the bait in your hand.</p>${family === undefined || family.members.length < 2 ? '' : html`<p>It belongs to <a href="${link(context, paths.family(family.id))}">the family of ${family.title}</a>.</p>`}
<section class="part" aria-labelledby="looks"><h2 id="looks">How it looks</h2>${labelledChip(context, look, coats, coats.thin && 'thin part')}${otherSide(context, look)}<dl class="facts stacked">${lookParts(look).map(({ name, look: part }) => html`<div><dt>${sentence(name)}</dt><dd>${sentence(opacityWords(part))}. <span class="fine">Hides ${hidesText(part.contrastRatio)}</span></dd></div>`)}<div><dt>Flake</dt><dd>${FLAKE_WORDS[flake]}</dd></div></dl></section></div>
</div>
</article>`,
  });
}
