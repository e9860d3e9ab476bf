import type { BatchMaterial } from '../cup/plan-batch.ts';
import type { Material } from './model.ts';

/** How a volume in ml and a mass in g are written. */
export interface AmountForms {
  volume(ml: number): string;
  mass(grams: number): string;
}

/** An amount of a material as it is bought and counted: a plastic and what is sold by volume in the book's unit of volume, else in grams. */
export function boughtText(
  grams: number,
  { byVolume, gramsPerMl }: Pick<Material, 'byVolume' | 'gramsPerMl'>,
  forms: AmountForms,
): string {
  return byVolume ? forms.volume(grams / gramsPerMl) : forms.mass(grams);
}

/**
 * What is missing of a material for a batch, and how much to buy: the same on pages and on the command line. Empty where nothing is.
 *
 * @example shortWords({ shortGrams: 121, packs: 1 }, { byVolume: true, gramsPerMl: 1.05 }, forms) // '115 ml short: buy 1 pack'
 */
export function shortWords(
  { shortGrams, packs }: Pick<BatchMaterial, 'shortGrams' | 'packs'>,
  material: Pick<Material, 'byVolume' | 'gramsPerMl'>,
  forms: AmountForms,
): string {
  if (shortGrams <= 0) return '';
  const buy = packs === 0 ? '' : `: buy ${packs} ${packs === 1 ? 'pack' : 'packs'}`;
  return `${boughtText(shortGrams, material, forms)} short${buy}`;
}
