import type { StepWords } from '../patterns/pattern.ts';
import { type Html, html } from './html.ts';

/** A step with the names of its cups in strong letters. */
export function stepHtml(step: StepWords): Html {
  return html`${step.map((part) => (typeof part === 'string' ? part : html`<b>${part.cup}</b>`))}`;
}
