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
    content: html`<p>In a mix, K and S add up, each by its dose: twice the drops absorb twice as much. The colours themselves do not. Light that one material absorbs is gone, however much of it the other would send back, and the one that scatters more shows more. Averaging two screen colours knows nothing of that.</p>
${mixing === undefined ? '' : mixingFigure(mixing)}`,
  };
}

function mixingFigure({ materials, alone, mixed, averaged, deltaE, medianDeltaE, pairs }: MixingExample): Html {
  const [first, second] = materials.map(({ title }) => title) as [string, string];
  const figure = namedChips(
    chips(
      [chipColours(alone[0]), chipColours(mixed), averaged, chipColours(alone[1])],
      `${first}, half and half by the model, the average of the screen colours, ${second}; over white above, over black below`,
    ),
    [first, 'half and half, by the model', 'average of the screen colours', second],
    `A cup of each, ${LADDER_MM} mm thick, and the two mixed half and half. The model and the average of the screen colours differ by ΔE ${deltaEText(deltaE)}.`,
  );
  const others =
    pairs < 2
      ? ''
      : html`<p>Of ${pairs} pairs on this shelf, this one differs most; half of the pairs differ by ΔE ${deltaEText(medianDeltaE)} or more.</p>`;
  return html`${figure}${others}`;
}

/** How layers are seen through each other. */
export function layersPart({ layers }: MethodExamples): MethodPart {
  return {
    id: 'layers',
    title: 'Layers show through each other',
    content: html`<p>In a laminate the far side is the backing of the near one. So each side picks up some of the other’s hue, more so the fewer millimetres it has and the clearer it is, and the same two cups look different from each side. A swirl is the average of all that you look through, seen from far enough for its streaks to run together: in a thin tail one streak goes all the way through, in a deep body another lies behind it and shines through; a core is seen through its shell.</p>
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
    `${first} and ${second}, ${LADDER_MM} mm in total: each alone, and as two layers of half that thickness.`,
  );
}

/** Flake at all depths. */
export function flakePart({ flake }: MethodExamples): MethodPart {
  return {
    id: 'flake',
    title: 'Flake lies at every depth',
    content: html`<p>Flakes are counted, not blended: the dose, the size and the thickness of their film give how many there are per millilitre. A flake turned at random shows half its face on average, so wherever you look into the plastic, you meet one sooner or later. Those near the surface show their own colour; deeper ones are seen through the plastic and take on its hue. From a distance you see the average of all depths, and of the plastic in between.</p>
<p>What counts is the flake that you can tell from the plastic. The book follows each line of sight to the first flake on it. One right below the surface counts in full, one deeper down by as much as it still stands out. In clear plastic nearly all of them count; in a solid colour, only those in the outer one to three millimetres.</p>
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
    `The face of ${flake.title}${size} at its usual load, behind ${behind}: how deep it lies, and how much of your view flake has covered by then.`,
  );
}
