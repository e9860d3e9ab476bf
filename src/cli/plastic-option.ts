import { matchCupMl } from '../book/match/match-cup.ts';
import type { Settings } from '../book/model.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import { explained } from '../recipe/fields.ts';
import { millilitres } from '../units/convert.ts';
import { parseQuantity } from '../units/parse-quantity.ts';
import { isFault } from '../units/quantity.ts';

/**
 * Plastic that a cup is to begin with, ml, as `--plastic` has it: a volume with its unit, or a number in the book's. Throws Refusal for anything
 * else.
 *
 * @param text what was typed; unset: what a match begins with
 *
 * @example plasticOption('4', { volume: 'fl oz', cupMl: 350, fill: 0.5 }) // 118.29, to 5 digits
 */
export function plasticOption(text: string | undefined, settings: Pick<Settings, 'volume' | 'cupMl' | 'fill'>): number {
  const { volume } = settings;
  if (text === undefined) return matchCupMl(settings);
  const typed = text.trim();
  const quantity = parseQuantity(Number.isNaN(Number(typed)) ? typed : `${typed} ${volume}`, ['volume']);
  if (!isFault(quantity)) return millilitres(quantity);
  const { fix, edits = [] } = explained(quantity);
  // Written out, what is beyond any cup still is.
  const [offered, ...others] = edits;
  const again = offered && others.length === 0 ? parseQuantity(offered.text, ['volume']) : undefined;
  const isBeyond = again !== undefined && isFault(again) && again.bounds !== undefined;
  const remedy = quantity.bounds ?? (isBeyond ? undefined : fix?.replaceAll('`', '"'));
  throw new Refusal(
    `--plastic takes a volume such as "120 ml" or "4 fl oz" (a number alone is in ${volume}, the book’s unit), not "${text}"${remedy === undefined ? '' : `: ${remedy}`}.`,
  );
}
