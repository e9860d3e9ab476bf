import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chipCandidates } from '../../src/matching/chips/chip-candidates.ts';
import { pairedChips } from '../../src/matching/chips/paired-chips.ts';
import { BENCH, sampleMaterial } from './sample-shelf.ts';

const SHELF = ['brown', 'green', 'red', 'chalk'].map((id) =>
  sampleMaterial(id, id === 'chalk' ? 'white' : 'pigment', '#6a4a2a', { dose: 0.008 }),
);
const CHIPS = chipCandidates({ bench: BENCH, plasticMl: 100, thicknessMm: 6, white: 'chalk', shelf: SHELF });

describe('pairedChips()', () => {
  test('are two bottles in one cup, of each bottle only what tells most', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 9, noNaN: true }), { minLength: 99, maxLength: 99 }), (gains) => {
        const gainOf = (dose: (typeof CHIPS)[number]['doses'][number]): number =>
          gains[
            CHIPS.findIndex(
              ({ doses }) =>
                doses.length === 1 && doses[0]!.written === dose.written && doses[0]!.material === dose.material,
            )
          ]!;
        const pairs = pairedChips(CHIPS, gains);
        // Two doses of each of four bottles, two by two.
        expect(pairs).toHaveLength(6 * 4);
        for (const { doses, plasticMl, thicknessMm } of pairs) {
          expect([doses.length, plasticMl, thicknessMm]).toEqual([2, 100, 6]);
          const [first, second] = doses as [(typeof doses)[number], (typeof doses)[number]];
          expect(first.material).not.toBe(second.material);
        }
        const used = new Set(pairs.flatMap(({ doses }) => doses.map((dose) => `${dose.material} ${dose.written}`)));
        for (const { id } of SHELF) {
          const own = CHIPS.flatMap(({ doses }) =>
            doses.length === 1 && doses[0]!.material === id ? [doses[0]!] : [],
          );
          const taken = own.filter((dose) => used.has(`${id} ${dose.written}`)).map(gainOf);
          const left = own.filter((dose) => !used.has(`${id} ${dose.written}`)).map(gainOf);
          expect(taken).toHaveLength(2);
          expect(Math.min(...taken)).toBeGreaterThanOrEqual(Math.max(...left));
        }
      }),
      { numRuns: 30 },
    );
  });

  test('are none of one bottle', () => {
    const alone = CHIPS.filter(({ doses }) => doses.length === 1 && doses[0]!.material === 'brown');
    expect(
      pairedChips(
        alone,
        alone.map(() => 1),
      ),
    ).toEqual([]);
  });
});
