import type { Material } from '../../book/model.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import { counted, deltaEText, MATERIAL_TIER_WORDS } from '../words.ts';

/** What the colour of a material rests on, and how far it is to be trusted. */
export function knownColour(context: PageContext, material: Material): Html {
  const { tier, expectedDeltaE, flake, fit } = material;
  const films =
    fit === undefined
      ? ''
      : html`<p>Rests on ${counted(fit.films, 'film')}: ${counted(fit.doses, 'dose')} and ${counted(fit.thicknesses, 'thickness', 'thicknesses')} by itself, ${counted(fit.mixtures, 'mixture')}. ${fit.films === 1 ? 'It is' : 'They are'} met within ΔE ${deltaEText(fit.residual)} <span class="fine">(root mean square)</span>.</p>`;
  return html`<section aria-labelledby="rests"><h2 id="rests">How its colour is known</h2><p>${flake === undefined ? MATERIAL_TIER_WORDS[tier] : 'Estimated from the colour of its face.'} <span class="fine">Expect ΔE ${deltaEText(expectedDeltaE)}.</span></p>${films}<p><a href="${link(context, paths.method)}#known">What that means</a></p></section>`;
}
