import { type Html, html } from './html.ts';

/** Addresses of a tile, in its two sizes. */
export interface TileSources {
  readonly src: string;
  readonly srcset: string;
}

/** A bait beside its name, which tells what it is; its style gives it a box, in which it is shown whole. */
export function smallBait({ src, srcset }: TileSources): Html {
  return html`<img class="small-bait" src="${src}" srcset="${srcset}" alt="" width="320" height="160" loading="lazy" decoding="async">`;
}
