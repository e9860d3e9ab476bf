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
    text: 'Read each material’s safety data sheet before you open it, and follow it. Where this book and the supplier disagree, the supplier is right.',
  },
  {
    name: 'Air',
    short: 'Work under a fume hood or in a strong draught to the outside.',
    text: 'Heat under a hood that vents outside, or in a draught that carries the fumes away from you. Overheated vinyl gives off hydrogen chloride: if it smells sharp, smokes or turns brown, take it off the heat, leave the room and air it.',
  },
  {
    name: 'Eyes',
    short: 'Wear goggles.',
    text: 'Everyone nearby wears goggles that seal at the sides, from the first cup to the last.',
  },
  {
    name: 'Skin',
    short: 'Wear heat-proof gloves and long sleeves.',
    text: 'Wear heat-proof gloves, long sleeves, long trousers and closed shoes. Hot plastic sticks and keeps burning: cool a burn under running water at once, for a long time, and see a doctor.',
  },
  {
    name: 'Temperature',
    short: 'Use a thermometer and stay below the cup’s maximum.',
    text: 'Measure with a thermometer in the plastic, and stir. A cup’s maximum is the lowest of everything in it: laser and hologram flake scorch sooner than plain polyester. Every temperature in this book is one that a supplier stated.',
  },
  {
    name: 'Water',
    short: 'No water near hot plastic or in a mold.',
    text: 'Keep water, wet hands and wet molds away: a drop of water in hot plastic flashes to steam and throws the plastic about. Dry and warm the mold before you pour.',
  },
  {
    name: 'Food',
    short: 'Never use this gear for food again.',
    text: 'Never use these cups, spoons, scales or this microwave oven for food again. Keep children, pets and food out of the room.',
  },
  {
    name: 'Law and licence',
    short: 'Local codes and licensed practice override this book.',
    text: 'Local fire and workplace codes, the rules on fumes and waste, and licensed practice override anything written here.',
  },
];

/** The cautions in short, with a link to all of them. */
export function cautionsBlock(context: PageContext): Html {
  return html`<aside class="cautions" aria-label="Cautions"><p class="cautions-head">Before you heat anything</p><ul>${CAUTIONS.map(
    ({ short }) => html`<li>${short}</li>`,
  )}</ul><p><a href="${link(context, paths.care)}">All the cautions, and why</a></p></aside>`;
}
