import { describe, expect, test } from 'vitest';
import { PATTERN_NAMES, PATTERNS } from '../../src/patterns/patterns.ts';
import { cupRegions } from '../../src/render/swatch/cup-regions.ts';
import { section } from '../../src/render/swatch/section.ts';
import { type BaitShape, baitShape } from '../../src/shapes/bait-shapes.ts';

type Point = readonly [x: number, y: number];

/** Area within a path of straight lines. */
function areaOf(path: string): number {
  const points = path
    .slice(1, -1)
    .split('L')
    .map((each) => each.split(' ').map(Number) as unknown as Point);
  return Math.abs(
    points.reduce((sum, [x, y], index) => {
      const [nextX, nextY] = points[(index + 1) % points.length]!;
      return sum + (x * nextY - nextX * y) / 2;
    }, 0),
  );
}

describe('the cut of a pattern', () => {
  const parts = [
    { hex: '#aa0000', share: 0.7 },
    { hex: '#00bb00', share: 0.3 },
  ];

  for (const pattern of PATTERN_NAMES.filter((name) => PATTERNS[name].cups.most > 1)) {
    test(`${pattern} shows its second cup as large as its share`, () => {
      const text = section(pattern, parts).toString();
      const [, rx, ry] = /rx="([\d.]+)" ry="([\d.]+)"/.exec(text)!.map(Number);
      const paths = [...text.matchAll(/d="([^"]+)" fill="#00bb00"/g)].map(([, path]) => path!);
      const area = paths.reduce((sum, path) => sum + areaOf(path), 0) / (Math.PI * rx! * ry!);
      // Streaks are shared out over the thickness of a bait, which a level cut does not show.
      expect(Math.abs(area - 0.3)).toBeLessThan(pattern === 'swirl' ? 0.05 : 0.01);
    });
  }
});

/** Where a tip begins, mm from the nose; undefined where none of it is in the body. */
function tipFrom(shape: BaitShape, share: number): number | undefined {
  const [tip] = cupRegions('tipped', [1 - share, share], shape, 3);
  return tip && Number(/^M([\d.]+)/.exec(tip.path)![1]);
}

test('a tip begins where its share of the plastic does', () => {
  const shape = { ...baitShape({ shape: 'stick', lengthMm: 100, bodyMm: 10, thinMm: 4 }), thin: [] };
  const { middle, up } = shape.body;
  const halfAt = (x: number): number => {
    const after = middle.findIndex(([place]) => place > x);
    const [low, high] = [middle[after - 1]![0], middle[after]![0]];
    return up[after - 1]! + ((up[after]! - up[after - 1]!) * (x - low)) / (high - low);
  };
  const volumeFrom = (from: number): number => {
    let sum = 0;
    for (let x = from; x < middle.at(-1)![0]; x += 0.01) sum += halfAt(x) ** 2;
    return sum;
  };
  for (const share of [0.1, 0.34, 0.7]) {
    expect(volumeFrom(tipFrom(shape, share)!) / volumeFrom(0)).toBeCloseTo(share, 2);
  }
});

test('a tail takes some of the share of a tip, or all of it', () => {
  const tailed = baitShape({ shape: 'grub', lengthMm: 60, bodyMm: 10, thinMm: 2 });
  expect(tipFrom(tailed, 0.5)!).toBeGreaterThan(tipFrom({ ...tailed, thin: [] }, 0.5)!);
  expect(tipFrom(tailed, 0.05)).toBeUndefined();
});
