import { type Html, html } from '../html.ts';
import type { Coats } from './coat.ts';

/** Widths of a strip's columns: the body, the other side where there is one, the thin part. */
const BODY = 5;
const OTHER = 3;
const THIN = 3;

/** A colour's plastic as a low strip: thick as the body, then as the thin part, over white above and over black below. */
export function filmStrip({ body, other, thin }: Coats): Html {
  const columns = [
    { coat: body, width: BODY },
    ...(other ? [{ coat: other, width: OTHER }] : []),
    ...(thin ? [{ coat: thin, width: THIN }] : []),
  ];
  let from = 0;
  const drawn = columns.map(({ coat, width }) => {
    const x = from;
    from += width;
    return html`<path fill="${coat.white}" d="M${x} 0h${width}v1H${x}z"/><path fill="${coat.black}" d="M${x} 1h${width}v1H${x}z"/>`;
  });
  return html`<svg class="film-strip" viewBox="0 0 ${from} 2" preserveAspectRatio="none" shape-rendering="crispEdges" aria-hidden="true">${drawn}</svg>`;
}
