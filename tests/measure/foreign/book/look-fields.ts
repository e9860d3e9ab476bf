import type { WrittenFields } from '../../../../src/recipe/write-front-matter.ts';
import type { Condition } from '../conditions.ts';
import { type Seen, type SeenPair, typedHex } from '../physics/eye.ts';

/**
 * The fields of a look, or of a target, as its maker writes them: an instrument's numbers, or the hex of a photo with its doubt and what took
 * it.
 */
export function lookFields(
  seen: SeenPair,
  { means, doubt }: Pick<Condition, 'means'> & { readonly doubt?: number | undefined },
): WrittenFields {
  const written = (colour: Seen): WrittenFields[string] =>
    means === 'instrument' ? { lab: [colour.L, colour.a, colour.b].map(hundredths) } : typedHex(colour);
  return {
    'over-white': written(seen.white),
    'over-black': written(seen.black),
    ...(doubt === undefined ? {} : { doubt }),
    ...(means === 'photo' ? { camera: 'phone' } : {}),
  };
}

function hundredths(value: number): number {
  return Math.round(100 * value) / 100;
}
