import { Refusal } from '../diagnostics/refusal.ts';
import type { OptionValues } from './command.ts';

/**
 * An option that counts something.
 *
 * Throws: Refusal where it is no whole number from 1 to `most`.
 *
 * @param usual where it is not given
 */
export function wholeNumber(values: OptionValues, name: string, usual: number, most: number): number {
  const text = values[name];
  if (typeof text !== 'string') return usual;
  const number = Number(text);
  if (Number.isInteger(number) && number > 0 && number <= most) return number;
  throw new Refusal(`--${name} takes a whole number from 1 to ${most}, not "${text}".`);
}
