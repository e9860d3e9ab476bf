import type { CupLights, CupMatch } from '../../book/model/target.ts';
import { type Html, html } from '../html.ts';
import { deltaEText, differenceWords, listText } from '../words.ts';

/** Why a comparison under another light may be wrong, or why not. */
export const LIGHTS_BASIS: Readonly<Record<CupLights['basis'], string>> = {
  measured: 'The target’s spectrum was measured, so its colour is known under any light.',
  estimated:
    'Only the target’s daylight colour is known. A typical spectrum of that colour is assumed; the real one may behave differently, so hold both under the light.',
};

/** "easy to see (ΔE 3.4 under a lamp, 2.8 under a warm LED and 4.0 under a fluorescent tube)" */
export function apartUnderLights({ views }: CupLights): string {
  const sizes = views.map(
    ({ name, deltaE }, index) => `${index === 0 ? 'ΔE ' : ''}${deltaEText(deltaE)} under a ${name}`,
  );
  return `${differenceWords(Math.max(...views.map(({ deltaE }) => deltaE)))} (${listText(sizes)})`;
}

/** How far a cup and its target are apart under other lights: a match by day may be none under a lamp. */
export function underLights({ lights, rounds }: CupMatch, tolerance: number): Html {
  if (!lights) return html``;
  const within = rounds.at(-1)?.verdict.within === true;
  const parted = within && lights.views.some(({ deltaE }) => deltaE > tolerance);
  const differ = lights.basis === 'measured' ? 'they differ' : 'they may differ';
  const lead = parted ? `Alike in daylight, but ${differ} under other lights:` : 'Under other lights they differ:';
  return html`<p>${lead} ${apartUnderLights(lights)}. <span class="fine">${LIGHTS_BASIS[lights.basis]}</span></p>`;
}
