import type { Spread } from '../../book/model.ts';
import { type Html, html } from '../html.ts';

/** The predicted colour in the middle, at its sides the ends of the axes along which it is least sure, the widest above. */
export function spreadPicture({ ends }: Spread, middle: string): Html {
  if (ends.length === 0) return html``;
  const height = 100 / ends.length;
  const sides = ends.map(
    ([from, to], row) =>
      html`<rect x="0" y="${row * height}%" width="33.5%" height="${height}%" fill="${from}"/><rect x="66.5%" y="${row * height}%" width="33.5%" height="${height}%" fill="${to}"/>`,
  );
  return html`<figure class="spread"><svg class="spread-picture" role="img" aria-label="The colour shown in the middle; at its sides the colours between which nine in ten lie, in the direction that is least sure${ends.length > 1 ? ' above, in the next below' : ''}" width="100%" height="100%">${sides}<rect x="33%" y="0" width="34%" height="100%" fill="${middle}"/></svg><figcaption>The body over white as shown, between the colours at the ends of what it may be${ends.length > 1 ? ': the widest way above, the next below' : ''}.</figcaption></figure>`;
}
