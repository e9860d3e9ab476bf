import type { PhotoWarning } from '../photo/photo-measured.ts';

const WORDS: Readonly<Record<PhotoWarning, string>> = {
  'mixed-light':
    'Light of two colours falls on the card. Switch one lamp off, or draw the curtain, and the colour gets surer.',
  shadow: 'A shadow lies on the card. Step aside, or turn the card, and the colour gets surer.',
  'fine-texture':
    'Something in the plastic is too fine for this photo, such as fine flake or pearl. What you get is the colour of plastic and flake together.',
  'one-half':
    'The bait was seen on one half of the card only, so nothing can be said of how well it hides. Lay it across the seam to get both.',
  'photos-differ': 'These photos differ by more than they should. Are they all of one bait? Leave out the odd one.',
};

/** What makes a measurement less sure, with what to do: one or two sentences. */
export function photoWarningText(warning: PhotoWarning): string {
  return WORDS[warning];
}
