import type { MethodExamples, PlasticCurve } from '../../book/method/method-examples.ts';
import type { Book } from '../../book/model.ts';
import { SURFACE_K1, SURFACE_K2 } from '../../tables/surface.ts';
import { type Html, html } from '../html.ts';
import { spectrumGraph } from '../spectrum-graph.ts';
import { lightWords } from '../spectrum-words.ts';
import { chipColours, chips } from '../swatch/chip.ts';
import { type MethodPart, namedChips } from './method-part.ts';

/** What light does in plastic: it is absorbed, or scattered. */
export function lightPart({ absorber, scatterer }: MethodExamples): MethodPart {
  return {
    id: 'light',
    title: 'What light does in plastic',
    content: html`<p>White light is a mixture of all colours, from violet to deep red. The book follows it in 36 steps of 10 nanometres. In coloured plastic, each step can go one of two ways: it is <em>absorbed</em>, or it is <em>scattered</em>, sent off in another direction. How much of each happens per millimetre gives a material its two numbers, absorption (K) and scattering (S), one pair for every step.</p>
<p>A dye absorbs light and hardly scatters it, so you see through it, and it looks dark unless something white lies behind. A white or a pearl scatters light and hardly absorbs it, so it hides what’s behind. What comes back to your eye is the light that was scattered, or met the backing, before it was absorbed.</p>
<div class="method-pair">${absorber === undefined ? '' : curve('absorber', absorber)}${scatterer === undefined ? '' : curve('scatterer', scatterer)}</div>`,
  };
}

function curve(id: string, { material, absorption, scattering }: PlasticCurve): Html {
  const words = lightWords(absorption, scattering);
  return html`<figure class="method-figure">${spectrumGraph({
    id,
    title: `Absorption and scattering of ${material.title}`,
    description: `${words}.`,
    unit: 'per mm',
    lines: [
      { name: 'absorbs', values: absorption, mark: 'solid' },
      { name: 'scatters', values: scattering, mark: 'dashed' },
    ],
  })}<figcaption>${material.title} at its usual dose: ${words}.</figcaption></figure>`;
}

/** How a colour changes with thickness, and with what lies behind. */
export function thicknessPart({ thickness }: MethodExamples, { backings, path }: Book['optics']): MethodPart {
  const example =
    thickness === undefined
      ? ''
      : namedChips(
          chips(
            thickness.steps.map(({ look }) => chipColours(look)),
            `${thickness.material.title} from ${thickness.steps[0]!.thicknessMm} mm on the left to ${thickness.steps.at(-1)!.thicknessMm} mm on the right, over white above and over black below`,
          ),
          thickness.steps.map(({ thicknessMm }) => `${thicknessMm} mm`),
          `${thickness.material.title} at its usual dose in clear plastic, over white above, over black below.`,
        );
  return {
    id: 'thickness',
    title: 'Thickness, over white and over black',
    content: html`<p>From K, S and the thickness, the theory of Kubelka and Munk gives how much of each step of the spectrum a layer sends back, over any backing. A thin tail is not just a lighter version of the body: some parts of the spectrum are absorbed near the surface, others only deep down, so hue and vividness both change.</p>
<p>Light goes straight through clear plastic and zigzags through cloudy plastic. So the same drop of dye colours a cloudy cup more: in clear plastic it absorbs ${percent(path.d)} less.</p>
${example}
<p>One colour cannot describe a translucent plastic; two can. So the book shows everything over a white card (${percent(backings.white)} comes back) and a black one (${percent(backings.black)}). How much a body hides is the light over black divided by the light over white: 0 % is clear, 100 % hides everything.</p>
<p>At the surface ${SURFACE_K1 * 100} % of the light bounces off at once, which is the gloss, and ${SURFACE_K2 * 100} % of the light trying to leave is reflected back in. The colours shown are those you see away from the gloss.</p>`,
  };
}

/** A share in whole percent; of a spectrum its mean. */
function percent(share: number | readonly number[]): string {
  const mean = typeof share === 'number' ? share : share.reduce((sum, each) => sum + each, 0) / share.length;
  return `${Math.round(100 * mean)} %`;
}
