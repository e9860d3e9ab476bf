import type { Recipe } from '../../book/model/recipe.ts';
import type { VolumeUnit } from '../../units/volume-text.ts';
import { assumptionText } from '../../words/assumption.ts';
import { spreadAdviceText } from '../../words/repeatability.ts';
import { type Html, html } from '../html.ts';
import { deltaEText, differenceText, sentence } from '../words.ts';
import { fold } from './fold.ts';

/** How near a batch comes that is made again, by which tool, and what the numbers assume. */
export function madeAgain({ repeatability, cups }: Recipe, settings: VolumeUnit): Html {
  const { bySpoonAndDrop, byScale, advice } = repeatability;
  const assumptions = [
    ...new Set(
      cups.flatMap((cup) => cup.assumptions.map(({ title, assumed }) => `${title}: ${assumptionText(assumed)}`)),
    ),
  ];
  const known = bySpoonAndDrop !== undefined || byScale !== undefined;
  if (!known && assumptions.length === 0) return html``;
  // A clear cup holds nothing that could be measured wrong.
  const plain = cups.every(({ contents }) => contents.length === 0);
  const measured = [
    ...(bySpoonAndDrop === undefined ? [] : [`By drop and spoon: ${differenceText(bySpoonAndDrop)}`]),
    ...(byScale === undefined ? [] : [`by weight ${deltaEText(byScale)}`]),
  ].join(', ');
  return fold(
    'again',
    'Repeatability',
    plain ? 'No colour to measure' : measured,
    html`${plain ? html`<p>It is plastic and nothing else, so every batch is as clear as the plastic.</p>` : ''}${
      known
        ? html`<dl class="facts stacked">${bySpoonAndDrop === undefined ? '' : html`<div><dt>By drop and spoon</dt><dd>19 batches in 20 stay within ΔE ${deltaEText(bySpoonAndDrop)}</dd></div>`}${byScale === undefined ? '' : html`<div><dt>By weight</dt><dd>${bySpoonAndDrop === undefined ? '19 batches in 20 stay within' : '19 in 20 within'} ΔE ${deltaEText(byScale)}</dd></div>`}</dl>`
        : ''
    }${advice === undefined ? '' : html`<p>${advice.map((each) => spreadAdviceText(each, settings)).join(' ')}</p>`}
${
  assumptions.length === 0
    ? ''
    : html`<h3>What these numbers assume</h3><ul class="fine">${assumptions.map((assumed) => html`<li>${sentence(assumed)}</li>`)}</ul>`
}`,
  );
}
