import type { TooLittle } from '../matching/measure/too-little.ts';
import { amountsText } from './amount.ts';

/** "0.02 g of Sedge is too little for this scale (25 % error): mix a larger cup." */
export function tooLittleText({ amounts, error }: TooLittle): string {
  const off = `${Math.round(100 * error)} % error`;
  return amounts.length === 1
    ? `${amountsText(amounts)} is too little for this scale (${off}): mix a larger cup.`
    : `${amountsText(amounts)} are too little for this scale (up to ${off}): mix a larger cup.`;
}
