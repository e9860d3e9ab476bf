import type { SpreadFlake } from '../../optics/flake.ts';
import type { Body, Layer } from '../../optics/stack.ts';
import type { TargetPart } from '../target/target-part.ts';
import type { MixCup, MixLayer } from './mix-problem.ts';

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

/** The cups of those layers. */
export function withBehind({ behind }: Pick<TargetPart, 'behind'>, near: MixCup): readonly MixCup[] {
  return behind ? [near, behind.mix] : [near];
}

/** The layers through which a part of a target is seen where these are the cups of the bait, near one first. */
export function bodyLayers(
  bodies: readonly Body[],
  index: number,
  { thicknessMm: thickness, behind }: Pick<TargetPart, 'thicknessMm' | 'behind'>,
): readonly Layer[] {
  if (bodies.length > 1)
    return [bodies[index]!, bodies[1 - index]!].map((body) => ({ ...body, thickness: thickness / 2 }));
  const near = bodies[0]!;
  if (!behind) return [{ ...near, thickness }];
  const { mix, flakes, share } = behind;
  return [
    { ...near, thickness: (1 - share) * thickness },
    { ...mix, flakes, thickness: share * thickness },
  ];
}
