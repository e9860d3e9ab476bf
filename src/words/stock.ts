import type { Material } from '../book/model/shelf.ts';
import type { BatchMaterial } from '../cup/batch.ts';
import type { ShortPlastic, ShortStock } from '../matching/shelf/short-stock.ts';
import { massText, ounceText } from '../units/mass-text.ts';
import { type VolumeUnit, volumeText } from '../units/volume-text.ts';
import { counted, listText } from './sentence-text.ts';

/** What is to be known of a material, to tell amounts of it as they are bought and counted. */
export type Bought = Pick<Material, 'byVolume' | 'byOunce' | 'gramsPerMl'>;

/**
 * An amount of a material as it is bought and counted: by volume in the book's unit of volume, else in grams; what is bought by the ounce
 * or pound so too, in a book of fluid ounces.
 */
export function boughtText(grams: number, { byVolume, byOunce, gramsPerMl }: Bought, units: VolumeUnit): string {
  if (byVolume) return volumeText(grams / gramsPerMl, units);
  return byOunce && units.volume === 'fl oz' ? ounceText(grams) : massText(grams);
}

/**
 * What is missing of a material for a batch, and how much to buy: the same on pages and on the command line. Empty where nothing is.
 *
 * @example shortWords({ shortGrams: 121, packs: 1 }, { byVolume: true, byOunce: false, gramsPerMl: 1.05 }, { volume: 'ml' }) // '115 ml short: buy 1 pack'
 */
export function shortWords(
  { shortGrams, packs }: Pick<BatchMaterial, 'shortGrams' | 'packs'>,
  material: Bought,
  units: VolumeUnit,
): string {
  if (shortGrams <= 0) return '';
  const buy = packs === 0 ? '' : `: buy ${packs} ${packs === 1 ? 'pack' : 'packs'}`;
  return `${boughtText(shortGrams, material, units)} short${buy}`;
}

/** "Not enough on the shelf: 12 drops of Straw and no Mill Blue left." */
export function runsShortText(short: readonly ShortStock[], units: VolumeUnit): string {
  return `Not enough on the shelf: ${listText(short.map((each) => leftText(each, units)))} left.`;
}

function leftText({ title, left: { amount, unit } }: ShortStock, units: VolumeUnit): string {
  if (amount === 0) return `no ${title}`;
  switch (unit) {
    case 'ml':
      return `${volumeText(amount, units)} of ${title}`;
    case 'g':
      return `${massText(amount)} of ${title}`;
    case 'drop':
      return `${amount < 1 ? 'less than a drop' : counted(Math.floor(amount), 'drop')} of ${title}`;
  }
}

/** "160 ml of Steady, and 90 ml are left" */
export function shortPlasticText({ title, askedMl, leftMl }: ShortPlastic, units: VolumeUnit): string {
  const left = leftMl < 1 ? 'none is left' : `only ${volumeText(Math.floor(leftMl), units)} is left`;
  return `${volumeText(askedMl, units)} of ${title}, and ${left}`;
}
