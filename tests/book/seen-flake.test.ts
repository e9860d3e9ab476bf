import { describe, expect, test } from 'vitest';
import { flakeDose } from '../../src/matching/substitutes/flake-dose.ts';
import { cupBody } from '../../src/optics/cup-body.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { flakeSight } from '../../src/optics/seen-coverage.ts';
import type { Layer } from '../../src/optics/stack.ts';
import { required } from '../../src/values/required.ts';
import { WHOLE_DEMO_BOOK } from '../render/demo-book.ts';

const materials = new Map(WHOLE_DEMO_BOOK.materials.map((material) => [material.id, material]));
const CUP_ML = 120;

/** A body of a thickness that so many drops make of a cup. */
function bodyOf(drops: Readonly<Record<string, number>>, thickness: number): Layer {
  const contents = Object.entries(drops).map(([material, count]) => ({
    material,
    gramsPerMl: (count * required(materials, material).gramsPerDrop!) / CUP_ML,
  }));
  const plastics = [{ material: 'supple', fraction: 1 }];
  return { ...cupBody({ plastics, contents }, (material) => required(materials, material), USUAL_OPTICS), thickness };
}

/** An olive that nothing shines through, of bottles of the demo shelf. */
const OLIVE = bodyOf({ chalk: 2, 'lamp-black': 5, 'mill-blue': 22, straw: 54 }, 11);
const CLEAR = bodyOf({}, 11);

describe('flake in an olive that nothing shines through', () => {
  test.each(['copper-hex-040', 'black-hex-040'])(
    '%s is seen in the outer 1 to 3 mm (common practice, no source)',
    (name) => {
      const { reflectance } = required(materials, name).flake!;
      const depth = (layer: Layer): number =>
        flakeSight([layer], 0, reflectance, 1, USUAL_OPTICS).steps.reduce(
          (sum, { width, counts }) => sum + width * counts,
          0,
        );
      expect(depth(OLIVE)).toBeGreaterThan(1);
      expect(depth(OLIVE)).toBeLessThan(3);
      expect(depth(CLEAR)).toBeGreaterThan(10);
    },
  );

  test.each(['copper-hex-040', 'black-hex-040'])(
    '10 %% of %s takes what a maker puts in, not the pinch that shows as much in a clear body',
    (name) => {
      const flake = required(materials, name);
      const teaspoons = (layer: Layer): number =>
        (flakeDose(flake, { optics: USUAL_OPTICS, layers: [layer], at: 0 }, 0.1).gramsPerMl * CUP_ML) /
        (4.93 * flake.gramsPerMl);
      // In 4 fl oz 1/8 to 1/2 tsp are usual and 1 tsp is heavy. Common practice, no source.
      expect(teaspoons(CLEAR)).toBeLessThan(1 / 8);
      expect(teaspoons(OLIVE)).toBeGreaterThan(1 / 4);
      expect(teaspoons(OLIVE)).toBeLessThan(1);
    },
  );
});
