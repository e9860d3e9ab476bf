import { type Html, html } from '../../render/html.ts';
import { cardPhotosParts } from './card-photos.ts';

/** The dialog in which a colour is taken from a photo: on the measuring card, or without it by touch. */
export function photoView(): Html {
  return html`<h2 id="photo-head">A colour from a photo</h2>
<section aria-label="On the measuring card" data-by-card>${cardPhotosParts()}
<p class="photo-buttons photo-use"><button type="button" data-use-measured hidden></button> <button class="quiet" type="button" data-to-touch>No card? Touch the colour</button> <button class="quiet" type="button" data-photo-close>Close</button></p>
<p class="fine">Photos stay on this device. On the measuring card a bait is measured over white and over black at once.</p></section>
<section aria-label="By touch" data-by-touch hidden>
<p data-photo-says role="status"></p>
<fieldset class="photo-on"><legend class="unseen-words">Tap on</legend><ul class="choices"><li><input type="radio" id="photo-bait" name="photo-on" value="bait" checked><label for="photo-bait">The bait</label></li><li><input type="radio" id="photo-card" name="photo-on" value="card"><label for="photo-card">The white card</label></li></ul></fieldset>
<div class="photo-frame" data-photo-frame hidden><canvas tabindex="0" role="application" aria-label="The photo. Arrow keys move the spot."></canvas><span class="photo-spot" data-spot="bait" hidden></span><span class="photo-spot of-card" data-spot="card" hidden></span></div>
<p class="photo-found"><span class="photo-swatch" data-photo-swatch></span><output data-photo-hex></output></p>
<p class="photo-buttons"><button type="button" data-photo-use disabled>Use this colour</button> <button class="quiet" type="button" data-photo-other>Another photo</button> <button class="quiet" type="button" data-to-card>With the measuring card</button> <button class="quiet" type="button" data-photo-close>Close</button></p>
<p class="fine">A camera sees the light as well as the bait. With a white card beside the bait, tap that too, and the colour is corrected for your light. The measuring card does better. The photo stays on this device.</p>
<input type="file" accept="image/jpeg,image/png,image/webp" aria-label="A photo" data-photo-file hidden></section>`;
}
