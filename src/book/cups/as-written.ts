import type { FieldPath } from '../../recipe/field-path.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { parseQuantity } from '../../units/parse-quantity.ts';
import { isFault } from '../../units/quantity.ts';
import { UNITS, type Unit } from '../../units/unit.ts';

/** An amount that was accepted, as its file has it, so that what is told of it is in the maker's unit. */
export interface WrittenAmount {
  readonly text: string;
  readonly unit: Unit;
}

/** The amount that stands at a place of a file; in `unit`, with the number that is given, where none can be read there. */
export function asWritten(
  thing: Pick<Thing, 'written'>,
  path: FieldPath,
  { amount, unit }: { readonly amount: number; readonly unit: Unit },
): WrittenAmount {
  const text = thing.written(path)?.trim() ?? '';
  const read = parseQuantity(text, [UNITS[unit].dimension]);
  return isFault(read) ? { text: `${amount} ${unit}`, unit } : { text, unit: read.unit };
}
