import type { Spread } from '../../book/model/recipe.ts';
import { type Html, html } from '../html.ts';

/** The predicted colour in the middle, at its sides the ends of the axes along which it is least sure, the widest above. */
export function spreadPicture({ ends }: Spread, middle: string): Html {
  if (ends.length === 0) return html``;
  const height = 100 / ends.length;
  const sides = ends.map(
    ([from, to], row) =>
      html`<rect x="0" y="${row * height}%" width="33.5%" height="${height}%" fill="${from}"/><rect x="66.5%" y="${row * height}%" width="33.5%" height="${height}%" fill="${to}"/>`,
  );
  return html`<figure class="spread"><svg class="spread-picture" role="img" aria-label="The predicted colour in the middle; left and right, how far off nine in ten batches could be, in the least certain direction${ends.length > 1 ? ' at the top, in the next below' : ''}" width="100%" height="100%">${sides}<rect x="33%" y="0" width="34%" height="100%" fill="${middle}"/></svg><figcaption>Middle: the predicted body over white. Left and right: how far off it could be, in the least certain direction${ends.length > 1 ? ' (top) and the next (bottom)' : ''}.</figcaption></figure>`;
}
