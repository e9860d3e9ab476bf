import type { SpreadFlake } from '../../optics/flake.ts';
import type { OpticalConstants } from '../../optics/mixture.ts';
import type { TargetPart } from '../target/target-part.ts';
import type { MixLayer } from './mix-problem.ts';

/**
 * The layers in which a part of a target is seen, near one first: one cup through the whole thickness, or, of a side of a finished
 * laminate, this cup and the other one behind it, each through its share of it.
 */
export function layersOfPart(
  { thicknessMm, behind }: Pick<TargetPart, 'thicknessMm' | 'behind'>,
  flakes: readonly SpreadFlake[],
): readonly MixLayer[] {
  if (!behind) return [{ cup: 0, thickness: thicknessMm, flakes }];
  return [
    { cup: 0, thickness: (1 - behind.share) * thicknessMm, flakes },
    { cup: 1, thickness: behind.share * thicknessMm, flakes: behind.flakes },
  ];
}

/** K and S of the cups of those layers, per mm. */
export function withBehind(
  { behind }: Pick<TargetPart, 'behind'>,
  near: OpticalConstants,
): readonly OpticalConstants[] {
  return behind ? [near, behind.mix] : [near];
}
