import type { LookedLayer } from '../../src/learning/learning-data.ts';
import type { ShelfState } from '../../src/learning/shelf-state.ts';
import type { ShelfUnknowns } from '../../src/learning/shelf-unknowns.ts';
import { WAVELENGTHS } from '../../src/optics/spectrum.ts';

/**
 * What is seen of layers by Kubelka's formula with coth, Saunderson's surface and the light's path, as one would write them down first.
 *
 * A plastic that is not on the shelf is that of labels.
 */
export function plainReflectance(
  { placeOf, labelPlastic }: ShelfUnknowns,
  layers: readonly LookedLayer[],
  state: ShelfState,
  card: Float64Array,
  ownBottles = true,
): number[] {
  return WAVELENGTHS.map((_, band) => {
    const mixed = layers.map(({ plastics, contents, thicknessMm }) => {
      let [K, S, load] = [0, 0, 0];
      for (const [id, dose] of plastics) {
        const { K: k, S: s } = state.materials[placeOf.get(id) ?? labelPlastic]!;
        K += dose * k[band]!;
        S += dose * s[band]!;
      }
      for (const [id, dose] of contents) {
        const { K: k, S: s, strength: own } = state.materials[placeOf.get(id)!]!;
        const strength = ownBottles ? own : 1;
        K += dose * strength * k[band]!;
        S += dose * strength * s[band]!;
        load += dose;
      }
      return { K, S: S * Math.exp(-state.crowding.value * load), X: thicknessMm };
    });
    const cloud = mixed.reduce((sum, { S, X }) => sum + S * X, 0);
    let R = card[band]!;
    const way = 1 - state.d.value / (1 + cloud / state.s0.value);
    for (const { K, S, X } of [...mixed].reverse()) {
      const a = 1 + K / S;
      const b = Math.sqrt(a * a - 1);
      const bcoth = b / Math.tanh(b * S * way * X);
      R = (1 - R * (a - bcoth)) / (a - R + bcoth);
    }
    return (0.96 * 0.4 * R) / (1 - 0.6 * R);
  });
}
