import { coverWithFlakes, type SpreadFlake } from '../../src/optics/flake.ts';
import type { Spectrum } from '../../src/optics/spectrum.ts';

/** `coverWithFlakes` over one backing, which stays as it is. */
export function reflectanceWithFlakes(
  K: ArrayLike<number>,
  S: ArrayLike<number>,
  thickness: number,
  flakes: readonly SpreadFlake[],
  Rg: ArrayLike<number>,
): Spectrum {
  const R = Float64Array.from(Rg);
  coverWithFlakes(K, S, thickness, flakes, [R]);
  return R;
}
