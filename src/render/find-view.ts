/**
 * A found thing as a row of the find page. The page lists all colours with it before a script runs, and the script writes its
 * results with it.
 *
 * @packageDocumentation
 */
import { type Html, html } from './html.ts';
import { smallBait, type TileSources } from './small-bait.ts';
import { chips } from './swatch/chip.ts';

export interface FoundThing {
  readonly href: string;
  readonly title: string;
  /** What it is, in a few words. */
  readonly about: string;
  /** Over white and over black; absent for what has no colour. */
  readonly white?: string;
  readonly black?: string;
  /** Its bait; absent for what is none. */
  readonly picture?: TileSources;
}

/** One row. */
export function foundRow({ href, title, about, white, black, picture }: FoundThing): Html {
  const chip =
    white === undefined || black === undefined
      ? html`<span class="found-chip none"></span>`
      : html`<span class="found-chip">${chips([{ overWhite: white, overBlack: black }], '')}</span>`;
  const bait = picture === undefined ? '' : smallBait(picture);
  return html`<li class="found"><a href="${href}"><span class="found-swatch">${bait}${chip}</span><span class="found-name">${title}</span></a><span class="found-about">${about}</span></li>`;
}
