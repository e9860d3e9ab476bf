import type { Pattern } from '../book/model.ts';
import { OPACITY_CLASSES } from '../tables/opacity-classes.ts';
import { type Html, html } from './html.ts';
import { PATTERN_WORDS } from './words.ts';

/** What the words under the names of colours mean, folded: how much a body hides, and the patterns that the colours have. */
export function wordsUnderNames(colours: readonly { readonly pattern: Pattern }[]): Html {
  const patterns = new Set(colours.map(({ pattern }) => pattern));
  const words = [
    ...OPACITY_CLASSES.map(({ word, meaning }) => [word, meaning]),
    ...Object.entries(PATTERN_WORDS).filter(([pattern]) => patterns.has(pattern as Pattern)),
  ];
  return html`<details class="words-under"><summary>Key to the words</summary><dl>${words.map(([word, meaning]) => html`<div><dt>${word}</dt><dd>${meaning}</dd></div>`)}</dl></details>`;
}
