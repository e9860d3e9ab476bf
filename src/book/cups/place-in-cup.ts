import type { FieldPath } from '../../recipe/field-path.ts';
import type { CupSpec } from './cup-specs.ts';

/** Where a cup's file last gives an amount of a material; undefined where the cup has it from another. */
export function placeInCup({ fields, path }: CupSpec, id: string): FieldPath | undefined {
  const { add = {}, set = {}, log = [] } = fields;
  if (Object.hasOwn(add, id)) return [...path, 'add', id];
  if (Object.hasOwn(set, id)) return [...path, 'set', id];
  const step = log.findLastIndex((entry) => entry.add !== undefined && Object.hasOwn(entry.add, id));
  return step >= 0 ? [...path, 'log', step, 'add', id] : undefined;
}
