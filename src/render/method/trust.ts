import { median } from '../../book/median.ts';
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
    'Films of the material, at known doses and thicknesses, were measured over white and over black. K and S of all measured materials are fitted to all films together.',
  ],
  [
    'photographed',
    'Chips at a known dose and thickness were photographed over white and over black. Each gives three numbers a backing, to which the smoothest possible spectrum is found.',
  ],
  [
    'estimated',
    'One colour, a dose and the kind (dye, pigment, pearl, white) are all that is known. How strongly it scatters is that of its kind, less of a dark pigment than of a light one.',
  ],
];

/** From what a material’s numbers come, best first, and how many of the shelf are known in which way. */
export function knownPart({ materials }: Book): MethodPart {
  const colouring = materials.filter(({ ladder, flake }) => ladder.length > 0 && flake === undefined);
  const rows = TIERS.map(([tier, words]): Html => {
    const count = colouring.filter((material) => material.tier === tier).length;
    return html`<div><dt>${sentence(tier)}</dt><dd>${words} <span class="fine">Expect ΔE ${EXPECTED_DELTA_E[tier]}. ${count === 0 ? 'None' : count} of this shelf.</span></dd></div>`;
  });
  return {
    id: 'known',
    title: 'Three ways to know a material',
    content: html`<p>All that was said rests on K and S. They are known in three ways, and every page says in which. A colour rests on the least known of what colours it.</p>
<dl class="care-list">${rows}</dl>
<p class="fine">The ΔE are medians of trials: films of paints, each predicted from the others (measured), and mixes of two published paints that were taken for photographed or estimated ones. Flake is always estimated, from the colour of its face.</p>`,
  };
}

/** Doubt, carried through. */
export function surePart(context: PageContext): MethodPart {
  return {
    id: 'sure',
    title: 'How sure a colour is',
    content: html`<p>A prediction is not a point but a small cloud of colours. Each number in it may be a little off: K and S by what the material’s films or chips leave open, the dose by what a drop or a spoon varies. The book moves one after the other by what it may be off, looks how far the colour goes, and adds the squares. A recipe’s page shows the middle of the cloud and its ends.</p>
${exampleOfSpread(context)}
<p id="${DELTA_E_ANCHOR}">ΔE is the colour difference CIEDE2000. Below 1 hardly anybody sees it, even side by side; 2 to 3 is plain when held together; at 10 they are two colours (common practice, no source).</p>`,
  };
}

/** The recipe in the middle of the book, from the surest to the least sure. */
function exampleOfSpread(context: PageContext): Html {
  const sorted = [...context.book.recipes].sort((one, other) => one.spread.bound - other.spread.bound);
  const recipe = sorted[Math.floor(sorted.length / 2)];
  if (recipe === undefined) return html``;
  const { id, title, spread, body } = recipe;
  const name = html`<a href="${link(context, paths.recipe(id))}">${title}</a>`;
  return html`${spreadPicture(spread, body.overWhite.hex)}<p>This is ${name}: nine in ten batches come out within ΔE ${deltaEText(spread.bound)}${sorted.length < 3 ? '' : '; half of this book’s colours are surer than that, half less sure'}.</p>`;
}

/** Learning from the rounds of a cup. */
export function learningPart({ recipes }: Book): MethodPart {
  const seen = recipes.flatMap(({ cups }) =>
    cups.flatMap(({ rounds }) => rounds.flatMap(({ seen: [judged] }) => judged?.missedBy?.overWhite ?? [])),
  );
  return {
    id: 'learning',
    title: 'What it learns from rounds',
    content: html`<p>A test bait tells what no shelf can: how strong these very bottles are. When a cup has rounds that were looked at, the book asks how strong each material must have been for the colours that were seen, without going further from the shelf than the colours ask for, and never below half or above one and a half times. What is left it keeps as an offset. The advice for the next addition is computed with that; the page of a recipe shows the prediction as the shelf alone gives it.</p>
${seen.length === 0 ? '' : html`<p>In this book ${counted(seen.length, 'round')} ${seen.length === 1 ? 'was' : 'were'} looked at over white; half of the predictions lay within ΔE ${deltaEText(median(seen))} of what was seen.</p>`}`,
  };
}
