import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  afterStep,
  type CupState,
  concentrations,
  cupVolume,
  isOverPour,
  type LedgerStep,
  naiveSum,
  type OverPour,
  scaleCup,
} from '../../src/cup/ledger.ts';

const none = (): number => 0;

/** The cup after each step, the start first, up to a pour of more than there is. */
function keepLedger(
  start: CupState,
  steps: readonly LedgerStep[],
  volumePerGram: (material: string) => number,
): { readonly states: readonly CupState[]; readonly overPour?: OverPour } {
  const states = [start];
  for (const step of steps) {
    const next = afterStep(states.at(-1)!, step, volumePerGram);
    if (isOverPour(next)) return { states, overPour: next };
    states.push(next);
  }
  return { states };
}

describe('the ledger', () => {
  test('afterStep gives the worked example: 100 ml, 20 drops; pour 30 ml; 10 drops is 0.343 drops/ml, not 0.300', () => {
    const start: CupState = { plastics: { supple: 100 }, materials: { peat: 20 } };
    const steps: LedgerStep[] = [
      { kind: 'pour', ml: 30 },
      { kind: 'add', material: 'peat', grams: 10 },
    ];
    const { states } = keepLedger(start, steps, none);
    const really = concentrations(states.at(-1)!).peat!;
    const summed = concentrations(naiveSum(start, steps)).peat!;
    expect(really).toBeCloseTo(20 / 100 + 10 / 70, 12);
    expect(really).toBeCloseTo(0.343, 3);
    expect(summed).toBeCloseTo(0.3, 12);
    expect(1 - summed / really).toBeCloseTo(0.125, 3);
  });

  test('afterStep(a pour that is larger than what is left) says what is left', () => {
    const start: CupState = { plastics: { supple: 100 }, materials: {} };
    const { states, overPour } = keepLedger(
      start,
      [
        { kind: 'pour', ml: 80 },
        { kind: 'pour', ml: 30 },
        { kind: 'pour', ml: 1 },
      ],
      none,
    );
    expect(overPour).toMatchObject({ wantedMl: 30 });
    expect(overPour!.leftMl).toBeCloseTo(20, 9);
    expect(states).toHaveLength(2);
  });

  const volumePerGram = (material: string): number => ({ peat: 1, frost: 1 / 2.8, flake: 1 / 1.39 })[material] ?? 1;
  const step = fc.oneof(
    fc.record({
      kind: fc.constant('add' as const),
      material: fc.constantFrom('peat', 'frost', 'flake'),
      grams: fc.double({ min: 0, max: 5, noNaN: true }),
    }),
    fc.record({
      kind: fc.constant('plastic' as const),
      material: fc.constantFrom('supple', 'stout'),
      ml: fc.double({ min: 0, max: 60, noNaN: true }),
    }),
    fc.record({ kind: fc.constant('pour' as const), ml: fc.double({ min: 0, max: 40, noNaN: true }) }),
  );
  const start = fc.record({
    plastics: fc.record({ supple: fc.double({ min: 10, max: 300, noNaN: true }) }),
    materials: fc.record({ peat: fc.double({ min: 0, max: 4, noNaN: true }) }),
  });

  test('afterStep keeps the mass of every material: start + added = poured + left, at every step', () => {
    fc.assert(
      fc.property(start, fc.array(step, { maxLength: 12 }), (cup, steps) => {
        const { states } = keepLedger(cup, steps, volumePerGram);
        const poured: Record<string, number> = {};
        const put: Record<string, number> = { ...cup.plastics, ...cup.materials };
        for (const [index, after] of states.slice(1).entries()) {
          const taken = steps[index]!;
          const before = states[index]!;
          if (taken.kind === 'add') put[taken.material] = (put[taken.material] ?? 0) + taken.grams;
          if (taken.kind === 'plastic') put[taken.material] = (put[taken.material] ?? 0) + taken.ml;
          if (taken.kind === 'pour') {
            const fraction = Math.min(1, taken.ml / cupVolume(before, volumePerGram));
            for (const [name, amount] of Object.entries({ ...before.plastics, ...before.materials })) {
              poured[name] = (poured[name] ?? 0) + amount * fraction;
            }
          }
          for (const [name, amount] of Object.entries({ ...after.plastics, ...after.materials })) {
            expect(amount + (poured[name] ?? 0)).toBeCloseTo(put[name]!, 8);
          }
        }
      }),
    );
  });

  test('afterStep(pour) changes no concentration, and takes just its volume', () => {
    fc.assert(
      fc.property(start, fc.double({ min: 0.01, max: 0.95, noNaN: true }), (cup, part) => {
        const volume = cupVolume(cup, volumePerGram);
        const after = keepLedger(cup, [{ kind: 'pour', ml: part * volume }], volumePerGram).states[1]!;
        expect(cupVolume(after, volumePerGram)).toBeCloseTo(volume * (1 - part), 8);
        expect(concentrations(after).peat).toBeCloseTo(concentrations(cup).peat!, 10);
      }),
    );
  });

  test('scaleCup(scaleCup(cup, a), 1/a) is the cup', () => {
    fc.assert(
      fc.property(start, fc.double({ min: 0.01, max: 100, noNaN: true }), (cup, factor) => {
        const back = scaleCup(scaleCup(cup, factor), 1 / factor);
        expect(back.plastics.supple).toBeCloseTo(cup.plastics.supple, 8);
        expect(concentrations(back).peat).toBeCloseTo(concentrations(cup).peat!, 10);
      }),
    );
  });

  test('afterStep(additions without a pour) does not care for their order', () => {
    const additions = fc.array(
      fc.record({
        kind: fc.constant('add' as const),
        material: fc.constantFrom('peat', 'frost'),
        grams: fc.double({ min: 0, max: 5, noNaN: true }),
      }),
    );
    fc.assert(
      fc.property(start, additions, (cup, steps) => {
        const one = keepLedger(cup, steps, volumePerGram).states.at(-1)!;
        const other = keepLedger(cup, steps.toReversed(), volumePerGram).states.at(-1)!;
        for (const name of Object.keys(one.materials))
          expect(one.materials[name]).toBeCloseTo(other.materials[name]!, 9);
      }),
    );
  });
});
