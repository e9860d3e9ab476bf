import type { ChipStart } from '../../book/chips/chip-start.ts';
import { dayOf } from '../../book/day-of.ts';
import { html } from '../../render/html.ts';
import type { MeasuringData } from '../../render/measuring-data.ts';
import { pageData } from '../page-data.ts';
import { CardPhotos, cardPhotosParts } from './card-photos.ts';
import { baitLines, chipLines } from './file-lines.ts';
import { Measurer } from './measurer.ts';
import type { PhotoDialog } from './photo-dialog.ts';
import { PhotographedChoice } from './photographed.ts';
import { halves } from './two-halves.ts';

/** A mean of three is the cheapest way to a surer colour. */
const WANTED = 3;

/** The page *Photograph*: photos of a bait in, its colours out, with the lines for a file. */
export function beginPhotograph(part: HTMLElement, data: MeasuringData, dialog: () => PhotoDialog): void {
  const here = part.querySelector<HTMLElement>('[data-card-photos-here]')!;
  const touched = part.querySelector<HTMLElement>('[data-touched]')!;
  here.innerHTML = cardPhotosParts().toString();
  const choice = new PhotographedChoice(
    part.querySelector<HTMLElement>('[data-photo-of]')!,
    pageData<readonly ChipStart[]>('[data-asked-chips]') ?? [],
    () => photos.show(),
  );
  const photos = new CardPhotos(here, data, new Measurer(data.scripts.at(-1)!), {
    lines: (bait, camera) => {
      const { chosen } = choice;
      return chosen === undefined ? baitLines(bait, camera) : chipLines(chosen, bait, camera, dayOf(new Date()));
    },
    wanted: WANTED,
    touchInstead: async (photo) => {
      const found = await dialog().askIn(photo);
      if (found?.kind === 'touched') touched.innerHTML = touchedView(found.hex);
    },
    onChange: () => touched.replaceChildren(),
  });
  photos.begin();
  part.hidden = false;
}

function touchedView(hex: string): string {
  return html`<h3>By touch</h3><div class="measured-swatch">${halves(hex, hex)}</div>
<p><b>${hex}</b>. Without the measuring card nobody can say how far it is off.</p>`.toString();
}
