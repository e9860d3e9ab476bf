import type { FieldPath } from '../../recipe/field-path.ts';
import type { CupSpec } from './cup-specs.ts';

/**
 * Where a cup's file last gives an amount of a material, or of a cut of it; undefined where the cup has it from another.
 *
 * @param cuts of the material
 */
export function placeInCup(
  spec: Pick<CupSpec, 'fields' | 'path'>,
  id: string,
  cuts: readonly { readonly id: string }[] = [],
): FieldPath | undefined {
  for (const name of [id, ...cuts.map((cut) => cut.id)]) {
    const place = placeOfName(spec, name);
    if (place) return place;
  }
  return undefined;
}

function placeOfName({ fields, path }: Pick<CupSpec, 'fields' | 'path'>, id: string): FieldPath | undefined {
  const { add = {}, set = {}, log = [] } = fields;
  if (Object.hasOwn(add, id)) return [...path, 'add', id];
  if (Object.hasOwn(set, id)) return [...path, 'set', id];
  const step = log.findLastIndex((entry) => entry.add !== undefined && Object.hasOwn(entry.add, id));
  return step >= 0 ? [...path, 'log', step, 'add', id] : undefined;
}
