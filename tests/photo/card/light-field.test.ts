import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CARDS, type Place } from '../../../src/measuring-card/measuring-card.ts';
import { lightField } from '../../../src/photo/card/light-field.ts';
import type { LinearRgb } from '../../../src/photo/pixels.ts';
import { expectClose } from '../../optics/close.ts';

const { small } = CARDS;
const spotsIn = (light: (place: Place) => LinearRgb) =>
  small.paperSpots.map((place) => ({ place, light: light(place) }));
const grey = (level: number): LinearRgb => ({ r: level, g: level, b: level });
const slope = fc.double({ min: -0.004, max: 0.004, noNaN: true });
const bend = fc.double({ min: -2e-5, max: 2e-5, noNaN: true });

test('a quadratic field is found again, also where no paper is', () => {
  fc.assert(
    fc.property(slope, slope, bend, bend, (x1, y1, x2, y2) => {
      const light = ({ x, y }: Place) => grey(0.6 * Math.exp(x1 * x + y1 * y + x2 * x * x + y2 * x * y));
      const field = lightField(spotsIn(light), small);
      for (const place of [
        { x: 68, y: 48 },
        { x: 30, y: 48 },
        { x: 3, y: 93 },
      ])
        expectClose(field.at(place).g / light(place).g, 1, 1e-6);
      expectClose(field.rms, 0, 1e-6);
      expect(field.degree).toBe(2);
    }),
  );
});

test('spots that something covers or dazzles count for little', () => {
  const light = ({ x }: Place) => grey(0.5 + 0.001 * x);
  const spots = spotsIn(light).map((spot, i) =>
    i % 12 === 0 ? { ...spot, light: grey(i % 24 === 0 ? 0.9 : 0.3) } : spot,
  );
  const field = lightField(spots, small);
  for (const place of [
    { x: 20, y: 20 },
    { x: 68, y: 48 },
    { x: 110, y: 80 },
  ])
    expectClose(field.at(place).r / light(place).r, 1, 0.01);
});

test('a cubic is taken where it leaves a third less over', () => {
  const light = ({ x }: Place) => grey(0.6 * Math.exp(0.3 * ((x - 68) / 68) ** 3));
  const field = lightField(spotsIn(light), small);
  expect(field.degree).toBe(3);
  expectClose(field.at({ x: 100, y: 48 }).g / light({ x: 100, y: 48 }).g, 1, 1e-6);
});

test('tintSpan: light that turns from neutral to blue', () => {
  const light = ({ x }: Place): LinearRgb => ({ r: 0.5, g: 0.5, b: 0.5 * Math.exp((0.2 * x) / 136) });
  expectClose(lightField(spotsIn(light), small).tintSpan, 0.2, 0.02);
});

test('less than 30 spots are no field', () => {
  expect(() => lightField(spotsIn(() => grey(0.5)).slice(0, 10), small)).toThrow(/give 30/);
});
