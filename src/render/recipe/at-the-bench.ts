/**
 * One cup a screen, in letters for whoever stands over a hot pot: the empty frame, which `src/browser/bench.ts` fills from the amounts of the page.
 *
 * @packageDocumentation
 */
import type { Cup } from '../../book/model/cup.ts';
import { heatOf } from '../../book/recipes/heat-of.ts';
import { BURNT_LINE, SMOKING_LINE } from '../../words/first-aid.ts';
import { bookIndex } from '../book-index.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import { heatPlate } from './heat-plate.ts';

/** What opens it; only a script can. */
export function benchButton(): Html {
  return html`<p class="bench-open" data-bench-open hidden><button class="quiet" type="button">At the bench</button></p>`;
}

/** @param cups those whose heat their amounts don't state */
export function atTheBench(context: PageContext, cups: readonly Cup[]): Html {
  const { book } = context;
  const { materials } = bookIndex(book);
  const title = (id: string): string => materials.get(id)?.title ?? id;
  const heats = cups.map((cup) => {
    const heat = heatOf([cup], (material) => materials.get(material));
    return html`<div data-bench-heat="${cup.name}" hidden>${heatPlate(heat, book.settings, title)}</div>`;
  });
  return html`<dialog class="bench" id="bench" data-bench aria-label="At the bench">
<div class="bench-top">
<div data-bench-heats>${heats}<div class="heat-plate" data-bench-heat-said hidden></div></div>
<div class="bench-bar"><button class="quiet" type="button" aria-expanded="false" aria-controls="bench-aid" data-bench-aid>First aid</button><span class="bench-lit fine" data-bench-lit></span><button class="quiet" type="button" data-bench-leave>Leave</button></div>
</div>
<div class="bench-cup" data-bench-cup>
<div class="bench-aid" id="bench-aid" role="group" aria-label="First aid" tabindex="-1" hidden><p><b>${BURNT_LINE}</b></p><p>${SMOKING_LINE}</p><p><a href="${link(context, paths.firstAid('burn'))}">All first aid</a></p></div>
<h2 class="bench-name" tabindex="-1" data-bench-name>At the bench</h2>
<p class="bench-place" data-bench-place></p>
<fieldset class="bench-by" data-bench-by><legend class="unseen-words">Measure with</legend><label><input type="radio" name="bench-by" value="spoons" checked> Drops and spoons</label><label><input type="radio" name="bench-by" value="scale"> A scale</label></fieldset>
<p data-bench-unweighable hidden>Some of this cup is too little for your scale: use the drops and spoons here.</p>
<ul class="bench-rows" data-bench-rows></ul>
<p><button class="quiet" type="button" data-bench-again>Untick this cup</button></p>
<div data-bench-notes></div>
<details class="bench-steps" data-bench-steps hidden><summary>Order of work</summary></details>
<p class="fine" data-bench-awake></p>
<p class="fine">Hot vinyl burns and gives off fumes: <a href="${link(context, paths.care)}">read the cautions</a> before you heat any.</p>
</div>
<div class="bench-foot">
<div class="bench-timer" role="group" aria-label="Timer"><b class="bench-time" role="timer" data-bench-time>0:00</b><select aria-label="Ring" data-bench-ring autocomplete="off"><option value="0">No ring</option></select><span class="bench-run"><button type="button" data-bench-run>Start</button><button class="quiet" type="button" data-bench-zero>Reset</button></span></div>
<p class="bench-up" role="alert" data-bench-up></p>
<div class="bench-turn" data-bench-turn><button class="quiet" type="button" data-bench-back>Previous cup</button><button class="quiet" type="button" data-bench-next>Next cup</button></div>
</div>
<p class="unseen-words" role="status" data-bench-says></p>
</dialog>`;
}
