import { statedDoubt } from '../../learning/camera-bias.ts';
import { boundOf } from '../../optics/look-doubt.ts';
import type { TargetPart } from './target-part.ts';

const PHOTOS = 3;

/**
 * How surely the mean of three photos would tell the colours of a part of which there is one: the doubt to write for it, ΔE00 that nine in
 * ten stay within. What the camera does to all of its photos stays, the rest is divided by the root of three. Undefined where it was no photo.
 */
export function doubtOfThree({ axisSd, means, camera }: TargetPart): number | undefined {
  if (axisSd === undefined || means !== 'screen') return undefined;
  return boundOf(statedDoubt(axisSd, { isBesideBias: camera !== undefined, looks: PHOTOS }));
}
