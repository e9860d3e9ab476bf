import { photoCardText } from '../../words/photo-card.ts';
import { type AskedChip, askedChips } from '../asked-chips.ts';
import { document } from '../document.ts';
import { embeddedJson, type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import { measuringData } from '../measuring-data.ts';
import type { PageKind } from '../page.ts';

/** Measuring a bait by photos of it on the measuring card, in the browser. */
export const photographPage: PageKind = {
  kind: 'photograph',
  items: () => [''],
  url: () => paths.photograph,
  render: (context) => {
    const asked = askedChips(context.book);
    return document(context, {
      title: 'Photograph',
      description:
        'Measure a bait by a photo of it on the measuring card: its colour over white and over black, how much it hides, its flake.',
      part: paths.photograph,
      scripts: ['photograph'],
      main: html`<h1>Photograph</h1>
<p class="lead">Lay a bait on the <a href="${link(context, paths.measuringCard)}">measuring card</a> and take a photo. The book tells its colour over white and over black, how much it hides, its flake, and how sure all that is.</p>
<ol class="photo-steps"><li>Lay the bait along the window, as much of it on white as on black.</li><li>Light it evenly: by a window, without the flash and without two kinds of lamp.</li><li>Hold the phone flat above the card, with all four corner marks in the picture.</li><li>Take three photos, and turn or move the card a little for each.</li></ol>
<p class="only-static">This page needs JavaScript. Without it, the command <code>cupbook photo PHOTO</code> does the same work.</p>
<section class="part photograph awaited" aria-labelledby="photograph-head" data-photograph hidden><h2 id="photograph-head">Your photos</h2>
${photographedChoice(asked)}
<div data-card-photos-here></div>
<div data-touched></div>
<p class="fine">Photos are measured on this device. Nothing is sent anywhere, and the page keeps none.${context.book.edition === 'mine' ? ` ${photoCardText(context.book.measuringCard, 'book.md')}` : ''}</p>
</section>
${measuringData(context)}<script type="application/json" data-asked-chips>${embeddedJson(asked.map(({ start }) => start))}</script>`,
    });
  },
};

/** What is in the photos: the lines for a file go by it. */
function photographedChoice(asked: readonly AskedChip[]): Html {
  return html`<div class="match-fields" data-photo-of><p class="field wide"><label for="photo-of">What is in the photos</label><select id="photo-of"><option value="bait">A bait or a test pour</option>${asked.map(({ says }, at) => html`<option value="chip-${at + 1}">Chip: ${says}</option>`)}<option value="product">A chip for a material’s file</option></select></p>
<div class="match-fields" data-of-product hidden><p class="field"><label for="photo-dose">Dose of the chip</label><input id="photo-dose" type="text" name="dose" value="2 drops per 100 ml" maxlength="60" autocomplete="off"></p><p class="field"><label for="photo-thickness">Thickness</label><input id="photo-thickness" type="text" name="thickness" value="6 mm" maxlength="20" autocomplete="off"></p></div></div>`;
}
