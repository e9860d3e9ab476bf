import type { Recipe } from '../../book/model.ts';
import type { VolumeUnit } from '../../units/volume-text.ts';
import { assumptionText } from '../../words/assumption.ts';
import { spreadAdviceText } from '../../words/repeatability.ts';
import { type Html, html } from '../html.ts';
import { deltaEText, sentence } from '../words.ts';
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
    ...(bySpoonAndDrop === undefined ? [] : [`ΔE ${deltaEText(bySpoonAndDrop)} by drop and spoon`]),
    ...(byScale === undefined ? [] : [`${deltaEText(byScale)} by weight`]),
  ].join(', ');
  return fold(
    'again',
    'Made again',
    plain ? 'No colour in it, nothing to measure' : measured,
    html`${plain ? html`<p>It is plastic alone, so every batch comes out as clear as the plastic is.</p>` : ''}${
      known
        ? html`<dl class="facts stacked">${bySpoonAndDrop === undefined ? '' : html`<div><dt>By drop and spoon</dt><dd>ΔE at most ${deltaEText(bySpoonAndDrop)} in 19 of 20 batches</dd></div>`}${byScale === undefined ? '' : html`<div><dt>By weight</dt><dd>ΔE at most ${deltaEText(byScale)}</dd></div>`}</dl>`
        : ''
    }${advice === undefined ? '' : html`<p>${advice.map((each) => spreadAdviceText(each, settings)).join(' ')}</p>`}
${
  assumptions.length === 0
    ? ''
    : html`<h3>What the numbers assume</h3><ul class="fine">${assumptions.map((assumed) => html`<li>${sentence(assumed)}</li>`)}</ul>`
}`,
  );
}
