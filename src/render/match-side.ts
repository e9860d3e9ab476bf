import { type Html, html } from './html.ts';

/** What the page says before anybody has measured a side. */
export const THREE_PHOTOS = 'Three photos on the measuring card say it best.';

/** A side of the target as it is asked for: of the page before its script has begun, and drawn by the script in the same frame. */
export interface MatchSide {
  readonly index: number;
  /** Which side it is; unset where it is the only one. */
  readonly name?: string;
  /** What it looks like; unset: nobody has said. */
  readonly swatch?: Html;
  /** What was measured. */
  readonly says?: string;
  /** The fields in which it is picked or typed. */
  readonly typed?: Html;
}

/** A side of the target: its colour, the button that measures it, and a fold in which it is picked or typed. */
export function matchSide({ index, name, swatch, says = THREE_PHOTOS, typed }: MatchSide): Html {
  const whole = `the ${name ?? 'bait'}`;
  const id = `side-${index}`;
  return html`<fieldset class="match-side" data-side="${index}"><legend>${whole.replace('the', 'The')}</legend>
<div class="match-shot"><div class="match-swatch">${swatch ?? ''}</div><p class="match-shoot"><button type="button" id="${id}-measure" data-photo-for="${id}-white">Photograph ${whole}</button> <span class="match-measured" data-measured-says>${says}</span></p></div>
<details class="match-typed"><summary>Pick or type its colour</summary>${typed ?? ''}</details></fieldset>`;
}
