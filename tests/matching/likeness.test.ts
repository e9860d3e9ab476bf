import { describe, expect, test } from 'vitest';
import type { CupState } from '../../src/cup/ledger.ts';
import { contentsOf, likeness } from '../../src/matching/rounds/likeness.ts';
import type { MatchMaterial } from '../../src/matching/shelf/match-material.ts';
import { CLEAR, SHELF } from './sample-shelf.ts';

const shelf = new Map([CLEAR, ...SHELF].map((material) => [material.id, material]));
const byName = (name: string): MatchMaterial => shelf.get(name)!;
const cup = (materials: Readonly<Record<string, number>>, ml = 100): CupState => ({
  plastics: { clear: ml },
  materials,
});
const alike = (one: CupState, other: CupState): number => likeness(contentsOf(one), contentsOf(other), byName);

describe('likeness', () => {
  test('of the same doses is 1, in a cup of whatever size, and either way round', () => {
    expect(alike(cup({ ochre: 0.4 }), cup({ ochre: 0.8 }, 200))).toBeCloseTo(1, 9);
    const [one, other] = [cup({ ochre: 0.4, black: 0.1 }), cup({ ochre: 0.3, 'blue-dye': 0.2 })];
    expect(alike(one, other)).toBeCloseTo(alike(other, one), 9);
  });

  test('falls as more is added, and is next to nothing for other materials of the same colour', () => {
    const learnt = cup({ ochre: 0.4 });
    const more = [0, 0.02, 0.1, 0.4, 2].map((black) => alike(learnt, cup({ ochre: 0.4, black })));
    for (const [i, each] of more.slice(1).entries()) expect(each).toBeLessThan(more[i]!);
    expect(alike(learnt, cup({ 'amber-dye': 0.4, olive: 0.4 }))).toBeLessThan(0.2);
  });

  test('of an empty cup is a number', () => {
    expect(Number.isFinite(alike(cup({}, 0), cup({ ochre: 1 })))).toBe(true);
    expect(alike(cup({}, 0), cup({}, 0))).toBe(1);
  });
});
