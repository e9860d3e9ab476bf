/**
 * The usual cautions of the bench. They stand wherever someone is told to heat.
 *
 * Common practice, no source; the supplier's safety data sheet comes before them.
 *
 * @packageDocumentation
 */
import { type Html, html } from './html.ts';
import { link, paths } from './links.ts';
import type { PageContext } from './page.ts';

/** One caution: what to do, and why. */
export interface Caution {
  readonly name: string;
  readonly short: string;
  readonly text: string;
}

export const CAUTIONS: readonly Caution[] = [
  {
    name: 'Data sheet first',
    short: 'Read the supplier’s safety data sheet first.',
    text: 'Read the safety data sheet of each material before you open it, and keep to what it says. Where this book and the supplier differ, the supplier is right.',
  },
  {
    name: 'Air',
    short: 'Work under a fume hood or in a strong draught to the outside.',
    text: 'Heat under a hood that leads outside, or in a draught that carries the fumes away from you. Overheated vinyl gives off hydrogen chloride: if it smells sharp, smokes or turns brown, take it off the heat, leave the room and air it.',
  },
  {
    name: 'Eyes',
    short: 'Wear goggles.',
    text: 'Wear goggles that close at the sides, everyone who stands near, from the first cup to the last.',
  },
  {
    name: 'Skin',
    short: 'Wear heat-proof gloves and long sleeves.',
    text: 'Wear heat-proof gloves, long sleeves, trousers and closed shoes. Hot plastic sticks and goes on burning: cool a burn under running water at once, for a long time, and see a doctor.',
  },
  {
    name: 'Temperature',
    short: 'Use a thermometer; keep below the limit of the cup.',
    text: 'Measure with a thermometer in the plastic, and stir. A cup’s limit is the lowest of all that is in it: laser and hologram flake scorch earlier than plain polyester. The book states no temperature that no supplier stated.',
  },
  {
    name: 'Water',
    short: 'No water near hot plastic or in a mold.',
    text: 'Keep water, wet hands and wet molds away: a drop in hot plastic turns to steam and throws it about. Dry and warm the mold before the pour.',
  },
  {
    name: 'Food',
    short: 'Nothing used here ever goes back to food.',
    text: 'Cups, spoons, scales and the microwave oven that you use here are never used for food again. Keep children, pets and food out of the room.',
  },
  {
    name: 'Law and licence',
    short: 'Local codes and licensed practice stand above this book.',
    text: 'Local fire and workplace codes, the rules on fumes and waste, and licensed practice stand above anything that is written here.',
  },
];

/** The cautions in short, with a link to all of them. */
export function cautionsBlock(context: PageContext): Html {
  return html`<aside class="cautions" aria-label="Cautions"><p class="cautions-head">Before you heat anything</p><ul>${CAUTIONS.map(
    ({ short }) => html`<li>${short}</li>`,
  )}</ul><p><a href="${link(context, paths.care)}">All cautions, with the reasons</a></p></aside>`;
}
