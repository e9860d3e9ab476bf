import type { SpreadAdvice } from '../book/model/recipe.ts';
import { formatDecimal } from '../units/format-quantity.ts';
import { type VolumeUnit, volumeText } from '../units/volume-text.ts';
import { differenceText } from './difference.ts';

const HANDS: Readonly<Record<Extract<SpreadAdvice, { kind: 'hands-vary' }>['remedy'], string>> = {
  'get-a-scale': 'a scale that shows 0.01 g would fix that',
  weigh: 'weigh instead',
  'larger-batch': 'and the scale is too coarse for this batch, so make a larger one',
};

/** What would make a recipe come out alike each time. */
export function spreadAdviceText(advice: SpreadAdvice, units: VolumeUnit): string {
  if (advice.kind === 'hands-vary')
    return `Drops and spoons vary by more than the tolerance of ΔE ${formatDecimal(advice.tolerance)}: ${HANDS[advice.remedy]}.`;
  const { title, deltaE, enoughMl, weigh } = advice;
  const ways = [
    ...(enoughMl === undefined ? [] : [`make at least ${volumeText(enoughMl, units)} in a cup`]),
    ...(weigh === undefined ? [] : [weigh === 'all' ? 'weigh its whole cup' : 'weigh it']),
  ];
  return `One drop more of ${title} is ${differenceText(deltaE)}: ${ways.length === 0 ? 'a finer scale would fix that' : ways.join(', or ')}.`;
}
