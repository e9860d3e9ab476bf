import type { Material } from '../../book/model/shelf.ts';
import { materialKnownSentence } from '../../words/how-known.ts';
import { sureSentence } from '../../words/what-taught.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import { counted, deltaEText } from '../words.ts';

/** What the colour of a material rests on, and how far it is to be trusted. */
export function knownColour(context: PageContext, material: Material): Html {
  const { known, sure, expectedDeltaE, flake, fit } = material;
  const error = sure ? sureSentence(sure) : `Typical error ΔE ${deltaEText(expectedDeltaE)}.`;
  const films =
    fit === undefined
      ? ''
      : html`<p>Based on ${counted(fit.films, 'test chip')}: ${counted(fit.doses, 'dose')} and ${counted(fit.thicknesses, 'thickness', 'thicknesses')} alone, ${counted(fit.mixtures, 'mixture')}. The fit misses ${fit.films === 1 ? 'it' : 'them'} by ΔE ${deltaEText(fit.residual)}.</p>`;
  return html`<section aria-labelledby="rests"><h2 id="rests">How its colour is known</h2><p>${flake === undefined ? materialKnownSentence(known) : 'Estimated from the colour of its face.'} <span class="fine">${error}</span></p>${films}<p><a href="${link(context, paths.method)}#known">What that means</a></p></section>`;
}
