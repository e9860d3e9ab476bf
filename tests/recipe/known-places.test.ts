import { expect, test } from 'vitest';
import type { Kind } from '../../src/kinds/kinds.ts';
import { moveFix } from '../../src/recipe/known-places.ts';
import { SCHEMAS } from '../../src/recipe/schema.ts';

const step = ['cups', 'body', 'log', 1];

test.each<readonly [Kind, readonly (string | number)[], string, string | undefined]>([
  ['recipe', step, 'photo', 'move it into `seen`'],
  ['recipe', step, 'over-white', 'move it into `seen`'],
  ['recipe', [...step, 'seen'], 'pour', 'move it out of `seen`'],
  ['recipe', [...step, 'seen'], 'share', 'move it out of `log`'],
  ['recipe', ['cups', 'body'], 'pour', 'move it into a step of `log`'],
  ['recipe', ['cups', 'body'], 'mold', 'move it out of `cups`, beside `title`'],
  ['recipe', [], 'plastic', 'move it into a cup of `cups`'],
  ['recipe', [], 'heat', 'move it into a step of `log` in a cup of `cups`'],
  ['colorant', [], 'dose', 'move it into `look`'],
  ['colorant', [], 'color', 'move it into `look`, as `colour`'],
  ['flake', ['look'], 'size', 'move it out of `look`, beside `title`'],
  ['book', [], 'currency', 'move it into `units`'],
  ['target', [], 'coverage', 'move it into an entry of `flake`'],
  ['mold', [], 'constructor', undefined],
  ['recipe', step, 'weather', undefined],
])('moveFix(%s, %j, %s) is %s', (kind, path, name, fix) => {
  expect(moveFix(SCHEMAS[kind], path, name, () => false)?.fix).toBe(fix);
});

test('moveFix(…) leads to no place that has such a field already', () => {
  const top = (place: readonly PropertyKey[]): boolean => place.join() === 'mold';
  expect(moveFix(SCHEMAS.recipe, ['cups', 'body'], 'mold', top)).toBeUndefined();
  const inSeen = (place: readonly PropertyKey[]): boolean => place.join() === 'cups,body,log,1,seen,photo';
  expect(moveFix(SCHEMAS.recipe, step, 'photo', inSeen)?.fix).not.toContain('seen');
  expect(moveFix(SCHEMAS.recipe, ['cups', 'body', 'log', 2], 'photo', inSeen)?.fix).toBe('move it into `seen`');
});
