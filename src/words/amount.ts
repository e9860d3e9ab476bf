/**
 * Amounts of what goes into a cup.
 *
 * @packageDocumentation
 */
import type { Weight } from '../matching/measure/weigh-doses.ts';
import type { AmountToAdd, ToAdd } from '../matching/proposals/to-add.ts';
import { type VolumeUnit, volumeText } from '../units/volume-text.ts';
import { amountName } from './cut.ts';
import { listText } from './sentence-text.ts';

/** Why one amount of a proposal must not be weighed while the others are dropped and spooned. */
export const MEASURED_TOGETHER =
  'The drops and spoons of a cup are rounded as a set: use them all, or weigh everything. Don’t mix.';

const amountText = (amount: AmountToAdd): string => `${amount.text} of ${amountName(amount)}`;

/** "1/8 tsp of Ivory Pearl and 2 drops of Peat" */
export function amountsText(amounts: readonly AmountToAdd[]): string {
  return listText(amounts.map(amountText));
}

/** "0.65 g of Peat and 0.14 g of Ivory Pearl": everything as it is weighed. */
export function weightsText(amounts: readonly (AmountToAdd & { readonly weighed?: Weight })[]): string {
  return amountsText(amounts.map(({ weighed, ...amount }) => (weighed ? { title: amount.title, ...weighed } : amount)));
}

/** What is added, in its order: "20 ml of Clear to let it down, then 3 drops of Peat". */
export function toAddText({ additions, thin }: ToAdd, units: VolumeUnit): string {
  return [
    ...(thin ? [`${volumeText(thin.ml, units)} of ${thin.title} to let it down`] : []),
    ...(additions.length > 0 ? [amountsText(additions)] : []),
  ].join(', then ');
}
