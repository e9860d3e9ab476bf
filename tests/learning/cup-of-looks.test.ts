import { describe, expect, test } from 'vitest';
import { CupOfLooks } from '../../src/learning/cup-of-looks.ts';
import type { TaughtLook } from '../../src/learning/learning-data.ts';

const look = (round: number, contents: Readonly<Record<string, number>>): TaughtLook => ({
  key: `smoke/body/${round}/1`,
  cup: 'smoke/body',
  round,
  layers: [{ plastics: [['supple', 1]], contents: Object.entries(contents), thicknessMm: 9 }],
  overWhite: { L: 50, a: 0, b: 0 },
  axisSd: 0.4,
  means: 'instrument',
});

/** 100 ml with 1 g of peat; .5 g of rust goes in; thinned to twice as much; another .25 g of peat in 200 ml. */
const LOOKS = [
  look(1, { peat: 0.01 }),
  look(2, { peat: 0.01, rust: 0.005 }),
  look(3, { peat: 0.005, rust: 0.0025 }),
  look(4, { peat: 0.00625, rust: 0.0025 }),
];

const contents = (looks: readonly TaughtLook[]): readonly Record<string, number>[] =>
  looks.map(({ layers }) => Object.fromEntries(layers[0]!.contents.map(([id, dose]) => [id, Number(dose.toFixed(9))])));

describe('a cup as its looks know it', () => {
  test('knows what went in before a look', () => {
    expect([...new CupOfLooks(LOOKS, 0, 0).added()]).toEqual([['peat', 0.01]]);
    expect([...new CupOfLooks(LOOKS, 1, 0).added()]).toEqual([['rust', 0.005]]);
    expect([...new CupOfLooks(LOOKS, 2, 0).added()]).toEqual([]);
    const [[material, dose]] = [...new CupOfLooks(LOOKS, 3, 0).added()] as [[string, number]];
    expect([material, dose.toFixed(6)]).toEqual(['peat', '0.001250']);
  });

  test('is thinned with what was left out of it', () => {
    const slip = { kind: 'left-out', material: 'peat', gramsPerMl: 0.01 } as const;
    expect(contents(new CupOfLooks(LOOKS, 0, 0).after(slip, 0.01))).toEqual([
      {},
      { rust: 0.005 },
      { rust: 0.0025 },
      { peat: 0.00125, rust: 0.0025 },
    ]);
  });

  test('keeps what it was before the slip, and has another bottle after it', () => {
    const slip = { kind: 'swapped', material: 'rust', instead: 'rowan', gramsPerMl: 0.004 } as const;
    expect(contents(new CupOfLooks(LOOKS, 1, 0).after(slip, 0.005))).toEqual([
      { peat: 0.01 },
      { peat: 0.01, rowan: 0.004 },
      { peat: 0.005, rowan: 0.002 },
      { peat: 0.00625, rowan: 0.002 },
    ]);
  });

  test('has more of what went in unlogged, and so many times of what was miscounted', () => {
    const extra = { kind: 'extra', material: 'peat', gramsPerMl: 0.002 } as const;
    expect(contents(new CupOfLooks(LOOKS, 1, 0).after(extra, 0))[2]).toEqual({ peat: 0.006, rust: 0.0025 });
    const twice = { kind: 'miscounted', material: 'rust', gramsPerMl: 0.01 } as const;
    expect(contents(new CupOfLooks(LOOKS, 1, 0).after(twice, 0.005))[2]).toEqual({ peat: 0.005, rust: 0.005 });
  });
});
