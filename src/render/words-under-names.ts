import { PATTERN_NAMES, PATTERNS, type Pattern } from '../patterns/patterns.ts';
import { OPACITY_CLASSES } from '../tables/opacity-classes.ts';
import { type Html, html } from './html.ts';

/**
 * What the words under the names of colours mean, folded: how much a body hides, and the patterns that the colours have.
 *
 * @param more what else the page has to tell, before them
 */
export function wordsUnderNames(
  colours: readonly { readonly pattern: Pattern }[],
  more: readonly (readonly [word: string, meaning: string])[] = [],
): Html {
  const patterns = new Set(colours.map(({ pattern }) => pattern));
  const words = [
    ...more,
    ...OPACITY_CLASSES.map(({ said, meaning }) => [said, meaning]),
    ...PATTERN_NAMES.filter((name) => patterns.has(name)).map((name) => [name, PATTERNS[name].means]),
  ];
  return html`<details class="words-under"><summary>Key to the words</summary><dl>${words.map(([word, meaning]) => html`<div><dt>${word}</dt><dd>${meaning}</dd></div>`)}</dl></details>`;
}
