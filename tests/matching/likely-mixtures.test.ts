import { expect, test } from 'vitest';
import { likelyMixtures } from '../../src/matching/chips/likely-mixtures.ts';
import { CLEAR, sampleMaterial } from './sample-shelf.ts';

const shelf = (count: number): Parameters<typeof likelyMixtures>[0] => [
  CLEAR,
  ...Array.from({ length: count }, (_, at) =>
    sampleMaterial(`m${at}`, 'pigment', '#6a4a2a', { dose: 0.004 + 0.001 * at }),
  ),
];

test.each([1, 2, 5, 17, 60])(
  'of %i materials each is in some mixture, at its usual dose or less, the same in any order',
  (count) => {
    const materials = shelf(count);
    const mixtures = likelyMixtures(materials, 'clear', 8);
    expect(mixtures.length).toBeLessThanOrEqual(Math.max(120, 2 * count));
    for (const { id, typical } of materials.slice(1)) {
      const doses = mixtures.flatMap(({ contents }) =>
        contents.filter(([each]) => each === id).map(([, dose]) => dose),
      );
      expect(doses.length).toBeGreaterThanOrEqual(2);
      for (const dose of doses) expect(dose / typical!).toBeGreaterThan(0.149);
      for (const dose of doses) expect(dose / typical!).toBeLessThanOrEqual(1);
    }
    for (const { plastics, contents, thicknessMm } of mixtures) {
      expect({ plastics, thicknessMm }).toEqual({ plastics: [['clear', 1]], thicknessMm: 8 });
      expect(new Set(contents.map(([id]) => id)).size).toBe(contents.length);
      expect(contents.length).toBeLessThanOrEqual(4);
    }
    expect(likelyMixtures([...materials].reverse(), 'clear', 8)).toEqual(mixtures);
  },
);

test('what does more than colour is in none', () => {
  const [, plain, other] = shelf(2) as [never, typeof CLEAR, typeof CLEAR];
  const mixtures = likelyMixtures([plain, { ...other, effect: 'glow' }], 'clear', 8);
  expect(mixtures.every(({ contents }) => contents.every(([id]) => id === plain.id))).toBe(true);
});
