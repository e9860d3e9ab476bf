import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../src/cup/random.ts';
import { TOGETHER } from '../../src/kinds/together.ts';
import { baseOfCup } from '../../src/matching/mix/cup-model.ts';
import { backWithin, excess } from '../../src/matching/mix/joint-bounds.ts';
import type { MatchMaterial } from '../../src/matching/shelf/match-material.ts';
import { fullness } from '../../src/matching/shelf/together.ts';
import type { TargetPart } from '../../src/matching/target/target-part.ts';
import { bodyViews } from '../../src/optics/cup-body.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { expectClose } from '../optics/close.ts';
import { firstRecipe, nextAddition } from './plain-questions.ts';
import { BENCH, CLEAR, SHELF } from './sample-shelf.ts';

const ML = 120;
const ALL = [...SHELF, CLEAR];
const partOf = (materials: Readonly<Record<string, number>>, shelf: readonly MatchMaterial[] = ALL): TargetPart => {
  const named = new Map(shelf.map((material) => [material.id, material]));
  const { mix } = baseOfCup({ plastics: { clear: 1 }, materials }, (name) => named.get(name)!, USUAL_OPTICS);
  return { name: 'body', ...bodyViews(mix, 6, USUAL_OPTICS), thicknessMm: 6 };
};

/** Part of the plastic's volume that is liquid colour, and of its mass that is powder, reckoned from the amounts alone. */
function partsOf(grams: ReadonlyMap<string, number>, ml: number): { liquid: number; powder: number } {
  let liquid = 0;
  let powder = 0;
  for (const [id, amount] of grams) {
    const { kind, density } = SHELF.find((material) => material.id === id)!;
    if (kind === 'colorant') liquid += amount / density / ml;
    else powder += amount / (ml * CLEAR.density);
  }
  return { liquid, powder };
}

/** Colours far stronger than any that a cup takes: the target asks for more than may go in. */
const heavy = fc.nat(1e6).map((seed) => {
  const random = seededRandom(seed);
  const picked = [...SHELF].sort(() => random() - 0.5).slice(0, 3);
  return Object.fromEntries(picked.map(({ id, typical }) => [id, typical! * (2 + 5 * random())]));
});

describe('what a cup takes of one sort together', () => {
  test('the usual amounts are below the warned ones, and those no more than what is never proposed', () => {
    for (const { usual, warned, ...entry } of Object.values(TOGETHER)) {
      expect(usual[0]).toBeLessThan(usual[1]);
      expect(usual[1]).toBeLessThanOrEqual(warned);
      if ('never' in entry) expect(warned).toBeLessThanOrEqual(entry.never as number);
    }
    // Liquid together usually 2 to 3 % by volume; pearl 0.15 to 0.6 %, 1 solid, 2 most; salt beyond 40 % warned. Common practice, no source.
    expect(TOGETHER.colour).toMatchObject({ by: 'volume', warned: 0.03, never: 0.06 });
    expect(TOGETHER.powder).toMatchObject({ by: 'mass', usual: [0.0015, 0.006], never: 0.02 });
    expect(TOGETHER.salt).toMatchObject({ warned: 0.4 });
  });

  test('firstRecipe(more colour than a cup takes) never proposes more than 6 % liquid and 2 % powder', () => {
    fc.assert(
      fc.property(heavy, (doses) => {
        const { proposals } = firstRecipe({
          optics: USUAL_OPTICS,
          parts: [partOf(doses)],
          plastic: 'clear',
          plasticMl: ML,
          shelf: ALL,
          bench: BENCH,
          tolerance: 2,
        });
        for (const { cups } of proposals) {
          const grams = new Map(cups[0]!.amounts.map((amount) => [amount.material, amount.grams]));
          const { liquid, powder } = partsOf(grams, ML);
          expect(liquid).toBeLessThanOrEqual(0.06 + 1e-6);
          expect(powder).toBeLessThanOrEqual(0.02 + 1e-6);
          const weights = new Map(
            cups[0]!.amounts.map((amount) => [amount.material, amount.weighed?.grams ?? amount.grams]),
          );
          expect(partsOf(weights, ML).liquid).toBeLessThanOrEqual(0.06 + 1e-6);
        }
      }),
      { numRuns: 25 },
    );
  });

  test('nextAddition(…) counts what is in the cup, and what plastic makes of it', () => {
    fc.assert(
      fc.property(heavy, fc.double({ min: 0.2, max: 1, noNaN: true }), (doses, part) => {
        const materials = { 'blue-dye': part * 0.05 * ML };
        const { proposals } = nextAddition({
          optics: USUAL_OPTICS,
          cup: { plastics: { clear: ML }, materials },
          target: partOf(doses),
          shelf: ALL,
          bench: BENCH,
          tolerance: 2,
          limits: { mayLetDown: true, roomMl: 175 },
        });
        for (const { additions, thin } of proposals) {
          const grams = new Map<string, number>(Object.entries(materials));
          for (const { material, grams: more } of additions) grams.set(material, (grams.get(material) ?? 0) + more);
          expect(partsOf(grams, ML + (thin?.ml ?? 0)).liquid).toBeLessThanOrEqual(0.06 + 1e-6);
        }
      }),
      { numRuns: 20 },
    );
  });

  test('nextAddition(a cup that is full of liquid colour) leaves all of that out, and says so', () => {
    const { leftOut } = nextAddition({
      optics: USUAL_OPTICS,
      cup: { plastics: { clear: ML }, materials: { 'blue-dye': 0.04 * ML, 'red-dye': 0.025 * ML } },
      target: partOf({ black: 0.01 }),
      shelf: ALL,
      bench: BENCH,
      tolerance: 2,
    });
    expect(leftOut).toContainEqual({ material: 'black', why: 'sort-at-its-most', sort: 'colour' });
    expect(leftOut.some(({ material }) => material === 'gold-pearl')).toBe(false);
  });

  test('a supplier’s own `most` stands above the bound of its sort', () => {
    const strong = SHELF.map((material) => (material.id === 'black' ? { ...material, most: 0.08 } : material));
    const named = new Map([...strong, CLEAR].map((material) => [material.id, material]));
    const full = (contents: Readonly<Record<string, number>>): number | undefined =>
      fullness(contents, (name) => named.get(name)!, 'never', CLEAR.density).get('colour');
    expectClose(full({ black: 0.08 })!, 1, 1e-12);
    expectClose(full({ 'red-dye': 0.06 })!, 1, 1e-12);
    expectClose(full({ black: 0.04, 'red-dye': 0.03 })!, 1, 1e-12);
  });
});

describe('a bound on doses together', () => {
  test('backWithin(…) gives the nearest doses that are within, which no other choice of two beats', () => {
    const dose = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(dose, dose, fc.double({ min: 0.2, max: 5, noNaN: true }), (one, other, curve) => {
        const bounds = [{ weights: Float64Array.of(1, 2), most: 1 }];
        const curvature = (index: number): number => (index === 0 ? 1 : curve);
        const doses = Float64Array.of(one, other);
        backWithin(bounds, doses, [0, 1], Float64Array.of(1, 1), curvature);
        expect(excess(bounds, doses)).toBe(0);
        const away = (x: number, y: number): number => (x - one) ** 2 + curve * (y - other) ** 2;
        const found = away(doses[0]!, doses[1]!);
        for (let x = 0; x <= 1; x += 0.02)
          for (let y = 0; x + 2 * y <= 1; y += 0.02) expect(found).toBeLessThanOrEqual(away(x, y) + 1e-6);
      }),
      { numRuns: 40 },
    );
  });
});
