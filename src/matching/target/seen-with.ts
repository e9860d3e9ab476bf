import { axisSdBesideBias } from '../../learning/camera-bias.ts';
import type { LookDoubt } from '../../optics/look-doubt.ts';
import type { TargetPart } from './target-part.ts';

/**
 * How surely the colours of a part are known, and with which camera they were seen.
 *
 * @param camera by the name that its looks have; unset: with none that is known
 */
export function seenWith(
  { axisSd, means }: Pick<LookDoubt, 'axisSd' | 'means'>,
  camera: string | undefined,
): Pick<TargetPart, 'axisSd' | 'means' | 'camera'> {
  return camera === undefined ? { axisSd, means } : { axisSd: axisSdBesideBias(axisSd), means, camera };
}
