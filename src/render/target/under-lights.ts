import type { CupLights, CupMatch } from '../../book/model.ts';
import { type Html, html } from '../html.ts';
import { deltaEText, listText } from '../words.ts';

/** Why a comparison under another light may be wrong, or why not. */
export const LIGHTS_BASIS: Readonly<Record<CupLights['basis'], string>> = {
  measured: 'The target was measured band by band, so its colour is known under any light.',
  estimated:
    'The target is known by its colour in daylight alone, and the smoothest reflectance of that colour stands for it; the real one may part otherwise. Hold both under the light.',
};

/** "ΔE 3.4 under a lamp, 2.8 under a warm LED and 4.0 under a fluorescent tube" */
export function apartUnderLights({ views }: CupLights): string {
  return listText(
    views.map(({ name, deltaE }, index) => `${index === 0 ? 'ΔE ' : ''}${deltaEText(deltaE)} under a ${name}`),
  );
}

/** How far a cup and its target are apart under other lights: a match by day may be none under a lamp. */
export function underLights({ lights, rounds }: CupMatch, tolerance: number): Html {
  if (!lights) return html``;
  const within = rounds.at(-1)?.verdict.within === true;
  const parted = within && lights.views.some(({ deltaE }) => deltaE > tolerance);
  const part = lights.basis === 'measured' ? 'they part' : 'they may part';
  const lead = parted ? `Alike by day, ${part} under other light:` : 'Under other light they are apart by';
  return html`<p>${lead} ${apartUnderLights(lights)}. <span class="fine">${LIGHTS_BASIS[lights.basis]}</span></p>`;
}
