import type { Recipe } from '../../book/model/recipe.ts';
import type { Settings } from '../../book/model.ts';
import { usualVolume } from '../../units/usual-volume.ts';
import { bookIndex } from '../book-index.ts';
import { colourEntry } from '../colour-entry.ts';
import { massIn } from '../dose-text.ts';
import { type Html, html, joined } from '../html.ts';
import { lineagePicture } from '../lineage-picture.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import { counted, listText, sentence } from '../words.ts';
import { fold } from './fold.ts';
import { relativesAcross, relativesDown } from './relatives-layout.ts';
import { roundChains } from './round-chain.ts';
import { changeText } from './rounds.ts';

function colourLink(context: PageContext, id: string): Html {
  return html`<a href="${link(context, paths.recipe(id))}">${colourEntry(context.book, id)?.title ?? id}</a>`;
}

function relation(context: PageContext, words: string, ids: readonly string[]): Html {
  return ids.length === 0 ? html`` : html`<li>${words} ${joined(ids.map((id) => colourLink(context, id)))}.</li>`;
}

/** A change of dose; `from` and `to` in g per 100 ml. */
function doseText(from: number, to: number, settings: Settings): string {
  const { text } = usualVolume(settings);
  const mass = (per100: number): string => massIn({ gramsPerMl: per100 / 100 }, settings);
  if (from === 0) return `${mass(to)} in ${text}, new`;
  if (to === 0) return `left out (was ${mass(from)} in ${text})`;
  return `${mass(from)} → ${mass(to)} in ${text}`;
}

function changeItem(
  context: PageContext,
  { cup, fromRecipe, fromCup, change }: Recipe['changes'][number],
  several: boolean,
): Html {
  const { materials } = bookIndex(context.book);
  const of = fromCup === cup ? '' : ` (${fromCup})`;
  const doses = change.doses.map(
    ({ material, from, to }) =>
      html`<li>${materials.get(material)?.title ?? material}: ${doseText(from, to, context.book.settings)}</li>`,
  );
  return html`<li><p>${several ? html`<b>${cup}</b> from ` : 'From '}${colourLink(context, fromRecipe)}${of}: ${changeText(change)}.</p>${doses.length === 0 ? '' : html`<details><summary>Dose by dose</summary><ul class="doses">${doses}</ul></details>`}</li>`;
}

/** Whether there is anything to tell of where a recipe comes from. */
function hasLineage(recipe: Recipe): boolean {
  return relativesAcross(recipe).nodes.length > 1 || recipe.cups.some(({ rounds }) => rounds.length > 0);
}

/** What a recipe was made from, what it is for, its rounds, and what was made from it; nothing for one that stands alone. */
export function relativesSection(context: PageContext, recipe: Recipe): Html {
  if (!hasLineage(recipe)) return html``;
  const family = bookIndex(context.book).familyOf.get(recipe.id);
  const { changes, cups } = recipe;
  return fold(
    'lineage',
    'Family',
    gist(context, recipe),
    html`${pictures(context, recipe)}${roundChains(cups)}
${changes.length === 0 ? '' : html`<h3>What changed</h3><ul class="changes">${changes.map((change) => changeItem(context, change, cups.length > 1))}</ul>`}
${family === undefined || family.members.length < 2 ? '' : html`<p><a href="${link(context, paths.family(family.id))}">The whole family of ${family.title}</a></p>`}`,
  );
}

/** What it was made from, and how many were made from it. */
function gist({ book }: PageContext, { parent, cupsFrom, children, cupsIn }: Recipe): string {
  const titleOf = (id: string): string => colourEntry(book, id)?.title ?? id;
  const from = [...new Set([...(parent === undefined ? [] : [parent]), ...cupsFrom])];
  const made = new Set([...children, ...cupsIn]);
  const parts = [
    ...(from.length === 0 ? [] : [`made from ${listText(from.map(titleOf))}`]),
    ...(made.size === 0 ? [] : [`${counted(made.size, 'colour')} made from it`]),
  ];
  return parts.length === 0 ? 'Round by round' : sentence(parts.join('; '));
}

/** The picture for a desk and for a phone, and the same in words. */
function pictures(context: PageContext, recipe: Recipe): Html {
  const layout = relativesAcross(recipe);
  if (layout.nodes.length < 2) return html``;
  const { id: here, title, parent, target, cupsFrom, children, cupsIn } = recipe;
  const label = `Lineage of ${title}`;
  const aim = target === undefined ? undefined : bookIndex(context.book).targets.get(target);
  return html`${lineagePicture(context, layout, label, { here, when: 'wide' })}${lineagePicture(context, relativesDown(recipe), `${label}, downwards`, { here, when: 'narrow' })}
<ul class="relations">${relation(context, 'Made from', parent === undefined ? [] : [parent])}${relation(context, 'Uses a cup from', cupsFrom)}${
    aim === undefined
      ? ''
      : html`<li>Made to match <a href="${link(context, paths.target(aim.id))}">${aim.title}</a>.</li>`
  }${relation(context, 'Made from it:', children)}${relation(context, 'Its cups are used in', cupsIn)}</ul>`;
}
