import type { Recipe } from '../../book/model/recipe.ts';
import type { Settings } from '../../book/model.ts';
import { inOrderOfCup, type WorkMaterial } from '../../book/recipes/work-material.ts';
import { usualVolume } from '../../units/usual-volume.ts';
import { required } from '../../values/required.ts';
import { dropsText } from '../amount-text.ts';
import { massIn } from '../dose-text.ts';
import { type Html, html } from '../html.ts';
import { unbroken } from '../unbroken.ts';
import { sentence } from '../words.ts';

/** The exact doses of each cup in the usual volume of plastic, apart from the amounts of a batch, so that nobody weighs the wrong one. */
export function doses(
  { cups }: Pick<Recipe, 'cups'>,
  materials: ReadonlyMap<string, WorkMaterial>,
  settings: Settings,
): Html {
  const coloured = cups.filter(({ contents }) => contents.length > 0);
  if (coloured.length === 0) return html``;
  const { ml, text } = usualVolume(settings);
  const title = `Per ${unbroken(text)} of plastic`;
  const groups = coloured.map(({ name: cup, plastics, contents }) => {
    const rows = inOrderOfCup(contents, plastics, (id) => required(materials, id)).map((content) => {
      const { title: name, gramsPerDrop } = required(materials, content.material);
      return html`<tr><th scope="row">${name}</th><td>${unbroken(massIn(content, settings))}</td><td>${gramsPerDrop === undefined ? '–' : unbroken(dropsText((content.gramsPerMl * ml) / gramsPerDrop))}</td></tr>`;
    });
    return html`<tbody>${cups.length > 1 ? html`<tr><th scope="rowgroup" colspan="3">${sentence(cup)}</th></tr>` : ''}${rows}</tbody>`;
  });
  return html`<details class="rates"><summary>${title}</summary><p class="fine">To scale to any amount; not for this batch.</p><table aria-label="${title}"><thead><tr><th scope="col">Material</th><th scope="col">By weight</th><th scope="col">By drops</th></tr></thead>${groups}</table></details>`;
}
