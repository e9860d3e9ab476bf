/**
 * Photos of a bait on the measuring card, and what they tell, on the page *Photograph* and in the dialog of others.
 *
 * @packageDocumentation
 */
import { hexFromLab } from '../../optics/display.ts';
import type { PhotoFlake, PhotoMeasured, PhotoRefused } from '../../photo/photo-measured.ts';
import { type Html, html } from '../../render/html.ts';
import type { MeasuringData } from '../../render/measuring-data.ts';
import { lengthText } from '../../units/length-text.ts';
import { photoDoubtCure, photoDoubtText } from '../../words/photo-doubt.ts';
import { photoFileText } from '../../words/photo-file.ts';
import { noFlakeText, photoFlakeText } from '../../words/photo-flake.ts';
import { photoHidesText } from '../../words/photo-hides.ts';
import { refusalWords } from '../../words/photo-refusal.ts';
import { photoColourText, photoInShort } from '../../words/photo-result.ts';
import { photoWarningText } from '../../words/photo-warning.ts';
import { counted, sentence } from '../../words/sentence-text.ts';
import { LONGEST_NAME } from './camera-name.ts';
import type { FileLines } from './file-lines.ts';
import { baitOf, hasNoCard, isRead, type MeasuredBait, type TakenPhoto } from './taken-photo.ts';
import { halves } from './two-halves.ts';

/** How the photos are shown. */
export interface CardPhotosShown {
  readonly photos: readonly TakenPhoto[];
  readonly camera: string;
  readonly units: MeasuringData['units'];
  /** How many photos are asked for. */
  readonly wanted: number;
  /** The lines for a file; none where the colours go into a field. */
  readonly lines: (bait: PhotoMeasured, camera: string) => readonly FileLines[];
}

/** What is to be done first, and what is being done; the end is told by what is shown. */
export function photosSay({ photos, wanted }: Pick<CardPhotosShown, 'photos' | 'wanted'>): string {
  const waiting = photos.filter(({ answer }) => answer === undefined).length;
  if (waiting > 0) return waiting === 1 ? 'Measuring the photo…' : `Measuring ${waiting} photos…`;
  const measured = baitOf(photos)?.photos ?? 0;
  if (photos.length === 0)
    return wanted === 1 ? '' : `Take ${wanted} photos of the bait on the card: move the card a little for each.`;
  if (measured === 0) return photos.length === 1 ? 'The photo couldn’t be measured.' : 'No photo could be measured.';
  const more = wanted - measured;
  const tells = measured === 1 ? 'Measured from 1 photo.' : `Measured from ${measured} photos, averaged.`;
  return more > 0
    ? `${tells} ${more === 1 ? 'One more' : more === 2 ? 'Two more' : `${more} more`}, with the card moved a little, make it surer.`
    : tells;
}

/** What the photos came to, and each of them below it. */
export function cardPhotosView(shown: CardPhotosShown): Html {
  const { photos } = shown;
  const measured = baitOf(photos);
  return html`${measured === undefined ? '' : measuredView(measured, shown)}${
    photos.length === 0
      ? ''
      : html`<ol class="taken-photos">${photos.map((photo, at) => photoView(photo, at, photos.length > 1, measured && measured.photos > 1 ? measured.bait : undefined))}</ol>`
  }`;
}

function measuredView({ bait, photos }: MeasuredBait, { units, camera, lines }: CardPhotosShown): Html {
  const { overWhite, overBlack, contrast, doubt, widthMm, warnings } = bait;
  const cure = photoDoubtCure(doubt);
  const hex = (lab: typeof overWhite): string | undefined => lab && hexFromLab(lab).hex;
  const [white, black] = [hex(overWhite), hex(overBlack)];
  return html`<section class="measured" aria-labelledby="measured-head"><h3 id="measured-head" tabindex="-1">The colour</h3>
<div class="measured-swatch">${halves(white, black)}</div>
<ul class="measured-colours">${(
    [
      ['Over white', overWhite],
      ['Over black', overBlack],
    ] as const
  ).map(([where, lab]) => (lab === undefined ? '' : html`<li>${where}: ${photoColourText(lab)}</li>`))}</ul>
<p>${contrast === undefined ? '' : html`${sentence(photoHidesText(contrast))}. `}${photoDoubtText(doubt, photos)}.${cure === undefined ? '' : ` ${cure}`}</p>
${warnings.map((warning) => html`<p class="measured-warning">${photoWarningText(warning)}</p>`)}${flakeView(bait, units)}${
  widthMm === undefined ? '' : html`<p>The bait is ${lengthText(Number(widthMm.toFixed(1)), units)} wide.</p>`
}
<p class="field"><label for="measured-camera">Name of the camera</label><input id="measured-camera" type="text" value="${camera}" maxlength="${LONGEST_NAME}" autocomplete="off" data-camera aria-describedby="measured-camera-why"><span class="fine" id="measured-camera-why">What this camera always gets a little wrong is learned under its name. It’s remembered on this device.</span></p>
${lines(bait, camera).map(linesView)}</section>`;
}

function flakeView({ flakes = [], noFlake }: PhotoMeasured, units: MeasuringData['units']): Html {
  if (flakes.length === 0) return noFlake === undefined ? html`` : html`<p>Flake: ${noFlakeText(noFlake)}.</p>`;
  return html`<ul class="measured-flakes">${flakes.map((flake) => flakeItem(flake, units))}</ul>`;
}

function flakeItem(flake: PhotoFlake, units: MeasuringData['units']): Html {
  const { hex } = hexFromLab(flake.lab);
  return html`<li><span class="measured-flake">${halves(hex, hex)}</span><span>Flake ${hex}, ${photoFlakeText(flake, units)}</span></li>`;
}

/** What goes into a file, with a button that copies it. */
function linesView({ name, label, text }: FileLines): Html {
  return html`<div class="measured-lines"><h4 id="lines-${name}">${label}</h4><section class="match-file" tabindex="0" aria-labelledby="lines-${name}"><pre><code data-lines="${name}">${text}</code></pre></section><p><button class="quiet" type="button" data-copy-lines="${name}">Copy<span class="unseen-words"> (${label.replace(/:$/, '')})</span></button></p></div>`;
}

function photoView(photo: TakenPhoto, at: number, several: boolean, mean: PhotoMeasured | undefined): Html {
  const { file, answer, drawing } = photo;
  const name = several ? `Photo ${at + 1}` : 'The photo';
  const says = html`<h3>${name} <span class="fine">${file.name}</span></h3>${answer === undefined ? html`<p>Measuring…</p>` : answerView(photo, mean)}`;
  const picture = isRead(answer)
    ? html`<div class="photo-frame"><canvas id="photo-${at}" data-picture="${at}"${
        drawing === undefined
          ? html` role="img" aria-label="${pictureWords(name, answer.found)}"`
          : html` tabindex="0" role="application" aria-label="${name}. Arrow keys move one end of the line."`
      }></canvas></div>`
    : '';
  return html`<li class="taken-photo" data-photo="${at}">${says}${picture}${drawing === undefined ? '' : lineControls(at, drawing.end)}<p class="photo-buttons">${photoButtons(photo, at, name)}</p></li>`;
}

function pictureWords(name: string, found: PhotoMeasured | PhotoRefused): string {
  return found.kind === 'measured' ? `${name}, with the bait outlined and what was measured of it.` : `${name}.`;
}

function answerView({ answer }: TakenPhoto, mean: PhotoMeasured | undefined): Html {
  if (answer === undefined) return html``;
  if (answer.kind === 'failed')
    return html`<p class="measured-warning">This page couldn’t measure it. Check the connection, and try again.</p>`;
  if (answer.kind === 'unreadable') return html`<p class="measured-warning">${photoFileText(answer.fault)}</p>`;
  const { found } = answer;
  if (found.kind === 'refused') {
    const { what, why, cure } = refusalWords(found);
    return html`<p class="measured-warning"><b>${what}</b> ${why} ${cure}</p>`;
  }
  if (mean === undefined) return html``;
  // Where photos differ by too much it is said by how much, so that the odd one is seen.
  const differ = mean.warnings.includes('photos-differ');
  return html`<p>${sentence(photoInShort(found, differ ? mean : {}))}.</p>`;
}

function lineControls(at: number, end: 0 | 1): Html {
  const choice = (value: 0 | 1, label: string): Html =>
    html`<li><input type="radio" id="line-${at}-${value}" name="line-${at}" value="${value}" data-line-end${value === end ? html` checked` : ''}><label for="line-${at}-${value}">${label}</label></li>`;
  return html`<p>Draw a line along the belly of the bait, from one end to the other: with a finger, or end by end.</p><fieldset class="photo-on"><legend class="unseen-words">End that moves</legend><ul class="choices">${choice(0, 'One end')}${choice(1, 'The other end')}</ul></fieldset>`;
}

function photoButtons(photo: TakenPhoto, at: number, name: string): Html {
  const { answer, drawing } = photo;
  const unseen = html`<span class="unseen-words"> (${name.toLowerCase()})</span>`;
  if (drawing !== undefined)
    return html`<button type="button" id="along-${at}" data-along="${at}">Measure along this line${unseen}</button> <button class="quiet" type="button" data-no-line="${at}">Cancel${unseen}</button>`;
  const again = answer?.kind === 'failed';
  const hasMarks = isRead(answer) && !hasNoCard(photo);
  return html`${again ? html`<button class="quiet" type="button" data-again="${at}">Try again${unseen}</button> ` : ''}${
    hasMarks
      ? html`<button class="quiet" type="button" id="line-of-${at}" data-draw-line="${at}">Show where the bait is${unseen}</button> `
      : ''
  }${hasNoCard(photo) ? html`<button class="quiet" type="button" data-touch-colour="${at}">Touch the colour instead${unseen}</button> ` : ''}${
    answer === undefined
      ? ''
      : html`<button class="quiet" type="button" data-leave-out="${at}">Leave it out${unseen}</button>`
  }`;
}

/** How many photos there are, for who takes a colour from them. */
export function usedPhotosText(photos: number): string {
  return photos === 1 ? 'Use these colours' : `Use the mean of ${counted(photos, 'photo')}`;
}
