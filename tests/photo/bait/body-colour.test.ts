import { expect, test } from 'vitest';
import { bodyOf } from '../../../src/photo/bait/body-colour.ts';
import type { Patch } from '../../../src/photo/bait/rectify.ts';
import { normal, seeded } from './drawn-window.ts';

type Rgb = readonly [number, number, number];

/** A zone of which each row is of one colour but for noise: so many rows of a hundred of each. */
function striped(...stripes: readonly (readonly [rows: number, colour: Rgb, noise: number])[]): Patch {
  const [columns, rows] = [120, 100];
  const random = seeded(5);
  const colours = stripes.flatMap(([count, colour, noise]) => Array.from({ length: count }, () => ({ colour, noise })));
  const signal = Float32Array.from({ length: 3 * columns * rows }, (_, at) => {
    const { colour, noise } = colours[Math.floor(at / 3 / columns)]!;
    return colour[at % 3]! * (1 + noise * normal(random));
  });
  const piece = { corner: { x: 0, y: 0 }, turn: 0, length: 12, width: 10 };
  return { piece, columns, rows, perMm: 10, signal, clipped: new Uint8Array(columns * rows) };
}

const GREEN: Rgb = [0.1, 0.4, 0.15];
const LAMP: Rgb = [0.9, 0.95, 0.9];
const BLACK: Rgb = [0.02, 0.02, 0.02];

test('a lamp that mirrors along most of a bait is not its body, though it is the more even of the two', () => {
  const { signal, share } = bodyOf(striped([40, GREEN, 0.05], [60, LAMP, 0.01]));
  expect(signal.r).toBeCloseTo(0.1, 2);
  expect(signal.g).toBeCloseTo(0.4, 2);
  expect(share).toBeGreaterThan(0.35);
  expect(share).toBeLessThan(0.45);
});

test('dark flake on a fifth of a bait is not its body', () => {
  const { signal } = bodyOf(striped([20, BLACK, 0.02], [80, GREEN, 0.05]));
  expect(signal.g).toBeCloseTo(0.4, 2);
});
