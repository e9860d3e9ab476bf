/**
 * The field for a colour to be near to: a chooser, its digits, and a photo.
 *
 * @packageDocumentation
 */
import { colourFromPhoto } from './photo/photo-dialog.ts';
import { typedHex } from './typed-hex.ts';

const digitsOf = (form: HTMLFormElement): HTMLInputElement => form.querySelector<HTMLInputElement>('[name="near"]')!;
const chooserOf = (form: HTMLFormElement): HTMLInputElement => form.querySelector<HTMLInputElement>('#near-colour')!;

/** Keeps the chooser and the digits alike, and takes a colour from a photo. */
export function listenToNearField(form: HTMLFormElement, ask: () => void): void {
  const [digits, chooser] = [digitsOf(form), chooserOf(form)];
  chooser.addEventListener('input', () => {
    digits.value = chooser.value;
  });
  form.querySelector('[data-from-photo]')!.addEventListener('click', async () => {
    const hex = await colourFromPhoto();
    if (hex === undefined) return;
    digits.value = hex;
    ask();
  });
}

/** Shows what the digits say: in the chooser, beside the closed field, and whether they are a colour at all. */
export function showNearField(form: HTMLFormElement): void {
  const [digits, chooser] = [digitsOf(form), chooserOf(form)];
  const hex = typedHex(digits.value);
  if (hex !== undefined) chooser.value = hex;
  const wrong = hex === undefined && digits.value.trim() !== '';
  if (wrong) digits.setAttribute('aria-invalid', 'true');
  else digits.removeAttribute('aria-invalid');
  form.querySelector('[data-near-chosen]')!.textContent = hex ?? (wrong ? 'no colour: # and six digits' : '');
}
