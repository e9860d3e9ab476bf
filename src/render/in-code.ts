import { type Html, html } from './html.ts';

/** Words in which what is to be written stands between backticks, that set as code. */
export function inCode(words: string): readonly Html[] {
  return words.split('`').map((part, index) => (index % 2 === 0 ? html`${part}` : html`<code>${part}</code>`));
}
