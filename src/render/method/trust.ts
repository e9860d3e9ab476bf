import type { Book, Tier } from '../../book/model.ts';
import { EXPECTED_DELTA_E } from '../../tables/colouring-kinds.ts';
import { DELTA_E_ANCHOR } from '../delta-e-gloss.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import { spreadPicture } from '../recipe/spread-picture.ts';
import { counted, deltaEText, sentence } from '../words.ts';
import type { MethodPart } from './method-part.ts';

const TIERS: readonly (readonly [Tier, string])[] = [
  [
    'measured',
    'Test chips of the material, at known doses and thicknesses, were measured over white and over black. K and S of all measured materials are fitted to all the chips together.',
  ],
  [
    'photographed',
    'Test chips at a known dose and thickness were photographed over white and over black. Each gives three numbers per backing, and the smoothest spectrum that fits them is used.',
  ],
  [
    'estimated',
    'Only one colour, a dose and the kind (dye, pigment, pearl, white) are known. The material is assumed to scatter as its kind does, a dark pigment less than a light one.',
  ],
];

/** From what a material’s numbers come, best first, and how many of the shelf are known in which way. */
export function knownPart({ materials }: Book): MethodPart {
  const colouring = materials.filter(({ ladder, flake }) => ladder.length > 0 && flake === undefined);
  const rows = TIERS.map(([tier, words]): Html => {
    const count = colouring.filter((material) => material.tier === tier).length;
    return html`<div><dt>${sentence(tier)}</dt><dd>${words} <span class="fine">Typical error ΔE ${EXPECTED_DELTA_E[tier]}; ${count === 0 ? 'no material' : counted(count, 'material')} on this shelf.</span></dd></div>`;
  });
  return {
    id: 'known',
    title: 'Three ways to know a material',
    content: html`<p>All of this rests on K and S. They are known in one of three ways, and every page says which. A colour is only as certain as the least-known material in it.</p>
<dl class="care-list">${rows}</dl>
<p class="fine">These errors are medians of trials: paint samples, each predicted from the others (measured), and mixes of two published paints treated as if photographed or estimated. Flake is always estimated, from the colour of its face.</p>`,
  };
}

/** Doubt, carried through. */
export function surePart(context: PageContext): MethodPart {
  return {
    id: 'sure',
    title: 'How certain a colour is',
    content: html`<p>A prediction is not a point but a small cloud of colours. Each number behind it may be a little off: K and S by what the material’s test chips leave open, the dose by as much as a drop or a spoon varies. The book shifts each in turn by what it may be off, sees how far the colour moves, and adds the squares. A recipe’s page shows the middle of the cloud and its ends.</p>
${exampleOfSpread(context)}
<p id="${DELTA_E_ANCHOR}">ΔE is the colour difference CIEDE2000. Below 1 hardly anyone sees it, even side by side; 2 to 3 is plain when the two are held together; 10 is clearly another colour (common practice, no source).</p>`,
  };
}

/** The recipe in the middle of the book, from the surest to the least sure. */
function exampleOfSpread(context: PageContext): Html {
  const sorted = [...context.book.recipes].sort((one, other) => one.spread.bound - other.spread.bound);
  const recipe = sorted[Math.floor(sorted.length / 2)];
  if (recipe === undefined) return html``;
  const { id, title, spread, body } = recipe;
  const name = html`<a href="${link(context, paths.recipe(id))}">${title}</a>`;
  return html`${spreadPicture(spread, body.overWhite.hex)}<p>This is ${name}: nine in ten batches come out within ΔE ${deltaEText(spread.bound)}${sorted.length < 3 ? '' : '; half of this book’s colours are more certain than that, half less'}.</p>`;
}
