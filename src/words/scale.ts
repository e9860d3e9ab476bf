import type { TooLittle } from '../matching/measure/too-little.ts';
import { amountsText } from './amount.ts';

/** "0.02 g of Sedge is too little for this scale (25 % error): make a cut of it, one part in ten of softener or clear plastic, and take ten times as much." */
export function tooLittleText({ amounts, error }: TooLittle): string {
  const off = `${Math.round(100 * error)} % error`;
  const [first, ...others] = amounts;
  const said =
    others.length === 0
      ? `${amountsText([first!])} is too little for this scale (${off})`
      : `${amountsText(amounts)} are too little for this scale (up to ${off})`;
  const it = others.length === 0 ? 'it' : 'them';
  if (amounts.every(({ hasCut }) => hasCut))
    return `${said}: count drops of ${others.length === 0 ? 'its cut' : 'their cuts'} instead.`;
  if (amounts.every(({ isLiquid }) => isLiquid) && amounts.some(({ hasCut }) => hasCut))
    return `${said}: count drops of a cut, ${ONE_IN_TEN}, instead.`;
  return amounts.every(({ isLiquid }) => isLiquid)
    ? `${said}: make a cut of ${it}, ${ONE_IN_TEN}, and take ten times as much.`
    : `${said}: a finer scale would do${amounts.some(({ isLiquid }) => isLiquid) ? `, and for what is liquid a cut, ${ONE_IN_TEN}` : ''}.`;
}

/** How a colour is let down beforehand, for doses that are too small to measure. Common practice, no source. */
export const ONE_IN_TEN = 'one part in ten of softener or clear plastic';
