import { sentence } from '../../render/words.ts';
import { type Edit, writeFix } from '../../units/edit.ts';
import { DOSE_DIMENSIONS, parseQuantity } from '../../units/parse-quantity.ts';
import { isFault, type QuantityFault } from '../../units/quantity.ts';
import { UNITS } from '../../units/unit.ts';

/**
 * What is wrong with a text that is no amount of a material, and what to write instead, for the maker.
 *
 * @param hasDrops whether the material is counted in drops
 *
 * @example amountFault('2,5 drops', parseDose('2,5 drops'), true)
 * // '“2,5 drops” is no amount: a number is digits without gaps, with a point before its decimals. Write “2.5 drops”.'
 */
export function amountFault(
  text: string,
  { why, edits = [], otherwise, unknownUnit }: QuantityFault,
  hasDrops: boolean,
): string {
  const none = `${text === '' ? 'Nothing' : `“${text}”`} is no amount`;
  const examples = `${hasDrops ? '3 drops, ' : ''}1/8 tsp or 0.25 g`;
  const fix = writeFix(
    edits.filter((edit) => isAmount(edit, hasDrops)),
    otherwise && `${otherwise}, as in ${examples}`,
  );
  const says = fix ?? `write for example ${examples}`;
  const tells = edits.length > 0 || fix !== undefined || unknownUnit !== undefined;
  if (why === undefined || !tells) return `${none}: ${says}.`;
  // The units are too many for one line of a telephone.
  const because = why.replace(/ \([^)]*\)$/, '');
  return inQuotes(`${none}: ${because}. ${sentence(says)}.`);
}

/** An edit mends one fault, and the text may have another. */
function isAmount({ text }: Edit, hasDrops: boolean): boolean {
  const read = parseQuantity(text, DOSE_DIMENSIONS);
  return !isFault(read) && (hasDrops || UNITS[read.unit].dimension !== 'drop');
}

function inQuotes(words: string): string {
  return words.replace(/`([^`]*)`/g, '“$1”');
}
