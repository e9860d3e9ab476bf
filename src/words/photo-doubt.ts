import type { DoubtTerm, PhotoDoubt } from '../photo/photo-measured.ts';
import { deltaEText } from './difference.ts';
import { counted } from './sentence-text.ts';

/** What most of a doubt is made of, as the end of a sentence. */
const LARGEST: Readonly<Record<DoubtTerm, string>> = {
  tone: 'how this phone bends light and dark',
  paper: 'how white your paper really is',
  camera: 'how this phone sees colours, which isn’t how you do',
  field: 'light that falls unevenly on the card',
  mixed: 'light of two colours',
  own: 'the bait, which isn’t the same all over',
  clip: 'the brightest parts, which the photo cuts off',
};

/** What would make it less; of the others nothing that a maker could do is known. */
const CURES: Readonly<Partial<Record<DoubtTerm, string>>> = {
  tone: 'Certify your measuring card once, and every photo gets surer.',
  paper: 'Certify your measuring card once, and every photo gets surer.',
  field: 'Turn the card so that light falls evenly on it, by a window best.',
  mixed: 'Use one light only.',
  own: 'Two more photos, of other places of the bait, make it surer.',
  clip: 'A slightly darker photo makes it surer.',
};

/**
 * How far measured colours may be off, and what most of that is.
 *
 * @param photos how many photos they are the mean of
 *
 * @example photoDoubtText({ bound: 8, largest: 'tone' }) // 'Nine in ten photos like this are within ΔE 8; most of that is how this phone bends light and dark'
 */
export function photoDoubtText({ bound, largest }: Pick<PhotoDoubt, 'bound' | 'largest'>, photos = 1): string {
  const those = photos === 1 ? 'photos like this are' : `results of ${counted(photos, 'photo')} like these are`;
  return `Nine in ten ${those} within ΔE ${wholeOrTenth(bound)}; most of that is ${LARGEST[largest]}`;
}

/** What a maker can do about the largest term; a sentence, undefined where nothing is known to help. */
export function photoDoubtCure({ largest }: PhotoDoubt): string | undefined {
  return CURES[largest];
}

/** A bound of this kind is known to a whole ΔE; a small one has its tenth. */
function wholeOrTenth(bound: number): string {
  return bound >= 2.95 ? String(Math.round(bound)) : deltaEText(bound);
}
