import { isWeighable } from '../../cup/measures.ts';
import { listed } from '../words.ts';

/** What is weighed, as the scale shows it. */
interface WeighedAmount {
  readonly title: string;
  readonly grams: number;
  readonly text: string;
}

/**
 * "0.01 g of Soot is too little to weigh here, half a step of the scale is 50 % of it: make a larger cup."; undefined where there is
 * enough of everything.
 *
 * @param scaleGrams step of the scale, g; unset: there is none
 */
export function tooLittleToWeigh(amounts: readonly WeighedAmount[], scaleGrams = 0): string | undefined {
  const small = amounts.filter(({ grams }) => !isWeighable(grams, scaleGrams));
  if (small.length === 0) return undefined;
  const least = Math.min(...small.map(({ grams }) => grams));
  const [is, it] = small.length === 1 ? ['is', 'it'] : ['are', 'the least of them'];
  const what = listed(small.map(({ title, text }) => `${text} of ${title}`));
  return `${what} ${is} too little to weigh here, half a step of the scale is ${Math.round((50 * scaleGrams) / least)} % of ${it}: make a larger cup.`;
}
