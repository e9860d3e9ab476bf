import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type HeatMaterial, heatLimit, POURING } from '../../src/cup/heat-limit.ts';

const shelf: Readonly<Record<string, HeatMaterial>> = {
  supple: { highest: 185, working: { from: 160, to: 175 } },
  stout: { working: { from: 166, to: 180 } },
  plain: {},
  prism: { highest: 168 },
  chalk: { highest: 215 },
  soot: {},
};
const limit = (plastics: readonly string[], materials: readonly string[]): ReturnType<typeof heatLimit> =>
  heatLimit(plastics, materials, (id) => shelf[id]);

describe('heatLimit(plastics, materials)', () => {
  test('is the lowest highest temperature, and names what has none', () => {
    expect(limit(['supple'], ['prism', 'soot'])).toEqual({
      limit: { celsius: 168, material: 'prism' },
      limitUnknown: ['soot'],
    });
  });
  test('of a plastic without one it is the top of its pouring range, and the plastic still has none', () => {
    expect(limit(['stout'], ['chalk'])).toEqual({
      limit: { celsius: 180, material: 'stout', ofRange: true },
      limitUnknown: ['stout'],
    });
  });
  test('what stands more than plastisol is poured at says nothing of a plastic that the shelf says nothing of', () => {
    expect(limit(['plain'], ['chalk'])).toEqual({ limitUnknown: ['plain'] });
    expect(limit(['plain'], ['prism']).limit).toEqual({ celsius: 168, material: 'prism' });
  });

  const heat = fc.double({ min: 120, max: 230, noNaN: true });
  const of = (list: readonly HeatMaterial[]): ((id: string) => HeatMaterial | undefined) => {
    return (id) => list[Number(id)];
  };
  test('no material raises it, whatever it stands', () => {
    fc.assert(
      fc.property(fc.array(fc.option(heat), { minLength: 1, maxLength: 5 }), heat, (highests, more) => {
        const list = [...highests.map((each) => (each === null ? {} : { highest: each })), { highest: more }];
        const ids = list.map((_, index) => String(index));
        const without = heatLimit(ids.slice(0, 1), ids.slice(1, -1), of(list)).limit?.celsius;
        const withIt = heatLimit(ids.slice(0, 1), ids.slice(1), of(list)).limit?.celsius;
        expect(withIt ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(without ?? Number.POSITIVE_INFINITY);
        if (highests[0] === null) expect(withIt ?? 0).toBeLessThanOrEqual(POURING.most);
      }),
    );
  });
});
