import type { OrderOfWork } from '../book/recipes/order-of-work.ts';
import type { StepWords } from '../patterns/pattern.ts';
import { type WorkNames, workWords } from '../words/order-of-work.ts';
import { type Html, html } from './html.ts';
import { stepHtml } from './step-html.ts';
import { sentence } from './words.ts';

/** The order of work as a list of steps, those of each of several cups in a list of its own. */
export function orderView(work: OrderOfWork, names: WorkNames): Html {
  const { before, cups, filling } = workWords(work, names);
  const items = (steps: readonly StepWords[]): readonly Html[] => steps.map((step) => html`<li>${stepHtml(step)}</li>`);
  const made =
    cups.length === 1
      ? items(cups[0]!.steps)
      : cups.map(({ cup, steps }) => html`<li><b>${sentence(cup)}</b><ol class="cup-steps">${items(steps)}</ol></li>`);
  return html`<ol class="steps">${items(before)}${made}${items(filling)}</ol>`;
}
