import type { MethodExamples, PlasticCurve } from '../../book/method/method-examples.ts';
import { BLACK_BACKING, WHITE_BACKING } from '../../tables/backings.ts';
import { SURFACE_K1, SURFACE_K2 } from '../../tables/surface.ts';
import { type Html, html } from '../html.ts';
import { spectrumGraph } from '../spectrum-graph.ts';
import { lightWords } from '../spectrum-words.ts';
import { chipColours, chips } from '../swatch/chip.ts';
import { type MethodPart, namedChips } from './method-part.ts';

/** What light does in plastic: it is swallowed, or turned about. */
export function lightPart({ absorber, scatterer }: MethodExamples): MethodPart {
  return {
    id: 'light',
    title: 'What light does in plastic',
    content: html`<p>White light is a mixture of all colours, from violet to deep red. The book follows it in 36 steps of 10 nanometres. In coloured plastic each step can fare in two ways: it is <em>swallowed</em>, or it is <em>scattered</em>, that is, sent off in another direction. How much of either happens in a millimetre are the two numbers of a material, absorption (K) and scattering (S), one pair for each step.</p>
<p>A dye swallows and hardly scatters: one sees through it, and it is dark where nothing white lies behind. A white or a pearl scatters and hardly swallows: it hides what is behind. What comes back to the eye is the light that was scattered, or met the backing, before it was swallowed.</p>
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
      { name: 'swallows', values: absorption, mark: 'solid' },
      { name: 'scatters', values: scattering, mark: 'dashed' },
    ],
  })}<figcaption>${material.title} at its usual dose: ${words}.</figcaption></figure>`;
}

/** How a colour changes with thickness, and with what lies behind. */
export function thicknessPart({ thickness }: MethodExamples): MethodPart {
  const example =
    thickness === undefined
      ? ''
      : namedChips(
          chips(
            thickness.steps.map(({ look }) => chipColours(look)),
            `${thickness.material.title} from thin on the left to thick on the right, over white above and over black below`,
          ),
          thickness.steps.map(({ thicknessMm }) => `${thicknessMm} mm`),
          `${thickness.material.title} at its usual dose in clear plastic, over white above, over black below.`,
        );
  return {
    id: 'thickness',
    title: 'Thickness, over white and over black',
    content: html`<p>From K, S and the thickness, the theory of Kubelka and Munk gives how much of each step of the spectrum comes back from a layer, over any backing. A thin tail is not the colour of the body made lighter: the strong part of the spectrum is swallowed early, the weak part only deep down, so hue and strength both move.</p>
${example}
<p>One colour cannot tell a translucent plastic; two can. So the book shows everything over a white card (${WHITE_BACKING * 100} % comes back) and a black one (${BLACK_BACKING * 100} %), and its contrast is the light over black by the light over white: 0 is clear, 1 hides all.</p>
<p>At the surface ${SURFACE_K1 * 100} % of the light turns back at once, which is the gloss, and ${SURFACE_K2 * 100} % of what wants to leave is sent in again. The colours are those that one sees beside the gloss.</p>`,
  };
}
