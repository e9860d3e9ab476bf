import { expect, test } from 'vitest';
import { coverageOf, flakeInFile, loadOf, NEW_FLAKE, type WorkFlake } from '../../src/browser/match/side-flake.ts';

test('an ordinary load is asked for, and stands in the file of the target as a few and heavy do', () => {
  const chosen = (['few', 'ordinary', 'heavy'] as const).map((load): WorkFlake => {
    const coverage = coverageOf(load, undefined, NEW_FLAKE);
    return { ...NEW_FLAKE, coverage: Number(coverage) };
  });
  expect(chosen.map(loadOf)).toEqual(['few', 'ordinary', 'heavy']);
  expect([NEW_FLAKE, ...chosen].map((flake) => flakeInFile(flake))).toMatchObject([
    { coverage: '15 %' },
    { coverage: '4 %' },
    { coverage: '15 %' },
    { coverage: '30 %' },
  ]);
});

test('a target of the book that says nothing of how much flake it shows still says nothing', () => {
  const { coverage: _, ...unsaid } = NEW_FLAKE;
  expect(loadOf(unsaid)).toBe('ordinary');
  expect(coverageOf('ordinary', undefined, unsaid)).toBeUndefined();
  expect(flakeInFile(unsaid)).not.toHaveProperty('coverage');
});
