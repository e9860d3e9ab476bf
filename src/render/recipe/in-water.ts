import type { Recipe } from '../../book/model/recipe.ts';
import { depthText } from '../../units/length-text.ts';
import { hexWords } from '../../words/colour.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import { inFold } from './fold.ts';

/** The body at depth: each water at each depth, and how much of the daylight gets there. */
export function inWater(context: PageContext, { water }: Recipe): Html {
  const { settings } = context.book;
  if (water.length === 0) return html``;
  const depths = [...new Set(water.map(({ depthM }) => depthM))];
  const names = [...new Set(water.map(({ water: name }) => name))];
  const rows = names.map((name) => {
    const views = water.filter((view) => view.water === name);
    return html`<tr><th scope="row">${name}</th>${views.map(
      ({ hex, lightLeft }) =>
        html`<td><svg class="water-swatch" role="img" aria-label="${hexWords(hex)}"><rect width="100%" height="100%" fill="${hex}"/></svg>${lightText(lightLeft)}</td>`,
    )}</tr>`;
  });
  return inFold(
    'water',
    'In water',
    html`<table class="water"><caption>The body at depth, with the daylight left</caption><thead><tr><th scope="col">Water</th>${depths.map((depth) => html`<th scope="col">${depthText(depth, settings)}</th>`)}</tr></thead><tbody>${rows}</tbody></table>
<p class="fine">Mud and glow are not included. <a href="${link(context, paths.method)}#water">Which waters these are</a></p>`,
  );
}

/** A share of the light in per cent: no false precision, and never 0 where there is some. */
function lightText(share: number): string {
  const percent = share * 100;
  return `${percent >= 10 ? Math.round(percent) : Number(percent.toPrecision(2))} %`;
}
