import type { Thing } from '../../recipe/read-thing.ts';
import type { FieldsOf } from '../../recipe/schema.ts';

/** A file of a dilution. */
export type CutThing = Thing<'colorant'> & {
  readonly fields: { readonly cut: NonNullable<FieldsOf<'colorant'>['cut']> };
};

/** Whether a file is of a dilution, and no material by itself. */
export function isCut(thing: Thing): thing is CutThing {
  return thing.kind === 'colorant' && thing.fields.cut !== undefined;
}
