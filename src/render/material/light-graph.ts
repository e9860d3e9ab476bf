import type { Material } from '../../book/model/shelf.ts';
import { ladderText } from '../dose-text.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import { spectrumGraph } from '../spectrum-graph.ts';
import { lightWords } from '../spectrum-words.ts';
import { sentence } from '../words.ts';

/** How much light a material absorbs and scatters over the spectrum, at its usual dose; a plastic as it is. */
export function lightGraph(context: PageContext, material: Material): Html {
  const { constants, typical, kind, title, ladder } = material;
  if (constants === undefined) return html``;
  const dose = kind === 'plastic' ? 1 : (typical ?? 0);
  if (!(dose > 0)) return html``;
  const K = constants.absorption.map((value) => value * dose);
  const S = constants.scattering.map((value) => value * dose);
  const step = ladder.find(({ gramsPerMl }) => gramsPerMl === typical);
  const usual = step && ladderText(step, context.book.settings, material);
  const words = sentence(lightWords(K, S));
  return html`<section class="part" aria-labelledby="spectrum"><h2 id="spectrum">What it does to light</h2>
<figure class="graph-figure">${spectrumGraph({
    id: 'k-s',
    title: `Absorption and scattering of ${title} over wavelength`,
    description: `${words}.`,
    unit: 'taken or scattered per mm',
    lines: [
      { name: 'absorbs', values: K, mark: 'solid' },
      { name: 'scatters', values: S, mark: 'dashed' },
    ],
  })}<figcaption>${words}${usual === undefined ? '' : `, at ${usual}`}. <a href="${link(context, paths.method)}#light">What the lines mean</a></figcaption></figure></section>`;
}
