import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { LearnedShelf } from '../../src/learning/learned-shelf.ts';
import type { TaughtLook } from '../../src/learning/learning-data.ts';
import { shelfPart } from '../../src/learning/shelf-part.ts';
import { shelfState } from '../../src/learning/shelf-state.ts';
import { shelfUnknowns } from '../../src/learning/shelf-unknowns.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { anyTheta, plainLayer, SORTS } from './shelf-arbitrary.ts';

const looks = fc.array(fc.tuple(plainLayer, fc.constantFrom('a', 'b', undefined)), { maxLength: 8 }).map((all) =>
  all.map(
    ([layer, camera], index): TaughtLook => ({
      key: `r${index}/body/1/1`,
      cup: `r${index}/body`,
      round: 1,
      layers: [layer],
      overWhite: { L: 50 + index, a: 0, b: 0 },
      axisSd: 1,
      means: 'screen',
      ...(camera ? { camera } : {}),
    }),
  ),
);

/** A shelf that any theta says, as if it had been learned. */
const learned = looks.chain((all) => {
  const data = { materials: SORTS, looks: all };
  return anyTheta(shelfUnknowns(data).count).map(
    (theta): LearnedShelf => ({
      data,
      theta: Array.from(theta),
      weights: {
        looks: all.map((_, index) => 1 / (1 + index)),
        looksAlone: all.map((_, index) => 1 / (2 + index)),
        cups: Object.fromEntries(all.map(({ cup }) => [cup, { 1: 0.5 }])),
        labels: Object.fromEntries(SORTS.map(({ id }) => [id, [1]])),
      },
      optics: USUAL_OPTICS,
      constants: Object.fromEntries(SORTS.map(({ id }) => [id, { absorption: [1], scattering: [2] }])),
    }),
  );
});
const some = fc.subarray(SORTS.map(({ id }) => id)).map((ids) => new Set(ids));

test('shelfPart() keeps what was learned of its materials, of the cards and of its cameras', () => {
  fc.assert(
    fc.property(learned, some, (shelf, ids) => {
      const part = shelfPart(shelf, ids);
      const [whole, fewer] = [shelf, part].map(({ data, theta }) => shelfState(shelfUnknowns(data), theta));
      for (const id of ids)
        expect(fewer!.materials[fewer!.unknowns.placeOf.get(id)!]).toEqual(
          whole!.materials[whole!.unknowns.placeOf.get(id)!],
        );
      expect(fewer!.white.reflectance).toEqual(whole!.white.reflectance);
      expect([fewer!.crowding.value, fewer!.d.value, fewer!.s0.value]).toEqual([
        whole!.crowding.value,
        whole!.d.value,
        whole!.s0.value,
      ]);
      for (const [camera, at] of fewer!.unknowns.cameras) {
        const before = whole!.unknowns.cameras.get(camera)!;
        expect(part.theta.slice(at, at + 3)).toEqual(shelf.theta.slice(before, before + 3));
      }
    }),
    { numRuns: 50 },
  );
});

test('shelfPart() names nothing else, and keeps the looks at nothing else with their weights', () => {
  fc.assert(
    fc.property(learned, some, (shelf, ids) => {
      const { data, weights, constants } = shelfPart(shelf, ids);
      const named = [
        ...data.materials.map(({ id }) => id),
        ...Object.keys(constants),
        ...Object.keys(weights.labels),
        ...data.looks
          .flatMap(({ layers }) => layers.flatMap((layer) => [...layer.plastics, ...layer.contents]))
          .map(([id]) => id),
      ];
      expect(named.filter((id) => !ids.has(id))).toEqual([]);
      expect(Object.keys(weights.cups).sort()).toEqual([...new Set(data.looks.map(({ cup }) => cup))].sort());
      for (const [index, look] of data.looks.entries())
        for (const kind of ['looks', 'looksAlone'] as const)
          expect(weights[kind][index]).toBe(shelf.weights[kind][shelf.data.looks.indexOf(look)]);
      const kept = shelf.data.looks.filter(({ layers: [layer] }) =>
        [...layer!.plastics, ...layer!.contents].every(([id]) => ids.has(id)),
      );
      expect(data.looks).toEqual(kept);
    }),
    { numRuns: 50 },
  );
});
