import type { LayersExample, MethodExamples, MixingExample } from '../../book/method/method-examples.ts';
import { LADDER_MM } from '../../tables/material-defaults.ts';
import { type Html, html } from '../html.ts';
import { chipColours, chips } from '../swatch/chip.ts';
import { deltaEText, inches } from '../words.ts';
import { type MethodPart, namedChips } from './method-part.ts';

/** Why the colour of a mix is not the mean of the colours. */
export function mixingPart({ mixing }: MethodExamples): MethodPart {
  return {
    id: 'mixing',
    title: 'Mixing plastics is not mixing screen colours',
    content: html`<p>In a mix, what adds up is K and S, each by its dose: twice the drops swallow twice as much. The colours do not add up. Whatever one of the two swallows is lost, however much of it the other would send back; and the one that scatters more is seen more. The mean of two screen colours knows nothing of that.</p>
${mixing === undefined ? '' : mixingFigure(mixing)}`,
  };
}

function mixingFigure({ materials, alone, mixed, averaged, deltaE, medianDeltaE, pairs }: MixingExample): Html {
  const [first, second] = materials.map(({ title }) => title) as [string, string];
  const figure = namedChips(
    chips(
      [chipColours(alone[0]), chipColours(mixed), averaged, chipColours(alone[1])],
      `${first}, half of each by the model, the mean of the screen colours, ${second}; over white above, over black below`,
    ),
    [first, 'half a cup of each, by the model', 'mean of the screen colours', second],
    `A cup of each, ${LADDER_MM} mm thick, and the two poured together. The model and the mean of the screen colours differ by ΔE ${deltaEText(deltaE)}.`,
  );
  const others =
    pairs < 2
      ? ''
      : html`<p>Of ${pairs} pairs of this shelf that is the one where they differ most; half of the pairs differ by ΔE ${deltaEText(medianDeltaE)} or more.</p>`;
  return html`${figure}${others}`;
}

/** How layers are seen through each other. */
export function layersPart({ layers }: MethodExamples): MethodPart {
  return {
    id: 'layers',
    title: 'Layers are seen through each other',
    content: html`<p>In a laminate the near side lies over the far one: the far one is its backing. So each side takes something of the other’s hue, more so the thinner and clearer it is, and the same two cups look different from either side. A swirl is the mean of its streaks by area, as seen from where they run together; a core is seen through its shell.</p>
${layers === undefined ? '' : layersFigure(layers)}`,
  };
}

function layersFigure({ materials, alone, over }: LayersExample): Html {
  const [first, second] = materials.map(({ title }) => title) as [string, string];
  return namedChips(
    chips(
      [chipColours(alone[0]), chipColours(over[0]), chipColours(over[1]), chipColours(alone[1])],
      `${first}, ${first} in front of ${second}, ${second} in front of ${first}, ${second}; over white above, over black below`,
    ),
    [`${first} alone`, `${first} in front`, `${second} in front`, `${second} alone`],
    `${first} and ${second}, ${LADDER_MM} mm in all: each alone, and in layers of half the thickness.`,
  );
}

/** Flake at all depths. */
export function flakePart({ flake }: MethodExamples): MethodPart {
  return {
    id: 'flake',
    title: 'Flake lies at all depths',
    content: html`<p>Flakes are counted, not blended: the dose, the size and the film give how many there are in a millilitre. One that is turned at random shows half its face on average, and so a line of sight into the plastic meets a flake sooner or later. Those near the surface show their own colour; deeper ones are seen through the plastic and take its hue. The colour from a distance is the mean of all depths, and of what lies between.</p>
${flake === undefined ? '' : flakeFigure(flake)}`,
  };
}

function flakeFigure({ flake, colorant, steps }: NonNullable<MethodExamples['flake']>): Html {
  const size = flake.flake === undefined ? '' : ` (${inches(flake.flake.acrossMm)})`;
  const behind = colorant === undefined ? 'clear plastic' : `half the usual dose of ${colorant.title}`;
  return namedChips(
    chips(
      steps.map(({ hex }) => ({ overWhite: hex, overBlack: hex })),
      `A flake of ${flake.title} behind more and more plastic, from left to right`,
    ),
    steps.map(({ depthMm, met }) =>
      depthMm === 0 ? 'at the surface' : `${depthMm}\u00a0mm, ${Math.round(met * 100)}\u00a0%`,
    ),
    `The face of ${flake.title}${size} at its usual load, behind ${behind}: how deep it lies, and how many of a hundred lines of sight have met a flake by then.`,
  );
}
