import { html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import type { MethodPart } from './method-part.ts';

const LIMITS: readonly string[] = [
  'Glow is not computed: a fluorescent powder sends back more light of its colour than falls on it. It is brighter in daylight than any swatch here, and quite different under a UV lamp.',
  'Pearl and metallized flake change as they turn. The book gives one colour for all angles, never the flash.',
  'Light from the flake and from the plastic in between is mixed before it leaves the surface, which is right where light spreads further sideways than a flake is wide. Large flakes just below the surface stand out a little more than shown here.',
  'Flake is taken to lie every way alike, and evenly spread. Just below the skin and past a narrow gate it lies along the wall and shows 20 to 60 % more of its face (common practice, no source), and it sinks while a cup stands.',
  'The theory is for flat layers in diffuse light. There is more to see at the edges of a round bait, and under a single bright lamp.',
  'A bait is taken to be as thick all over as its mold’s body. A round or oval section is 0.79 of its height in the mean, so that a real bait lets through a little more light, at its edges most.',
  'Clear plastic is taken to be a faint yellow. Yours may be grey or blue, by brand and age, and is yellower after each heat: pour a chip of it by itself now and then.',
  'Colours wander. Red, black and fluorescent ones bleed into a pale side of the same bait, and into pale baits in the same bag, within days or weeks (common practice, no source). Keep them apart, and all of them out of hard plastic boxes, which the plasticiser eats.',
  'A bait is right to look at next day. It can be fished once it is cold, has its final feel after 24 to 48 hours, and comes out 1 to 2 % shorter than its mold (common practice, no source).',
  'How soft a bait gets is not computed: of softener, 5 to 8 % makes firm plastic medium, and 2 % is hardly felt (common practice, no source).',
  'A material is assumed to behave the same whatever else is in the cup. Powders that clump, or colorants that react with each other, don’t.',
  'A dose far from those that were measured is a guess, however well the test chips fit.',
  'A material without a look in its file is assumed not to colour at all.',
  'A screen only comes close to these colours, each in its own way. Wherever a poured bait and the book differ, the bait is right.',
];

/** Where it stops being true. */
export function limitsPart(context: PageContext): MethodPart {
  return {
    id: 'limits',
    title: 'Where it stops being true',
    content: html`<ul>${LIMITS.map((limit) => html`<li>${limit}</li>`)}<li>Heat is not included: overheated plastic yellows, and scorched flake bleeds or fades. Overheated vinyl also gives off hydrogen chloride: <a href="${link(context, paths.care)}">read the cautions</a> first.</li></ul>`,
  };
}
