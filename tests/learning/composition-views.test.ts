import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Composition, compose, composeLabel } from '../../src/learning/composition.ts';
import { CompositionLooker } from '../../src/learning/composition-views.ts';
import { shelfState } from '../../src/learning/shelf-state.ts';
import { shelfUnknowns } from '../../src/learning/shelf-unknowns.ts';
import { type Lab, labOf } from '../../src/optics/cielab.ts';
import { plainReflectance } from './plain-reflectance.ts';
import { anyLayer, anyTheta, plainLayer, SHELF } from './shelf-arbitrary.ts';

const unknowns = shelfUnknowns(SHELF);
const looker = new CompositionLooker(unknowns);
const BOTH = { white: true, black: true };
const axes = ({ L, a, b }: Lab): readonly number[] => [L, a, b];

/** The colours of a composition at a theta, white's axes then black's. */
function sixOf(composition: Composition, theta: Float64Array): readonly number[] {
  const { white, black } = looker.views(composition, shelfState(unknowns, theta), BOTH);
  return [...axes(white!.lab), ...axes(black!.lab)];
}

function expectAlike(found: readonly number[], wanted: readonly number[], digits: number): void {
  for (const [i, value] of found.entries()) expect(value).toBeCloseTo(wanted[i]!, digits);
}

describe('colours of a composition', () => {
  test('are those of the plain formulas, for any layers at any theta', () => {
    fc.assert(
      fc.property(fc.array(plainLayer, { minLength: 1, maxLength: 3 }), anyTheta(unknowns.count), (layers, theta) => {
        const state = shelfState(unknowns, theta);
        const { white, black } = looker.views(compose(unknowns, layers), state, BOTH);
        const plainWhite = labOf(plainReflectance(unknowns, layers, state, state.white.reflectance));
        const plainBlack = labOf(plainReflectance(unknowns, layers, state, state.black.reflectance));
        expectAlike(axes(white!.lab), axes(plainWhite), 6);
        expectAlike(axes(black!.lab), axes(plainBlack), 6);
      }),
    );
  });

  test('of a layer cut in two are those of the layer', () => {
    fc.assert(
      fc.property(plainLayer, anyTheta(unknowns.count), (layer, theta) => {
        const cut = [0.3, 0.7].map((part) => ({ ...layer, thicknessMm: part * layer.thicknessMm }));
        expectAlike(sixOf(compose(unknowns, cut), theta), sixOf(compose(unknowns, [layer]), theta), 7);
      }),
    );
  });

  test('of a label know nothing of bottle and plastic', () => {
    const zero = new Float64Array(unknowns.count);
    const label = composeLabel(unknowns, 'clay', { dose: 0.006, thicknessMm: 6 });
    const before = sixOf(label, zero);
    const clay = unknowns.materials[unknowns.placeOf.get('clay')!]!;
    const clear = unknowns.materials[unknowns.placeOf.get('clear')!]!;
    expect(sixOf(label, zero.with(clay.bottle!, 2).with(clear.at, 2))).toEqual(before);
    expect(sixOf(label, zero.with(clay.at, 1))).not.toEqual(before);
    const cup = compose(unknowns, [{ plastics: [['clear', 1]], contents: [['clay', 0.006]], thicknessMm: 6 }]);
    expect(sixOf(cup, zero)).toEqual(before);
    expect(sixOf(cup, zero.with(clay.bottle!, 2))).not.toEqual(before);
  });

  test('a stronger bottle is as much more of the material', () => {
    fc.assert(
      fc.property(fc.double({ min: -2, max: 2, noNaN: true }), (strength) => {
        const zero = new Float64Array(unknowns.count);
        const cup = (dose: number): Composition =>
          compose(unknowns, [{ plastics: [['clear', 1]], contents: [['ink', dose]], thicknessMm: 4 }]);
        const { bottle } = unknowns.materials[unknowns.placeOf.get('ink')!]!;
        const stronger = sixOf(cup(0.004), zero.with(bottle!, strength));
        const more = sixOf(cup(0.004 * Math.exp(0.3 * strength)), zero);
        expectAlike(stronger, more, 9);
      }),
    );
  });

  test('a material that is not on the shelf is refused by its name', () => {
    const layer = { plastics: [['clear', 1]], contents: [['peat', 0.01]], thicknessMm: 4 } as const;
    expect(() => compose(unknowns, [layer])).toThrow(/peat/);
    expect(() => compose(unknowns, [])).toThrow(RangeError);
    expect(() => compose(unknowns, [{ ...layer, contents: [['ink', -1]] }])).toThrow(RangeError);
  });
});

describe('slopes of the colours', () => {
  const STEP = 1e-5;

  /** Slopes as found by moving each unknown a little, against those that are computed. */
  function expectSlopes(composition: Composition, theta: Float64Array): void {
    const { white, black } = looker.views(composition, shelfState(unknowns, theta), BOTH);
    const count = composition.columns.length;
    const moves = new Set(composition.columns);
    for (let place = 0; place < unknowns.count; place++) {
      const up = sixOf(composition, theta.with(place, theta[place]! + STEP));
      const down = sixOf(composition, theta.with(place, theta[place]! - STEP));
      const column = composition.columns.indexOf(place);
      for (let row = 0; row < 6; row++) {
        const found = (up[row]! - down[row]!) / (2 * STEP);
        const { slopes } = row < 3 ? white! : black!;
        const computed = moves.has(place) ? slopes[(row % 3) * count + column]! : 0;
        expect(Math.abs(computed - found), `row ${row}, unknown ${place}`).toBeLessThan(2e-5 * (1 + Math.abs(found)));
      }
    }
  }

  test('are those of a small step, for layers of any materials', () => {
    const layers = fc.array(anyLayer, { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(layers, anyTheta(unknowns.count), (some, theta) => expectSlopes(compose(unknowns, some), theta)),
      { numRuns: 25 },
    );
  });

  test('are those of a small step, for streaks and for labels', () => {
    const shares = fc.array(fc.double({ min: 0.1, max: 3, noNaN: true }), { minLength: 2, maxLength: 2 });
    fc.assert(
      fc.property(anyLayer, anyLayer, shares, anyTheta(unknowns.count), (one, other, streaks, theta) => {
        expectSlopes(compose(unknowns, [one, other], streaks), theta);
        expectSlopes(composeLabel(unknowns, 'stray', { dose: 0.01, thicknessMm: 5 }), theta);
      }),
      { numRuns: 15 },
    );
  });
});
