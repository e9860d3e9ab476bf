import { html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import type { MethodPart } from './method-part.ts';

const LIMITS: readonly string[] = [
  'Glow is not computed: a fluorescent powder sends back more light than arrives in its colour, and is brighter in daylight, and quite different under a black lamp, than any swatch here.',
  'Pearl and metallized flake change as they turn. The book gives one colour for all angles, never the flash.',
  'The light of flake and of the plastic between is mixed inside the plastic, before it leaves through the surface: as it is where the light spreads sideways further than a flake is wide. Large flakes just below the surface stand out a little more than here.',
  'The theory is for flat layers in diffuse light. At the edges of a round bait, and under a single bright lamp, there is more to see.',
  'K and S of a material are taken to be the same in every company. Powders that clump, or colorants that act on one another, don’t keep to that.',
  'A dose far from those that were measured is a guess, however well the films were met.',
  'A material without a look in its file is taken not to colour at all.',
  'A screen shows these colours nearly, and each screen its own way. A poured bait is right, and the book is wrong, wherever they differ.',
];

/** Where it stops being true. */
export function limitsPart(context: PageContext): MethodPart {
  return {
    id: 'limits',
    title: 'Where it stops being true',
    content: html`<ul>${LIMITS.map((limit) => html`<li>${limit}</li>`)}<li>Heat is not in it: plastic that was too hot yellows, and flake that scorched bleeds or fades. Overheated vinyl also gives off hydrogen chloride: <a href="${link(context, paths.care)}">read the cautions</a> first.</li></ul>`,
  };
}
