import { deltaEText, differenceWords } from '../words/difference.ts';
import { type Html, html } from './html.ts';

/** How a colour difference looks, and its size in small letters after it: “just visible, ΔE 1.6”. Unit: ΔE00, >= 0. */
export function differenceView(deltaE: number): Html {
  return html`${differenceWords(deltaE)}, <small>ΔE ${deltaEText(deltaE)}</small>`;
}
