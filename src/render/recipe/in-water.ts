import type { Recipe, Settings } from '../../book/model.ts';
import { hexWords } from '../../words/colour.ts';
import { type Html, html } from '../html.ts';
import { depthText } from '../length-text.ts';
import { fold } from './fold.ts';

/** What the colours of a water rest on. The figures and their limits are described in `tables/water-types.ts` and `stained-water.ts`. */
export const WATER_SOURCE =
  'Clear, green and turbid: sea water of the types IB, 5C and 9C (Jerlov, Marine Optics, 2nd ed., 1976, table XXVII). Stained: reckoned, the clearest water with the humus of the mean of 30 Finnish and Estonian lakes (Sipelgas et al., Hydrology Research 34:361, 2003). The darkest of those lakes held three times as much, the clearest a tenth. What a river carries as mud is not in it.';

type WaterView = Recipe['water'][number];

/** The body at depth: each water at each depth, and how much of the daylight gets there. */
export function inWater({ water }: Recipe, settings: Pick<Settings, 'volume'>): Html {
  if (water.length === 0) return html``;
  const depths = [...new Set(water.map(({ depthM }) => depthM))];
  const names = [...new Set(water.map(({ water: name }) => name))];
  const rows = names.map((name) => {
    const views = water.filter((view) => view.water === name);
    return html`<tr><th scope="row">${name}${jerlovType(views[0]!.type)}</th>${views.map(
      ({ hex, lightLeft }) =>
        html`<td><svg class="water-swatch" role="img" aria-label="${hexWords(hex)}" width="100%" height="100%"><rect width="100%" height="100%" fill="${hex}"/></svg>${lightText(lightLeft)}</td>`,
    )}</tr>`;
  });
  const deepest = depths.at(-1)!;
  const left = water.filter(({ depthM }) => depthM === deepest).map(({ lightLeft }) => lightLeft);
  return fold(
    'water',
    'In water',
    `At ${depthText(deepest, settings)} ${lightText(Math.max(...left))} to ${lightText(Math.min(...left))} of the light is left`,
    html`<table class="water"><caption>The body at depth, and the daylight that is left there</caption><thead><tr><th scope="col">Water</th>${depths.map((depth) => html`<th scope="col">${depthText(depth, settings)}</th>`)}</tr></thead><tbody>${rows}</tbody></table>
<p class="fine">Lit from above, looked at from close by against the dark; exposed as a camera would, so that a white keeps the colour of the light. Only the way down is counted, and nothing that glows by itself.</p>
<p class="fine">${WATER_SOURCE}</p>`,
  );
}

/** Under the name of a water, the type that it has in Jerlov's table. */
function jerlovType(type: WaterView['type']): Html {
  return type === 'stained' ? html`` : html`<span class="fine water-type">${type}</span>`;
}

/** A share of the light in per cent: no false precision, and never 0 where there is some. */
function lightText(share: number): string {
  const percent = share * 100;
  return `${percent >= 10 ? Math.round(percent) : Number(percent.toPrecision(2))} %`;
}
