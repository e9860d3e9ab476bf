import { type Html, html } from '../../render/html.ts';

/** A colour over white above, and over black below; one that was not seen is left out. What they are stands beside it in words. */
export function halves(overWhite: string | undefined, overBlack: string | undefined): Html {
  const half = (hex: string | undefined, y: number): Html =>
    hex === undefined
      ? html`<rect class="unseen" y="${y}%" width="100%" height="50%"/>`
      : html`<rect y="${y}%" width="100%" height="50%" fill="${hex}"/>`;
  return html`<svg class="chips" aria-hidden="true" width="100%" height="100%">${half(overWhite, 0)}${half(overBlack, 50)}</svg>`;
}
