import type { Thing } from '../../recipe/read-thing.ts';
import { defined } from '../../values/defined.ts';
import type { LookFields } from '../looks/compile-look.ts';
import type { CupSpec } from './cup-specs.ts';

/** The cup of a chip, as the ledger takes it: it comes from nowhere, and nothing comes from it. */
export interface ChipSpec extends Omit<CupSpec, 'recipe' | 'from' | 'inheritedShare'> {
  /** The file that it is in, as of the cup of a recipe. */
  readonly recipe: Thing<'chip'>;
  readonly from?: never;
  /** What was seen of it, where that is noted beside its amounts. */
  readonly seen?: readonly LookFields[];
}

/** The name of the only cup of a chip. */
export const CHIP_CUP = 'chip';

/** The only cup of a chip. */
export function chipSpec(chip: Thing<'chip'>): ChipSpec {
  const { plastic, add, log, seen } = chip.fields;
  return {
    recipe: chip,
    name: CHIP_CUP,
    path: [],
    fields: { plastic, ...defined({ add, log }) },
    ...defined({ seen }),
  };
}
