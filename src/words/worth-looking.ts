import type { ChipToPour } from '../matching/chips/chip-candidates.ts';
import type { WorthLooking } from '../matching/chips/worth-looking.ts';
import { lengthText } from '../units/length-text.ts';
import { usualVolume } from '../units/usual-volume.ts';
import type { VolumeUnit } from '../units/volume-text.ts';
import { deltaEText } from './difference.ts';
import { listText } from './sentence-text.ts';

type Titles = (material: string) => string;

/** A chip to be poured, in the words of the bench: "1 drop of Mill Blue and 1 drop of Chalk in 100 ml, 6 mm thick". */
export function chipToPourText({ doses, thicknessMm }: ChipToPour, title: Titles, settings: VolumeUnit): string {
  const amounts = doses.map(({ material, measure }) => `${measure.text} of ${title(material)}`);
  return `${listText(amounts)} in ${usualVolume(settings).text}, ${lengthText(thicknessMm, settings)} thick`;
}

/** What a look at a chip is worth: of the recipes that nobody has seen where there are any to which it matters, else of mixtures to come. */
export function worthText({ halves, doubt, doses }: WorthLooking, title: Titles): string {
  if (halves.length > 0) return `halves the doubt of ${halves.length} ${halves.length === 1 ? 'recipe' : 'recipes'}`;
  const [first] = doses;
  return `brings you closer with ${title(first!.material)} in the cup (off by about ΔE ${deltaEText(doubt.after)} instead of ${deltaEText(doubt.before)})`;
}

/** Where no chip is worth pouring. */
export const NOTHING_WORTH_LOOKING =
  'No chip would tell you much now: your looks have taught the book what they can. Ask again when there is a new bottle on the shelf.';
