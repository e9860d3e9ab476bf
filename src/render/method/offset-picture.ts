import type { LabAxis, OffsetLine } from '../../book/method/offset-line.ts';
import type { Book } from '../../book/model.ts';
import { titleOnShelf } from '../book-index.ts';
import { ladderText } from '../dose-text.ts';
import { type Html, html } from '../html.ts';
import { fixed } from '../spectrum-graph.ts';
import { listText } from '../words.ts';

const WIDTH = 330;
const [LEFT, RIGHT, HEAD, FOOT, HEIGHT] = [6, 70, 22, 42, 222];

const WORDS: Readonly<Record<LabAxis, readonly [more: string, less: string]>> = {
  L: ['lighter', 'darker'],
  a: ['redder', 'greener'],
  b: ['yellower', 'bluer'],
};

/** A prediction is the model and what the nearest looks say, and the doubt grows away from them. */
export function offsetPicture(book: Book, { material, axis, beside, steps, seen }: OffsetLine): Html {
  const { settings } = book;
  const top = Math.max(...steps.map(({ high }) => high), ...seen.map(({ more }) => more), 0);
  const bottom = Math.min(...steps.map(({ low }) => low), ...seen.map(({ more }) => more), 0);
  const [first, last] = [steps[0]!, steps.at(-1)!];
  const x = (gramsPerMl: number): number =>
    LEFT +
    ((WIDTH - LEFT - RIGHT) * Math.log(gramsPerMl / first.gramsPerMl)) / Math.log(last.gramsPerMl / first.gramsPerMl);
  const y = (more: number): number => HEAD + ((HEIGHT - HEAD - FOOT) * (top - more)) / (top - bottom);
  const at = (gramsPerMl: number, more: number): string => `${fixed(x(gramsPerMl))},${fixed(y(more))}`;
  const [more, less] = WORDS[axis];
  const dose = (step: { readonly gramsPerMl: number }): string => ladderText(step, settings, material);
  const others = beside.map(({ material: id }) => titleOnShelf(book, id));
  const cup = others.length === 0 ? material.title : `${material.title}, with ${listText(others)}`;
  const doses = listText(seen.map(dose));
  const name = Math.abs(y(last.more) - y(0)) < 15 ? y(0) + (last.more >= 0 ? -15 : 15) : y(last.more);
  const area = [
    ...steps.map((step) => at(step.gramsPerMl, step.high)),
    ...steps.map((step) => at(step.gramsPerMl, step.low)).reverse(),
  ];
  return html`<figure class="method-figure"><svg class="graph" role="img" aria-labelledby="offset-title offset-desc" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}"><title id="offset-title">${cup}: what the nearest looks add to the model, over the dose of ${material.title}</title><desc id="offset-desc">The line of what is believed leaves that of the model towards what was seen, and comes back to it far away; the band of nine in ten is narrowest near what was seen.</desc>
<polygon class="graph-band narrow" points="${area.join(' ')}"/><path class="graph-line dashed" d="M${LEFT} ${fixed(y(0))}H${WIDTH - RIGHT}"/><polyline class="graph-line" points="${steps.map((step) => at(step.gramsPerMl, step.more)).join(' ')}"/>
${seen.map((look) => html`<circle class="graph-dot" cx="${fixed(x(look.gramsPerMl))}" cy="${fixed(y(look.more))}" r="4.5"/>`)}
<text class="graph-name" x="${WIDTH - RIGHT + 6}" y="${fixed(y(0) + 4)}">the model</text><text class="graph-name" x="${WIDTH - RIGHT + 6}" y="${fixed(name + 4)}">believed</text>
<text class="graph-scale" x="${LEFT}" y="12">${more}</text><text class="graph-scale" x="${LEFT}" y="${HEIGHT - FOOT + 16}">${less}</text><text class="graph-scale" x="${LEFT}" y="${HEIGHT - 4}">${dose(first)}</text><text class="graph-scale" x="${WIDTH - RIGHT}" y="${HEIGHT - 4}" text-anchor="end">${dose(last)}</text></svg><figcaption>${cup}, from ${dose(first)} to ${dose(last)}. The ${seen.length === 1 ? 'dot is a look' : 'dots are looks'}, at ${doses}. Near ${seen.length === 1 ? 'it' : 'them'} the book leans towards what was seen, not all the way, since a look may be off too; far away it goes by the model alone, and the band of nine in ten is wider.</figcaption></figure>`;
}
