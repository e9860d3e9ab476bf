import type { Kind } from '../kinds/kinds.ts';
import { parseQuantity } from '../units/parse-quantity.ts';
import { isFault } from '../units/quantity.ts';
import type { FieldPath } from './field-path.ts';
import { asText } from './fields.ts';
import { valueAt } from './value-at.ts';

/**
 * The edit for the size of a bait under the name of the other: a mold's `cavity` is a volume and its `bait` a mass. Undefined for any other field,
 * and where the mold has both.
 *
 * @param fix what else may be meant, offered behind it
 *
 * @example otherMeasure('mold', ['bait'], '10 ml', { bait: '10 ml' }, undefined) // { fix: 'write `cavity: 10 ml`' }
 */
export function otherMeasure(
  kind: Kind,
  path: FieldPath,
  input: unknown,
  data: unknown,
  fix: string | undefined,
): { readonly fix: string } | undefined {
  if (kind !== 'mold' || path.length !== 1 || (path[0] !== 'cavity' && path[0] !== 'bait')) return undefined;
  const [other, dimension] = path[0] === 'cavity' ? (['bait', 'mass'] as const) : (['cavity', 'volume'] as const);
  const text = asText(input).trim();
  if (valueAt(data, [other]) !== undefined || isFault(parseQuantity(text, [dimension]))) return undefined;
  return { fix: `write \`${other}: ${text}\`${fix === undefined ? '' : `, or ${fix.replace(/^write /, '')}`}` };
}
