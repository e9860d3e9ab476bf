import { expect, test } from 'vitest';
import { unbroken, unitsKept, unitsKeptIn } from '../../src/render/unbroken.ts';

test('unbroken(measure) breaks after its plus signs alone', () => {
  expect(unbroken('1 tsp + 2 × 1/8 tsp + 1 pinch')).toBe(
    '1\u00a0tsp\u00a0+ 2\u00a0×\u00a01/8\u00a0tsp\u00a0+ 1\u00a0pinch',
  );
});

test('unbroken(weight) breaks before a bracket, never within it', () => {
  expect(unbroken('or 0.03 oz (0.85 g)')).toBe('or\u00a00.03\u00a0oz (0.85\u00a0g)');
});

test('unitsKept(text) ties numbers to their units and ΔE to its number, and nothing else', () => {
  expect(unitsKept('Never above 185 °C: pour at 165 to 177 °C.')).toBe(
    'Never above 185\u00a0°C: pour at 165 to 177\u00a0°C.',
  );
  expect(unitsKept('ΔE 3.5 from 4 fl oz, 40 % of the bait')).toBe(
    'ΔE\u00a03.5 from 4\u00a0fl\u00a0oz, 40\u00a0% of the bait',
  );
  expect(unitsKept('by scale: 1/8 tsp is 2.4 times too much')).toBe('by scale: 1/8\u00a0tsp is 2.4 times too much');
  expect(unitsKept('2 pinches and 3 smidgens, 10 ft down')).toBe('2\u00a0pinches and 3\u00a0smidgens, 10\u00a0ft down');
  expect(unitsKept('3 minnows, 2 greens, 1 inside, 5 lights')).toBe('3 minnows, 2 greens, 1 inside, 5 lights');
});

test('unitsKeptIn(page) leaves tags, attributes, scripts and code as they are', () => {
  expect(
    unitsKeptIn(
      '<p title="12 g">12 g, <b>5 mm</b></p><script type="application/json">{"text":"12 g"}</script><code>12 g</code>, 3 ml',
    ),
  ).toBe(
    '<p title="12 g">12\u00a0g, <b>5\u00a0mm</b></p><script type="application/json">{"text":"12 g"}</script><code>12 g</code>, 3\u00a0ml',
  );
});
