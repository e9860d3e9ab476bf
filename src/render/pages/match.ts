import { matchCupMl, matchPlastic } from '../../book/match/match-cup.ts';
import type { Edition } from '../../book/model/publish.ts';
import type { Material, Mold } from '../../book/model/shelf.ts';
import type { Target } from '../../book/model/target.ts';
import type { Book, Settings } from '../../book/model.ts';
import { MATERIAL_KINDS } from '../../kinds/kinds.ts';
import { lengthText } from '../../units/length-text.ts';
import { volumeInField } from '../../units/volume-field.ts';
import { defined } from '../../values/defined.ts';
import { MEASURED_TOGETHER } from '../../words/amount.ts';
import { VERDICT_WORDS } from '../../words/verdict.ts';
import { cautionsBlock } from '../cautions.ts';
import { document } from '../document.ts';
import { embeddedJson, type Html, html } from '../html.ts';
import { learnedPath } from '../learned-file.ts';
import { link, paths } from '../links.ts';
import { matchSide } from '../match-side.ts';
import { measuringData } from '../measuring-data.ts';
import type { PageContext, PageKind } from '../page.ts';
import { type PlannedCut, plannedCut } from '../planner-data.ts';
import { roomCheckFold, roomCheckText } from '../room-check.ts';
import { dot } from '../swatch/chip.ts';

/** A material as the Match page needs it. */
export type MatchPageMaterial = Pick<
  Material,
  | 'id'
  | 'title'
  | 'kind'
  | 'use'
  | 'effect'
  | 'milky'
  | 'hex'
  | 'constants'
  | 'flake'
  | 'density'
  | 'expectedDeltaE'
  | 'gramsPerMl'
  | 'gramsPerDrop'
  | 'price'
  | 'packGrams'
  | 'stockGrams'
  | 'highest'
  | 'bears'
  | 'most'
  | 'typical'
  | 'working'
> & { readonly cuts?: readonly PlannedCut[] };

/** A mold as the Match page needs it. */
export interface MatchPageMold
  extends Pick<Mold, 'id' | 'title' | 'bodyMm' | 'thinMm' | 'gateMm' | 'cavityMl' | 'method'> {
  /** What one pour or shot takes, all cavities and the sprue, ml. */
  readonly shotMl: number;
}

/** What the Match page knows of the book. */
export interface MatchPageData {
  readonly materials: readonly MatchPageMaterial[];
  readonly molds: readonly MatchPageMold[];
  readonly targets: readonly Pick<
    Target,
    'id' | 'title' | 'mold' | 'tolerance' | 'parts' | 'apart' | 'flakes' | 'effect'
  >[];
  readonly settings: Settings;
  readonly optics: Book['optics'];
  /** Numbers of the cameras that the book has learned from, by their names; only in the maker's edition. */
  readonly cameras?: Book['cameraNumbers'];
  /** Whether stock and prices are known, and are for who looks at them. */
  readonly edition: Edition;
  /** The plastic that a cup begins with, unless another is chosen. */
  readonly plastic: string;
  /** How much of it, ml. */
  readonly plasticMl: number;
  /** Names of the recipes that there are, so that a new one gets another. */
  readonly recipes: readonly string[];
}

/** With what the book's looks have taught, which the page loads when it is asked for. */
export interface TaughtMatchData extends MatchPageData {
  readonly learned: Book['learned'];
}

/** Whether there is anything to match with: a plastic and a mold. */
export function canMatch(book: Book): boolean {
  return matchPlastic(book) !== undefined && book.molds.length > 0;
}

function matchMaterial(material: Material): MatchPageMaterial {
  const { id, title, kind, hex, constants, flake, density, expectedDeltaE, gramsPerMl } = material;
  const { gramsPerDrop, price, packGrams, stockGrams, highest, bears, most, typical, working } = material;
  const { use, effect, milky } = material;
  const kept = {
    use,
    effect,
    milky,
    gramsPerDrop,
    price,
    packGrams,
    stockGrams,
    highest,
    bears,
    most,
    typical,
    working,
  };
  return {
    id,
    title,
    kind,
    hex,
    density,
    expectedDeltaE,
    gramsPerMl,
    ...defined({ constants, flake, ...kept, cuts: material.cuts?.map(plannedCut) }),
  };
}

/** What the Match page is given; undefined where nothing can be matched. */
export function matchPageData(book: Book): MatchPageData | undefined {
  const { materials, molds, targets, settings, optics, edition, recipes } = book;
  const plastic = matchPlastic(book);
  if (plastic === undefined || !canMatch(book)) return undefined;
  return {
    materials: materials.map(matchMaterial),
    molds: molds.map(({ id, title, bodyMm, thinMm, gateMm, cavities, cavityMl, sprueMl, method }) => ({
      id,
      title,
      bodyMm,
      thinMm,
      ...defined({ gateMm, method }),
      cavityMl,
      shotMl: cavities * cavityMl + sprueMl,
    })),
    targets: targets.map(({ id, title, mold, tolerance, parts, apart, flakes, effect }) => ({
      id,
      title,
      ...defined({ mold }),
      tolerance,
      parts,
      ...defined({ apart, effect }),
      flakes,
    })),
    settings,
    optics,
    ...defined({ cameras: book.cameraNumbers }),
    edition,
    plastic,
    plasticMl: matchCupMl(settings),
    recipes: recipes.map(({ id }) => id),
  };
}

/** Matching in the browser: a target, a shelf, rounds, and a recipe to take away. */
export const matchPage: PageKind = {
  kind: 'match',
  items: () => [''],
  url: () => paths.match,
  render: (context) => {
    const { book } = context;
    const data = matchPageData(book);
    return document(context, {
      title: 'Match a colour',
      description:
        'From the bait in your hand to a cup that matches it: a first recipe, what is wrong with a round, and what to add now.',
      part: paths.match,
      scripts: data ? ['match'] : [],
      main: html`<h1 class="match-title">Match a colour</h1>
${data ? html`${matchForm(data, context)}${roomCheckFold(context)}<script type="application/json" data-match-data>${embeddedJson(data)}</script>${measuringData(context)}` : html`<p>Nothing to match with yet: the book needs a plastic and a mold.</p>`}
<p class="only-static">From the bait in your hand to a cup that matches it: a recipe from your shelf, a verdict on every round, and what to add now. This page needs JavaScript. It works in this browser alone and sends nothing anywhere. Without it, each target has a page of its own, and the command <code>cupbook match</code> does the same work.</p>
${data ? roomCheckText() : ''}`,
    });
  },
};

/** Kinds of bait, as they are asked for. */
const KINDS = [
  ['solid', 'One colour', 'one cup'],
  ['together', 'Two sides', 'of a finished bait'],
  ['apart', 'Two halves', 'cut apart'],
] as const;

/** What the solver needs that the page hasn't loaded, in its order. */
function solverFiles(context: PageContext): string {
  const { match, solver } = context.assets.scripts;
  const files = solver.filter((file) => !match.includes(file));
  return files.map((file) => link(context, file)).join(' ');
}

function matchForm(data: MatchPageData, context: PageContext): Html {
  const { materials, molds, targets, settings } = data;
  const plastics = materials.filter(({ kind }) => kind === 'plastic');
  const coloured = materials.filter(({ kind, constants }) => MATERIAL_KINDS[kind].colours && constants);
  return html`<div class="match" data-match data-learned="${link(context, learnedPath(context.book))}" data-solver="${solverFiles(context)}" inert>
<div class="match-strip"><p class="match-says" role="status" data-says></p></div><p class="unseen-words" role="status" data-heard></p>
<div data-cups></div>
<details class="match-setup" data-setup open><summary>The target, the cup and the shelf</summary>
<section class="part match-step" data-step="target" aria-labelledby="match-target"><h2 id="match-target" tabindex="-1">What should the bait look like?</h2>
<div class="match-kinds" role="group" aria-label="Kind of bait">${KINDS.map(([kind, words, more], at) => html`<button class="quiet" type="button" data-kind="${kind}" aria-pressed="${at === 0 ? 'true' : 'false'}"><b>${words}</b> <span>${more}</span></button>`)}</div>
<div class="match-sides" data-sides>${matchSide({ index: 0 })}</div>
<div data-sides-question></div>
<p class="field wide match-which"><label for="match-which">Or a target of this book</label><select id="match-which" name="target"><option value="">None: this one is new</option>${targets.map(({ id, title }) => html`<option value="${id}">${title}</option>`)}</select></p>
<p class="match-buttons match-bar"><button type="button" data-go="cup">Next: the cup</button></p>
</section>
<section class="part match-step" data-step="cup" aria-labelledby="match-cup" hidden><h2 id="match-cup" tabindex="-1">What do you pour?</h2>
<div class="match-fields">
<p class="field wide"><label for="match-mold">Mold</label><select id="match-mold" name="mold">${molds.map(({ id, title, bodyMm }) => html`<option value="${id}">${title}, ${lengthText(bodyMm, settings)}</option>`)}</select></p>
<p class="field wide"><label for="match-plastic">Plastic</label><select id="match-plastic" name="plastic">${plastics.map(({ id, title }) => html`<option value="${id}">${title}</option>`)}</select></p>
<p class="field"><label for="match-ml">Cup size, ${settings.volume}</label><input id="match-ml" name="plasticMl" type="text" inputmode="decimal" autocomplete="off" value="${volumeInField(data.plasticMl, settings)}"></p>
<p class="field"><label for="match-tolerance">Close enough (ΔE)</label><input id="match-tolerance" name="tolerance" type="text" inputmode="decimal" autocomplete="off" value="${settings.tolerance}"></p>
</div>
<details class="match-shelf"><summary>On your shelf: <span data-shelf-count>${coloured.length} of ${coloured.length}</span></summary>
${data.edition === 'mine' ? html`<p class="check"><input id="match-stock" name="inStock" type="checkbox"><label for="match-stock">In stock only, less what this match has taken (no stock figure counts as in stock)</label></p>\n` : ''}<ul class="checks">${coloured.map(({ id, title, hex, stockGrams }) => html`<li class="check"><input id="shelf-${id}" type="checkbox" name="shelf" value="${id}" checked><label for="shelf-${id}">${dot(hex)}<span>${title}${stockGrams === 0 ? html`<span class="fine">, none left</span>` : ''}</span></label></li>`)}</ul>
</details>
<p class="match-buttons match-bar"><button type="button" data-find>Find recipes</button> <button class="quiet" type="button" data-plain>Start with plain plastic</button> <button class="quiet match-back" type="button" data-go="target">Change the target</button></p>
</section>
<section class="part match-step" data-step="first" aria-labelledby="match-first" hidden><h2 id="match-first" tabindex="-1">A first recipe</h2>
<div data-first></div>
<p class="match-buttons"><button class="quiet match-back" type="button" data-go="cup">Change the cup</button> <button class="quiet match-back" type="button" data-go="target">Change the target</button></p>
</section>
</details>
<details class="match-words"><summary>What the words mean</summary><p>${VERDICT_WORDS.join(' ')}</p>${settings.scaleGrams === undefined ? '' : html`<p>${MEASURED_TOGETHER}</p>`}</details>
${cautionsBlock(context)}
<section class="part" aria-labelledby="match-take" data-take-away hidden><h2 id="match-take" tabindex="-1">Save it</h2>
<p class="field wide"><label for="match-title">Name of the colour</label><input id="match-title" name="title" type="text" maxlength="120" autocomplete="off"></p>
<p class="match-buttons"><button type="button" data-save>Save the recipe</button></p>
<p class="fine" data-file-name></p>
<details class="match-files"><summary>The files, to look at or copy</summary>
<div class="match-take"><p class="match-buttons"><button class="quiet" type="button" data-download="recipe">Download the recipe</button> <button class="quiet" type="button" data-copy="recipe">Copy the recipe</button></p><section class="match-file" tabindex="0" aria-label="The recipe’s file"><pre><code data-file="recipe"></code></pre></section></div>
<div class="match-take" data-take-target hidden><p class="match-buttons"><button class="quiet" type="button" data-download="target">Download its target</button> <button class="quiet" type="button" data-copy="target">Copy its target</button></p><section class="match-file" tabindex="0" aria-label="The target’s file"><pre><code data-file="target"></code></pre></section></div>
</details></section>
<section class="part" aria-labelledby="match-work"><h2 id="match-work">This match</h2>
<p>It is kept in this browser after every step, and nowhere else. It’s still here after a reload or when your phone has slept.</p>
<p class="match-buttons"><button class="quiet" type="button" data-export>Export</button> <button class="quiet" type="button" data-import>Import</button> <button class="quiet" type="button" data-clear>New match</button></p>
<input type="file" accept="application/json,.json" aria-label="An exported match" data-import-file hidden>
</section>
</div>`;
}
