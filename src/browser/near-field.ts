/**
 * The field for a colour to be near to: a chooser, its digits, and a photo.
 *
 * @packageDocumentation
 */
import { hexFromLab } from '../optics/display.ts';
import { colourFromPhotos } from './photo/colour-from-photos.ts';
import type { PhotoAnswer } from './photo/photo-answer.ts';
import { noColour, typedHex } from './typed-hex.ts';

const digitsOf = (form: HTMLFormElement): HTMLInputElement => form.querySelector<HTMLInputElement>('[name="near"]')!;
const chooserOf = (form: HTMLFormElement): HTMLInputElement => form.querySelector<HTMLInputElement>('#near-colour')!;

/** Keeps the chooser and the digits alike, and takes a colour from a photo. */
export function listenToNearField(form: HTMLFormElement, ask: () => void): void {
  const [digits, chooser] = [digitsOf(form), chooserOf(form)];
  chooser.addEventListener('input', () => {
    digits.value = chooser.value;
  });
  form.querySelector('[data-from-photo]')!.addEventListener('click', async () => {
    const found = await colourFromPhotos();
    const hex = found && hexOf(found);
    if (hex === undefined) return;
    digits.value = hex;
    ask();
  });
}

/** The colour to be near to: over white, where it was seen so. */
function hexOf(found: PhotoAnswer): string | undefined {
  if (found.kind === 'touched') return found.hex;
  const lab = found.bait.overWhite ?? found.bait.overBlack;
  return lab && hexFromLab(lab).hex;
}

/** What is wrong with the digits, as a sentence; empty where nothing is. */
function nearFault(form: HTMLFormElement): string {
  const typed = digitsOf(form).value.trim();
  return typed === '' || typedHex(typed) !== undefined ? '' : noColour(typed);
}

/** Shows what the digits say: in the chooser, beside the closed field, and whether they are a colour at all. */
export function showNearField(form: HTMLFormElement): void {
  const [digits, chooser] = [digitsOf(form), chooserOf(form)];
  const hex = typedHex(digits.value);
  if (hex !== undefined) chooser.value = hex;
  const fault = nearFault(form);
  if (fault === '') digits.removeAttribute('aria-invalid');
  else digits.setAttribute('aria-invalid', 'true');
  form.querySelector('[data-near-fault]')!.textContent = fault;
  form.querySelector('[data-near-chosen]')!.textContent = hex ?? (fault === '' ? '' : 'not a colour code');
}
