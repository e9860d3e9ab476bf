import type { WrittenFields } from '../../../../src/recipe/write-front-matter.ts';
import type { Condition } from '../conditions.ts';
import { type Seen, type SeenPair, typedHex } from '../physics/eye.ts';

/**
 * The fields of a look, or of a target, as its maker writes them: an instrument's numbers, or the hex of a photo with its doubt.
 *
 * @param looks how many looks it is the mean of: what the camera always does stays, the rest grows less
 */
export function lookFields(seen: SeenPair, { means, doubt }: Condition, looks = 1): WrittenFields {
  const written = (colour: Seen): WrittenFields[string] =>
    means === 'instrument' ? { lab: [colour.L, colour.a, colour.b].map(hundredths) } : typedHex(colour);
  return {
    'over-white': written(seen.white),
    'over-black': written(seen.black),
    ...(doubt === undefined ? {} : { doubt: hundredths(doubt * Math.sqrt(ALWAYS + (1 - ALWAYS) / looks)) }),
  };
}

/** The fields of a look at a cup or a chip: of a photo what took it is noted, too. */
export function seenFields(seen: SeenPair, condition: Condition): WrittenFields {
  return { ...lookFields(seen, condition), ...(condition.means === 'photo' ? { camera: 'phone' } : {}) };
}

/** The part of a photo's error, in squares, that all photos of a camera have. */
const ALWAYS = 0.25;

function hundredths(value: number): number {
  return Math.round(100 * value) / 100;
}
