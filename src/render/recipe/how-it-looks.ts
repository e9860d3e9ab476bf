import type { FlakeLook } from '../../book/model/cup.ts';
import type { Recipe } from '../../book/model/recipe.ts';
import type { Settings } from '../../book/model.ts';
import { lengthText } from '../../units/length-text.ts';
import { required } from '../../values/required.ts';
import { cupContrastText } from '../../words/cup-contrast.ts';
import { allFlakeText, flakesABaitText, seenFlakeText } from '../../words/flake.ts';
import { bookIndex } from '../book-index.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import { opacityWords } from '../opacity-words.ts';
import type { PageContext } from '../page.ts';
import { hidesText, sentence } from '../words.ts';
import { inFold } from './fold.ts';

/** How a recipe looks, in words and numbers: what its parts hide, how its cups stand apart, what its flake does. */
export function howItLooks(context: PageContext, recipe: Recipe): Html {
  const { body, thin, contrast, cups, target } = recipe;
  const { materials, molds, targets } = bookIndex(context.book);
  const mold = required(molds, recipe.mold);
  const mapped = [body, thin, ...(recipe.other === undefined ? [] : [recipe.other])].some(
    ({ overWhite, overBlack }) => overWhite.mapped || overBlack.mapped,
  );
  const length = (mm: number): string => lengthText(mm, context.book.settings);
  const hidden = cups.filter((cup) => cup.hidingMm !== undefined);
  return inFold(
    'looks',
    'How it looks',
    html`<dl class="facts stacked">
<div><dt>Body, ${length(mold.bodyMm)}</dt><dd>${sentence(opacityWords(body))}. <span class="fine">Hides ${hidesText(body.contrastRatio)}</span></dd></div>
<div><dt>${sentence(mold.thinPart)}, ${length(mold.thinMm)}</dt><dd>${sentence(opacityWords(thin))}. <span class="fine">Hides ${hidesText(thin.contrastRatio)}</span></dd></div>
${hidden.map((cup) => html`<div><dt>${cups.length > 1 ? `${sentence(cup.name)} fully opaque at` : 'Fully opaque at'}</dt><dd>${hidingText(cup.hidingMm!, context.book.settings)}</dd></div>`)}
${contrast === undefined ? '' : html`<div><dt>Between the cups</dt><dd>${cupContrastText(recipe.pattern, contrast)}</dd></div>`}
${cups.map(({ name, flakes }) => html`${flakes.map((flake) => html`<div><dt>${materials.get(flake.material)?.title ?? flake.material}</dt><dd>${sentence(seenFlakeText(flake))}; ${flakesABaitText(flake.perBait)}, ${length(Number(flake.spacingMm.toFixed(1)))} apart${tooDeep(flake)}</dd></div>`)}${flakes.length < 2 ? '' : html`<div><dt>${cups.length > 1 ? `${sentence(name)}, all its flake` : 'All its flake'}</dt><dd>${sentence(allFlakeText(flakes))}</dd></div>`}`)}
${target === undefined || !targets.has(target) ? '' : html`<div><dt>Made to match</dt><dd><a href="${link(context, paths.target(target))}">${required(targets, target).title}</a></dd></div>`}
</dl>
${mapped ? html`<p class="fine">No screen can show this colour fully: this is the closest it gets.</p>` : ''}`,
  );
}

/** What of the flake lies too deep to be seen, where that is worth a word. */
function tooDeep({ seen, coverage }: FlakeLook): Html | string {
  if (coverage - seen < 0.02) return '';
  return html`. <span class="fine">With what lies too deep to see: ${Math.round(coverage * 100)} %</span>`;
}

/** A thickness beyond which hiding says nothing more of a bait, mm. */
const MOST_HIDING = 100;

function hidingText(mm: number, settings: Settings): string {
  if (mm >= MOST_HIDING) return `more than ${lengthText(MOST_HIDING, settings)}`;
  return lengthText(Number(mm.toFixed(mm < 10 ? 1 : 0)), settings);
}
