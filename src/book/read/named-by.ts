import { type Kind, SHELF_ORDER } from '../../kinds/kinds.ts';

/** Fields whose values name other files, and of which kinds those are. */
export const NAMED_BY: Readonly<Record<string, readonly Kind[]>> = {
  mold: ['mold'],
  from: ['recipe'],
  for: ['target'],
  plastic: ['plastic'],
  of: ['colorant'],
  with: ['plastic', 'additive'],
  without: SHELF_ORDER.filter((kind) => kind !== 'plastic'),
};
